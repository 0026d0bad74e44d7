const range = (from: number, to: number): string[] =>
  Array.from({ length: to - from + 1 }, (_, step) => String.fromCodePoint(from + step))

/** Begins every line that a hostile text would forge. */
const FORGED = 'FORGED'

// Sequences as ECMA-48 and xterm's control sequence document have them.
const SEQUENCES = [
  '\u001B[31mred',
  '\u001B[4m',
  '\u001B[5m',
  '\u001B[7m',
  '\u001B[9m',
  '\u001B[2K',
  '\u001B[1J',
  '\u001B[5A',
  '\u001B[5B',
  '\u001B[5C',
  '\u001B[5D',
  '\u001B[2;5r',
  '\u001B[?7l',
  '\u001B[?25h',
  '\u001B[s',
  '\u001B[38;5;201mpink',
  '\u001B[2J',
  '\u001B[1;1Hhome',
  '\u001B[8mhidden',
  '\u001B[?1049h',
  '\u001B[?1049l',
  '\u001B[?25l',
  '\u001B[?1000h',
  '\u001B[201~q',
  '\u001B[6n',
  '\u001B[c',
  '\u001B[21t',
  '\u001B[5i',
  '\u001B[3J',
  '\u001B[K',
  '\u001B[10A',
  '\u001B[1m',
  '\u001B[0m',
  '\u001B[;m',
  '\u001B[31',
  '\u001B',
  '\u001B\u001B[31m',
  '\u001B[3\u001B[31m1m',
  '\u001Bc',
  '\u001B7',
  '\u001B(0',
  '\u001B#8',
  '\u001B]0;title\u0007',
  '\u001B]2;title\u001B\\',
  '\u001B]52;c;cXVpdA==\u0007',
  '\u001B]8;;file:a\u001B\\link\u001B]8;;\u001B\\',
  '\u001B]11;?\u0007',
  '\u001BP$q m\u001B\\',
  '\u001B_G\u001B\\',
  '\u001B^pm\u001B\\',
  '\u001BXsos\u001B\\',
  '\u009B31m',
  '\u009B2J',
  '\u009D0;title\u009C',
  '\u0090q\u009C',
  `\n${FORGED}: the same`,
  `\r${FORGED}: the same`,
  `\r\n${FORGED}`,
  `\u0085${FORGED}`,
  `\u2028${FORGED}`,
  `\u2029${FORGED}`,
  '\u202Eyaml.cba',
  '\u2067a\u2069b',
  'a\u200Bb',
  '\b\b\b\bxxxx',
  '\u000E\u000F',
  '\u{E0041}\u{E0042}',
  '\uD800',
]

/** Texts that drive, forge or hide on a terminal: each control and format character alone, and whole sequences. */
export const PAYLOADS: readonly string[] = [
  ...SEQUENCES,
  ...range(0x01, 0x09),
  ...range(0x0b, 0x1f),
  ...range(0x7f, 0x9f),
  '\u00AD',
  '\u034F',
  '\u061C',
  '\u115F',
  '\u180E',
  ...range(0x200b, 0x200f),
  ...range(0x2028, 0x202e),
  ...range(0x2060, 0x206f),
  '\u3164',
  ...range(0xfe00, 0xfe0f),
  '\uFEFF',
  '\uFFA0',
  ...range(0xfff9, 0xfffb),
  '\uFDD0',
  '\u{1D173}',
  '\u{E0001}',
  ...range(0xe0020, 0xe002f),
]

/** Written out from the code charts, apart from the properties that the program goes by. */
const DRIVES =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  // biome-ignore lint/suspicious/noMisleadingCharacterClass: each is looked for by itself
  /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u00AD\u061C\u115F\u180E\u200B-\u200F\u2028-\u202E\u2060-\u206F\u3164\uFE00-\uFE0F\uFEFF\uFFA0\uFFF9-\uFFFB\uFDD0-\uFDEF\u{1D173}-\u{1D17A}\u{E0000}-\u{E0FFF}\p{Surrogate}]|\u034F/u

/** What reached the terminal that should not have, or null: a character that drives it, or a line somebody forged. */
export function leakIn(text: string): string | null {
  const found = DRIVES.exec(text)
  if (found) return JSON.stringify(text.slice(Math.max(0, found.index - 30), found.index + 30))
  return text.split('\n').find((line) => line.startsWith(FORGED)) ?? null
}

/** The one kind of sequence the screen sends, in a theme without colours: weights, moves, erasing and frames. */
const OWN_SEQUENCES = new RegExp(`${String.fromCharCode(27)}\\[(?:[012;]*m|\\d+;\\d+H|\\d+G|K|2J|\\?2026[hl])`, 'g')

/** The same of what was sent to a screen. */
export const leakOnScreen = (sent: string): string | null => leakIn(sent.replace(OWN_SEQUENCES, ''))
