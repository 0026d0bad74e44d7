import { comingPaste, PASTE_START } from './coming-paste.js'

/** One thing the keyboard said. */
export type KeyToken =
  | { readonly kind: 'key'; readonly sequence: string }
  | { readonly kind: 'interrupt' }
  | { readonly kind: 'redraw' }
  /** A press of the mouse, its place counted from 0. */
  | { readonly kind: 'mouse'; readonly button: number; readonly column: number; readonly row: number }
  | { readonly kind: 'suspend' }
  | { readonly kind: 'quit' }
  | { readonly kind: 'paste'; readonly text: string }

export interface Tokenised {
  readonly tokens: readonly KeyToken[]
  /** The unfinished tail, to be put in front of the next chunk. */
  readonly rest: string
}

const ESCAPE = '\u001B'
// Arrows, Home and End, their modified forms, Shift+Tab, and the numbered editing keys.
// biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences start with a control character
const KNOWN_SEQUENCE = /^\u001B(?:\[(?:1;[2-8])?[ABCDFH]|O[ABCDFH]|\[Z|\[[1345678](?:;[2-8])?~)$/

// xterm's SGR mouse reports (control sequences of xterm, "Extended coordinates"): button, column, row, M for a press.
// biome-ignore lint/suspicious/noControlCharactersInRegex: escape sequences start with a control character
const MOUSE_PRESS = /^\u001B\[<(\d+);(\d+);(\d+)M$/

/**
 * Splits raw terminal input into single keys. Sequences outside the list above are dropped: some of them would
 * end the program inside the screen library. DEL becomes backspace, a line feed becomes Enter, a bracketed paste is kept apart.
 */
export function tokenise(input: string): Tokenised {
  const tokens: KeyToken[] = []
  let index = 0
  while (index < input.length) {
    const character = String.fromCodePoint(input.codePointAt(index)!)
    if (character !== ESCAPE) {
      const token = plainKey(character, input[index - 1])
      if (token) tokens.push(token)
      index += character.length
      continue
    }
    if (input.startsWith(PASTE_START, index)) {
      const paste = comingPaste().take(input.slice(index + PASTE_START.length))
      if (!paste) break
      tokens.push({ kind: 'paste', text: paste.text })
      index = input.length - paste.typed.length
      continue
    }
    const length = sequenceLength(input, index)
    if (length === 0) break
    const sequence = input.slice(index, index + length)
    const press = MOUSE_PRESS.exec(sequence)
    if (press) {
      const [button = 0, column = 1, row = 1] = press.slice(1).map(Number)
      tokens.push({ kind: 'mouse', button, column: column - 1, row: row - 1 })
    } else if (length === 1 || KNOWN_SEQUENCE.test(sequence)) tokens.push({ kind: 'key', sequence })
    index += length
  }
  return { tokens, rest: input.slice(index) }
}

function plainKey(character: string, previous: string | undefined): KeyToken | null {
  if (character === '\u0003') return { kind: 'interrupt' }
  if (character === '\f') return { kind: 'redraw' }
  if (character === '\u001A') return { kind: 'suspend' }
  if (character === '\u001C') return { kind: 'quit' }
  if (character === '\n') return previous === '\r' ? null : { kind: 'key', sequence: '\r' }
  if (character === '\u007F') return { kind: 'key', sequence: '\b' }
  const code = character.codePointAt(0)!
  const unmapped = code === 0 || (code >= 0x1a && code < 0x20) || (code >= 0x80 && code < 0xa0)
  return unmapped ? null : { kind: 'key', sequence: character }
}

/** Length of the sequence that starts with the escape at `index`: 1 for a bare Escape, 0 when more input is needed. */
function sequenceLength(input: string, index: number): number {
  const introducer = input[index + 1]
  if (introducer === undefined) return 0
  if (introducer === 'O') return input[index + 2] === undefined ? 0 : 3
  if (introducer === '[') return controlSequenceLength(input, index)
  if (introducer === ']' || introducer === 'P' || introducer === '_' || introducer === '^') {
    return stringSequenceLength(input, index)
  }
  return 1
}

function controlSequenceLength(input: string, index: number): number {
  // The oldest mouse report is followed by three raw bytes; the Linux console's function keys carry a second bracket.
  if (input[index + 2] === 'M') return input.length >= index + 6 ? 6 : 0
  let end = index + (input[index + 2] === '[' ? 3 : 2)
  while (end < input.length) {
    const code = input.charCodeAt(end)
    if (code >= 0x40 && code <= 0x7e) return end + 1 - index
    if (code < 0x20) return end - index
    end++
  }
  return 0
}

function stringSequenceLength(input: string, index: number): number {
  const bell = input.indexOf('\u0007', index)
  const terminator = input.indexOf(`${ESCAPE}\\`, index)
  const ends = [bell < 0 ? Infinity : bell + 1, terminator < 0 ? Infinity : terminator + 2]
  const end = Math.min(...ends)
  return end === Infinity ? 0 : end - index
}
