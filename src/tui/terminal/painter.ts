import { EventEmitter } from 'node:events'
import { clipRow, columnsOf } from './fit.js'

/** The part of a terminal's output stream the painter needs. */
export interface PaintTarget extends EventEmitter {
  readonly columns?: number
  readonly rows?: number
  write(data: string): unknown
}

/** What Ink is given in place of the terminal: every write is one whole frame. */
export interface Painter extends EventEmitter {
  readonly isTTY: true
  readonly columns: number
  readonly rows: number
  write(frame: string, done?: () => void): boolean
  /** Forget what stands on the screen and draw the last frame whole. */
  repaint(): void
  /** Stop drawing; later frames are ignored. */
  close(): void
}

const HOME_AND_CLEAR = '\u001B[2J\u001B[H'
const SYNCHRONISED = ['\u001B[?2026h', '\u001B[?2026l'] as const
const CURSOR_SWITCH = '\u001B[?25'
const DEFAULT_COLUMNS = 80
const DEFAULT_ROWS = 24

/**
 * Draws frames on a terminal row by row, writing only the rows that changed, all of them usable.
 * The last cell of the screen stays blank, because writing it scrolls some terminals.
 */
export function createPainter(target: PaintTarget): Painter {
  let shown: string[] = []
  let frame = ''
  let open = true
  let cleared = false

  const columns = () => target.columns || DEFAULT_COLUMNS
  const rows = () => target.rows || DEFAULT_ROWS

  const draw = () => {
    const wanted = frame.split('\n').slice(0, rows())
    let out = cleared ? '' : HOME_AND_CLEAR
    cleared = true
    for (let y = 0; y < Math.max(wanted.length, shown.length); y++) {
      const row = clipRow(wanted[y] ?? '', y === rows() - 1 ? columns() - 1 : columns())
      if (row === (shown[y] ?? '')) continue
      shown[y] = row
      out += `\u001B[${y + 1};1H${row}\u001B[0m${columnsOf(row) < columns() ? '\u001B[K' : ''}`
    }
    shown.length = wanted.length
    if (out !== '') target.write(SYNCHRONISED[0] + out + SYNCHRONISED[1])
  }

  const painter: Painter = Object.assign(new EventEmitter(), {
    isTTY: true as const,
    columns: 0,
    rows: 0,
    write(data: string, done?: () => void) {
      if (open && data !== '' && !data.startsWith(CURSOR_SWITCH)) {
        frame = data
        draw()
      }
      if (done) setImmediate(done)
      return true
    },
    repaint() {
      shown = []
      cleared = false
      if (open && frame !== '') draw()
    },
    close() {
      open = false
      target.off('resize', onResize)
    },
  })
  Object.defineProperties(painter, { columns: { get: columns }, rows: { get: rows } })

  const onResize = () => {
    shown = []
    cleared = false
    painter.emit('resize')
  }
  target.on('resize', onResize)
  return painter
}
