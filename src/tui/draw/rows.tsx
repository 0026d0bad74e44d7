import { Text } from 'ink'

/** Finished rows, drawn as they are. A row must fit its place; nothing wraps. */
export function Rows({ rows }: { readonly rows: readonly string[] }) {
  if (rows.length === 0) return null
  // A text of blank rows only would be drawn with no height at all.
  return <Text wrap="truncate">{rows.map((row) => (row === '' ? ' ' : row)).join('\n')}</Text>
}
