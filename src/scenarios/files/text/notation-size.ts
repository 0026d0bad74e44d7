/** Of a file in YAML or JSON. The longest record has five sixths of this; reading time goes with it, whatever the file holds. */
const MOST_MARKS = 50_000
/** Of brackets within brackets. */
const DEEPEST = 60

const OPENING = new Set('[{')
const CLOSING = new Set(']}')
/** Whatever begins another item, line or text. */
const MARKS = new Set('[]{},:"\'\n\r\\&*!')
const MARKS_BEFORE_BLANK = new Set('-?')

/**
 * Why a text is too much to be read as YAML, in words; null where it is not. Every item, line and quoted text of a file needs a
 * mark of its own, so this bounds what a reader may have to do; it is found out in one pass, whether or not the text is sound.
 */
export function tooMuchToRead(text: string): string | null {
  let marks = 0
  let depth = 0
  for (let index = 0; index < text.length; index++) {
    const character = text[index]
    if (MARKS.has(character)) marks++
    else if (MARKS_BEFORE_BLANK.has(character) && /\s/.test(text[index + 1] ?? ' ')) marks++
    if (OPENING.has(character)) depth++
    else if (CLOSING.has(character)) depth = Math.max(0, depth - 1)
    if (depth > DEEPEST) return `found more than ${DEEPEST} brackets within brackets; allowed are ${DEEPEST}`
    if (marks > MOST_MARKS) return `found more than ${MOST_MARKS} items and lines; allowed are ${MOST_MARKS}`
  }
  return null
}
