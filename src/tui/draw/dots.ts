import { type Canvas, put } from './canvas.js'
import type { Ink, Theme } from './theme.js'

/** Dots of a braille cell: two across, four down. */
export const DOTS_ACROSS = 2
export const DOTS_DOWN = 4
const BRAILLE_BLANK = 0x2800
// Unicode numbers the dots 1-2-3-7 down the left column and 4-5-6-8 down the right one.
const DOT_BITS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const

/** How a line is broken up, so that lines differ without colour. */
export type Dash = 'solid' | 'dashed' | 'dotted'
const DASHES: Readonly<Record<Dash, readonly boolean[]>> = {
  solid: [true],
  dashed: [true, true, true, false, false, false],
  dotted: [true, false, false],
}

export interface DotLine {
  readonly ink: Ink
  readonly dash: Dash
  /** Shares the cells it touches with the lines under it, instead of taking them over. */
  readonly joins?: true
  /** What the line is drawn with where there are no dots to draw with. */
  readonly letter: string
}

/** Dots being collected for one canvas: bits and line a cell. A line drawn later takes over the cells it touches. */
export interface DotLayer {
  readonly columns: number
  readonly rows: number
  readonly bits: Uint8Array
  readonly lines: (DotLine | undefined)[]
}

export function newDotLayer(columns: number, rows: number): DotLayer {
  return {
    columns,
    rows,
    bits: new Uint8Array(columns * rows),
    lines: new Array<DotLine | undefined>(columns * rows).fill(undefined),
  }
}

/**
 * Draws a curve given as the dot height for each dot column from `fromDot`; steep parts are filled so that the line stays whole.
 * Heights that are NaN or off the layer leave a gap.
 */
export function drawDots(layer: DotLayer, fromDot: number, heights: ArrayLike<number>, line: DotLine): void {
  const dash = DASHES[line.dash]
  let previous = Number.NaN
  for (let index = 0; index < heights.length; index++) {
    const height = Math.round(heights[index]!)
    if (Number.isNaN(height)) {
      previous = Number.NaN
      continue
    }
    if (dash[index % dash.length]) {
      const start =
        Number.isNaN(previous) || Math.abs(height - previous) <= 1 ? height : previous + Math.sign(height - previous)
      for (let y = Math.min(start, height); y <= Math.max(start, height); y++) setDot(layer, fromDot + index, y, line)
    }
    previous = height
  }
}

/** Sets one dot of a line, counted from the layer's corner; dots off the layer are left out. */
export function setDot(layer: DotLayer, x: number, y: number, line: DotLine): void {
  if (x < 0 || y < 0 || x >= layer.columns * DOTS_ACROSS || y >= layer.rows * DOTS_DOWN) return
  const cell = Math.floor(y / DOTS_DOWN) * layer.columns + Math.floor(x / DOTS_ACROSS)
  if (layer.lines[cell] !== line && !line.joins) layer.bits[cell] = 0
  layer.bits[cell]! |= DOT_BITS[x % DOTS_ACROSS]![y % DOTS_DOWN]!
  layer.lines[cell] = line
}

/** Puts the collected dots on a canvas, its corner at (x, y). */
export function stampDots(canvas: Canvas, x: number, y: number, layer: DotLayer, theme: Theme): void {
  for (let cell = 0; cell < layer.bits.length; cell++) {
    const line = layer.lines[cell]
    if (!line) continue
    const glyph = theme.glyphs.braille ? String.fromCodePoint(BRAILLE_BLANK | layer.bits[cell]!) : line.letter
    put(canvas, x + (cell % layer.columns), y + Math.floor(cell / layer.columns), glyph, line.ink)
  }
}
