import { fitRow } from '../terminal/fit.js'

/** Size of the screen in characters. */
export interface Size {
  readonly columns: number
  readonly rows: number
}

/** The least that holds everything. */
export const LEAST_SIZE: Size = { columns: 80, rows: 22 }

export const fits = (size: Size): boolean => size.columns >= LEAST_SIZE.columns && size.rows >= LEAST_SIZE.rows

/** Two blocks of rows side by side, the left one filled to `leftColumns`. */
export function beside(left: readonly string[], leftColumns: number, right: readonly string[]): string[] {
  return Array.from({ length: Math.max(left.length, right.length) }, (_, row) => {
    const end = right[row]
    return end === undefined ? (left[row] ?? '') : fitRow(left[row] ?? '', leftColumns) + end
  })
}

/** Rows cut or filled with blank ones to exactly `count`. */
export function exactly(rows: readonly string[], count: number): string[] {
  return Array.from({ length: count }, (_, row) => rows[row] ?? '')
}

/** Rows moved `columns` to the right. */
export const indent = (rows: readonly string[], columns: number): string[] =>
  rows.map((row) => ' '.repeat(columns) + row)

/** A whole screen: body from the top, foot on the last row. */
export function page(body: readonly string[], foot: string, size: Size): string[] {
  return [...exactly(body, size.rows - 1), foot]
}
