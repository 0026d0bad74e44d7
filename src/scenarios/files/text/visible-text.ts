/**
 * What must never reach a terminal out of a text that is not ours, for it moves the cursor, recolours, hides or turns text round:
 * controls (C0, DEL, C1), whatever Unicode has a display ignore (bidirectional overrides and isolates, joiners, selectors, tags),
 * line and paragraph separators, annotation marks, halves of surrogate pairs and noncharacters.
 *
 * Properties as the Unicode Character Database has them: General_Category, Default_Ignorable_Code_Point, Noncharacter_Code_Point.
 */
const HIDDEN = /[\p{Cc}\p{Default_Ignorable_Code_Point}\p{Zl}\p{Zp}\p{Cs}\p{Noncharacter_Code_Point}\ufff9-\ufffb]/u
const ALL_HIDDEN = new RegExp(HIDDEN, 'gu')
const SHORT: Readonly<Record<string, string>> = { '\t': '\\t', '\n': '\\n', '\r': '\\r' }

function escapeOf(character: string): string {
  const code = character.codePointAt(0)!
  const digits = code.toString(16)
  if (code < 0x100) return SHORT[character] ?? `\\x${digits.padStart(2, '0')}`
  return code > 0xffff ? `\\u{${digits}}` : `\\u${digits.padStart(4, '0')}`
}

/** A line as it may be shown: each hidden character as an escape such as \x1b or \u202e. A line end within it is one too. */
export function visibleLine(text: string): string {
  return HIDDEN.test(text) ? text.replace(ALL_HIDDEN, escapeOf) : text
}

/** JSON or double-quoted YAML as it may be shown: hidden characters within its texts as escapes that mean the same. */
export function visibleJson(text: string): string {
  return text.replace(ALL_HIDDEN, (character) =>
    character === '\n' ? character : unitsOf(character).map(escapedUnit).join(''),
  )
}

const unitsOf = (character: string): number[] =>
  Array.from({ length: character.length }, (_, index) => character.charCodeAt(index))

const escapedUnit = (unit: number): string => `\\u${unit.toString(16).padStart(4, '0')}`
