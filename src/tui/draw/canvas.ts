import { visibleLine } from '../../scenarios/files/text/visible-text.js'
import type { Ink, Theme } from './theme.js'

const RESET = '\u001B[0m'

/** A rectangle of character cells, each with an ink and perhaps a coloured ground (an oil level). */
export interface Canvas {
  readonly columns: number
  readonly rows: number
  readonly glyphs: string[]
  readonly inks: Ink[]
  readonly grounds: (number | undefined)[]
}

export function newCanvas(columns: number, rows: number): Canvas {
  const cells = columns * rows
  return {
    columns,
    rows,
    glyphs: new Array<string>(cells).fill(' '),
    inks: new Array<Ink>(cells).fill('plain'),
    grounds: new Array<number | undefined>(cells).fill(undefined),
  }
}

/** Writes text of single-width characters from (x, y) rightwards, what is hidden in it shown; what falls outside the canvas is left out. */
export function put(canvas: Canvas, x: number, y: number, text: string, ink: Ink = 'plain'): void {
  if (y < 0 || y >= canvas.rows) return
  let column = x
  for (const glyph of visibleLine(text)) {
    if (column >= 0 && column < canvas.columns) {
      const cell = y * canvas.columns + column
      canvas.glyphs[cell] = glyph
      canvas.inks[cell] = ink
    }
    column++
  }
}

/** Writes text so that it ends before column `end`. */
export function putRight(canvas: Canvas, end: number, y: number, text: string, ink: Ink = 'plain'): void {
  put(canvas, end - [...text].length, y, text, ink)
}

/** Writes text centred on columns `from` to `from + columns`. */
export function putCentred(
  canvas: Canvas,
  from: number,
  columns: number,
  y: number,
  text: string,
  ink: Ink = 'plain',
): void {
  put(canvas, from + Math.floor((columns - [...text].length) / 2), y, text, ink)
}

export function ground(canvas: Canvas, x: number, y: number, level: number): void {
  canvas.grounds[y * canvas.columns + x] = level
}

/** The canvas as styled rows, with one style change a run of like cells. */
export function canvasRows(canvas: Canvas, theme: Theme): string[] {
  return Array.from({ length: canvas.rows }, (_, y) => canvasRow(canvas, y, theme))
}

function canvasRow(canvas: Canvas, y: number, theme: Theme): string {
  let row = ''
  let style = ''
  for (let cell = y * canvas.columns; cell < (y + 1) * canvas.columns; cell++) {
    const glyph = canvas.glyphs[cell]!
    const ground = canvas.grounds[cell]
    // A blank cell without a ground looks the same in every ink, so it need not end a run.
    const wanted = glyph === ' ' && ground === undefined ? blankStyle(style) : theme.style(canvas.inks[cell]!, ground)
    if (wanted !== style) {
      row += (style === '' ? '' : RESET) + wanted
      style = wanted
    }
    row += glyph
  }
  return style === '' ? row : row + RESET
}

const blankStyle = (running: string): string => (running.includes('48;') ? '' : running)
