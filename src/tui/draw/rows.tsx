import { Text } from 'ink'
import { clipRow } from '../terminal/fit.js'

interface RowsProps {
  readonly rows: readonly string[]
  readonly columns: number
}

/** Finished rows, drawn as they are; one that is too long for its place is cut, never wrapped. */
export function Rows({ rows, columns }: RowsProps) {
  if (rows.length === 0) return null
  // A blank row needs a character, or a text of blank rows only would be drawn with no height at all.
  return <Text>{rows.map((row) => (row === '' ? ' ' : clipRow(row, columns))).join('\n')}</Text>
}
