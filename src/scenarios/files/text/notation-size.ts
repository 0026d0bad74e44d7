/** Of a file in YAML or JSON; the longest record has nine tenths of this. Reading time goes with it, whatever the file holds. */
const MOST_MARKS = 50_000

/** Whatever begins another item or line. */
const MARKS = new Set('[]{},:\n\r\\&*!')
const MARKS_BEFORE_BLANK = new Set('-?')
const QUOTES = new Set('"\'')
/** A quoted text between two marks has as many; any more of them may be another text. */
const QUOTES_OF_A_TEXT = 2

/**
 * Why a text is too much to be read as YAML, in words; null where it is not. Every item, line and quoted text of a file needs a
 * mark of its own, so this bounds what a reader may have to do; it is found out in one pass, whether or not the text is sound.
 */
export function tooMuchToRead(text: string): string | null {
  let marks = 0
  let quotes = 0
  for (let index = 0; index < text.length; index++) {
    const character = text[index]
    if (MARKS.has(character) || (MARKS_BEFORE_BLANK.has(character) && /\s/.test(text[index + 1] ?? ' '))) {
      marks++
      quotes = 0
    } else if (QUOTES.has(character) && ++quotes > QUOTES_OF_A_TEXT) marks++
    if (marks > MOST_MARKS) return `found more than ${MOST_MARKS} items and lines; allowed are ${MOST_MARKS}`
  }
  return null
}
