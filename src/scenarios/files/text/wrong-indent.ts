import { parseDocument } from 'yaml'

/** Longer texts are not tried over and over. */
const LONGEST_TRIED = 40_000
/** So many lines before the first place a parser stumbled at, the cause may lie; it may be the one after it, too. */
const LINES_BEFORE = 3
/** Indentations near a line are those of so many lines around it. */
const LINES_AROUND = 4

/** One line that is indented wrongly, by its number from 1, and how many spaces would fit. */
export interface WrongIndent {
  readonly line: number
  readonly found: number
  readonly fitting: number
}

/**
 * The one line that, indented otherwise, lets a text be read; null where there is none near the first place the parser stumbled at.
 * One wrong indentation makes a parser complain of every line after it, and none of those is at fault.
 *
 * @param stumbledAt line of the first complaint, from 1
 */
export function wrongIndent(text: string, stumbledAt: number): WrongIndent | null {
  if (text.length > LONGEST_TRIED) return null
  const lines = text.split('\n')
  const last = Math.min(lines.length, stumbledAt + 1)
  const tried: WrongIndent[] = []
  for (let line = Math.max(1, stumbledAt - LINES_BEFORE); line <= last; line++) {
    const found = indentOf(lines[line - 1]!)
    if (found === null) continue
    for (const fitting of indentsAround(lines, line)) if (fitting !== found) tried.push({ line, found, fitting })
  }
  // The smallest change first, and of equal ones the line the parser stumbled at.
  const off = ({ line, found, fitting }: WrongIndent): number =>
    2 * Math.abs(fitting - found) + Math.abs(line - stumbledAt) / lines.length
  return tried.sort((a, b) => off(a) - off(b)).find((one) => isSound(lines, one)) ?? null
}

function indentOf(line: string): number | null {
  const bare = line.trimStart()
  return bare === '' || bare.startsWith('#') ? null : line.length - bare.length
}

function indentsAround(lines: readonly string[], line: number): ReadonlySet<number> {
  const near = lines.slice(Math.max(0, line - 1 - LINES_AROUND), line + LINES_AROUND)
  const found = near.flatMap((one) => {
    const indent = indentOf(one)
    if (indent === null) return []
    // What stands after a dash is indented by two more than the dash.
    return one.trimStart().startsWith('- ') ? [indent, indent + 2] : [indent, Math.max(0, indent - 2)]
  })
  return new Set(found)
}

function isSound(lines: readonly string[], { line, fitting }: WrongIndent): boolean {
  const text = lines.with(line - 1, ' '.repeat(fitting) + lines[line - 1]!.trimStart()).join('\n')
  return parseDocument(text, { prettyErrors: false, uniqueKeys: true, logLevel: 'error' }).errors.length === 0
}
