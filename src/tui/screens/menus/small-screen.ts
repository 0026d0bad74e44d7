import { exactly, LEAST_SIZE, type Size } from '../../draw/layout.js'
import { wrapWords } from '../../terminal/fit.js'

/** What is shown while the terminal is too small; everything stays as it is meanwhile. */
export function smallScreen(size: Size): string[] {
  const { columns, rows } = LEAST_SIZE
  const sentence = `Dryboard needs ${columns} by ${rows} characters; this terminal has ${size.columns} by ${size.rows}. Make it larger and go on, or q to quit; nothing is lost.`
  return exactly(wrapWords(sentence, Math.max(1, size.columns - 1)), size.rows)
}
