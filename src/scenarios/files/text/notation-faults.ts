import type { YAMLError } from 'yaml'

/** What each fault of the notation is in the words of one who writes lists and tables, not parsers. */
const WORDS: Partial<Record<YAMLError['code'], string>> = {
  BAD_INDENT: 'This line is not indented like the others of its list or table.',
  BAD_SCALAR_START: 'A text that begins with a sign such as @ or % must stand in quotes.',
  BLOCK_AS_IMPLICIT_KEY: 'There are two names with a colon on one line; text with a colon in it must stand in quotes.',
  BLOCK_IN_FLOW:
    'A list or table begins on lines of its own within brackets; write it on one line, or without brackets.',
  DUPLICATE_KEY: 'This name stands here twice.',
  MISSING_CHAR: 'This line stands where an item of the list should, but has no "- " before it.',
  MULTILINE_IMPLICIT_KEY: 'This line has no name with a colon.',
  TAB_AS_INDENT: 'This line begins with a tab; lines are indented with spaces.',
  UNEXPECTED_TOKEN: 'This does not belong here; a bracket, a dash or the indentation before it may be wrong.',
}
const TOO_FAR = 'The line after this one is indented too far.'

/** Faults that only follow from another one, and would send one looking in the wrong place. */
const isFollowing = ({ code, message }: YAMLError, before: YAMLError | undefined): boolean =>
  /^Comments must be separated/.test(message) || (code === 'UNEXPECTED_TOKEN' && before?.code === 'UNEXPECTED_TOKEN')

export interface NotationFault {
  readonly offset: number
  readonly sentence: string
}

/** Every fault of the notation of a file in the order of the file, one a place. */
export function notationFaults(errors: readonly YAMLError[]): NotationFault[] {
  const leading = errors.filter((fault, index) => !isFollowing(fault, errors[index - 1]))
  const told = leading.length > 0 ? leading : errors
  return [...new Set(told.map(({ pos }) => pos[0]))].map((offset) => ({
    offset,
    sentence: sentenceOf(told.filter(({ pos }) => pos[0] === offset)),
  }))
}

function sentenceOf(faults: readonly YAMLError[]): string {
  const [{ code, message }] = faults
  if (code === 'BLOCK_AS_IMPLICIT_KEY' && faults.some((one) => one.code === 'MULTILINE_IMPLICIT_KEY')) return TOO_FAR
  const end = /end with an? ([}\]])/.exec(message)?.[1] ?? /Missing closing (["'])quote/.exec(message)?.[1]
  if (end !== undefined) return `Something opened before this place is not closed: ${end} is missing.`
  return WORDS[code] ?? firstSentence(message)
}

/** The first line of a message, ended like a sentence. */
export function firstSentence(message: string): string {
  const first = message.split('\n')[0].trim()
  return /[.!?]$/.test(first) ? first : `${first}.`
}
