import { change } from './sgr.js'

/** Something to be written on one row, all in one style. */
export interface Piece {
  readonly x: number
  readonly y: number
  readonly text: string
  /** Columns the cursor moves on by; null where it cannot be said where it then stands. */
  readonly columns: number | null
  readonly style: string
}

/**
 * What is sent to the terminal for pieces that do not overlap, ending in no style. Row by row, neighbours need no move; style by
 * style, each style is named once. Whichever is shorter is taken, for nothing shows before the frame is whole.
 */
export function written(pieces: readonly Piece[]): string {
  const inOrder = sequence(pieces)
  const byStyle = sequence([...pieces].sort((a, b) => (a.style < b.style ? -1 : a.style > b.style ? 1 : 0)))
  return byStyle.length < inOrder.length ? byStyle : inOrder
}

function sequence(pieces: readonly Piece[]): string {
  let out = ''
  let style = ''
  /** Where the terminal's cursor stands; row -1 where that is not known. */
  let column = 0
  let row = -1
  for (const piece of pieces) {
    if (piece.y !== row) out += `\u001B[${piece.y + 1};${piece.x + 1}H`
    else if (piece.x !== column) out += `\u001B[${piece.x + 1}G`
    out += change(style, piece.style) + piece.text
    style = piece.style
    row = piece.columns === null ? -1 : piece.y
    column = piece.x + (piece.columns ?? 0)
  }
  return out + change(style, '')
}
