import { EventEmitter } from 'node:events'
import { blankCells, type Cells, cellsOf } from './cells.js'
import { type Piece, written } from './pen.js'
import { changedPieces, wholePiece } from './row-pieces.js'

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
  /** Draws finished rows without a detour through Ink's layout, which takes every character apart again for each frame. */
  show(rows: readonly string[]): void
  /** Draw nothing until the next repaint, for the terminal is somebody else's. */
  pause(): void
  /** Forget what stands on the screen and draw the last frame whole. */
  repaint(): void
  /** Switches something of the terminal that draws nothing. */
  send(sequence: string): void
  /** Stop drawing; later frames are ignored. */
  close(): void
}

const CLEAR = '\u001B[0m\u001B[2J'
const SYNCHRONISED = ['\u001B[?2026h', '\u001B[?2026l'] as const
const CURSOR_SWITCH = '\u001B[?25'
const DEFAULT_COLUMNS = 80
const DEFAULT_ROWS = 24

/** A row as it stands on the screen; cells null where not every character is one cell wide. */
interface Shown {
  readonly text: string
  readonly cells: Cells | null
}

/**
 * Draws frames on a terminal, writing only the cells that changed; all rows are usable.
 * The last cell of the screen stays blank, because writing it scrolls some terminals.
 */
export function createPainter(target: PaintTarget): Painter {
  let shown: Shown[] = []
  let frame: readonly string[] = []
  let open = true
  let cleared = false
  let paused = false

  const columns = () => target.columns || DEFAULT_COLUMNS
  const rows = () => target.rows || DEFAULT_ROWS

  const draw = () => {
    if (paused) return
    const wide = columns()
    const height = rows()
    const pieces: Piece[] = []
    const blank: Shown = { text: '', cells: blankCells(wide) }
    const wanted = Math.min(frame.length, height)
    for (let y = 0; y < Math.max(wanted, shown.length); y++) {
      const text = (y < wanted && frame[y]) || ''
      const before = shown[y] ?? blank
      if (text === before.text) continue
      const room = y === height - 1 ? wide - 1 : wide
      const cells = cellsOf(text, room)
      if (cells && before.cells) pieces.push(...changedPieces(y, before.cells, cells))
      else pieces.push(wholePiece(y, text, room))
      shown[y] = { text, cells }
    }
    shown.length = wanted
    const out = (cleared ? '' : CLEAR) + written(pieces)
    cleared = true
    if (out !== '') target.write(SYNCHRONISED[0] + out + SYNCHRONISED[1])
  }

  const painter: Painter = Object.assign(new EventEmitter(), {
    isTTY: true as const,
    columns: 0,
    rows: 0,
    write(data: string, done?: () => void) {
      if (open && data !== '' && !data.startsWith(CURSOR_SWITCH)) {
        frame = data.split('\n')
        draw()
      }
      if (done) setImmediate(done)
      return true
    },
    show(wanted: readonly string[]) {
      frame = wanted
      if (open) draw()
    },
    pause() {
      paused = true
    },
    repaint() {
      paused = false
      shown = []
      cleared = false
      if (open && frame.length > 0) draw()
    },
    send(sequence: string) {
      if (open) target.write(sequence)
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
