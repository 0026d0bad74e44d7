import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import type { FormField, FormState } from '../../forms/form.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { wrapWords } from '../../terminal/fit.js'

const LABEL_COLUMNS = 42
const ROWS_AROUND_FIELDS = 5

export interface FormWords {
  readonly title: string
  /** What to know before filling it in; shown until something is refused. */
  readonly about: string
  /** What is worked out of what has been filled in so far; always in sight. */
  readonly told?: string
}

/** A form: a line a field, the one under the hand between two marks, and below why it was refused. */
export function formScreen<Draft>(
  words: FormWords,
  form: FormState<Draft>,
  fields: readonly FormField<Draft>[],
  size: Size,
  theme: Theme,
): string[] {
  const below =
    form.faults.length > 0
      ? form.faults
          .flatMap((fault) => wrapWords(fault, size.columns - 3))
          .map((row) => textRow(theme, [` ${row}`, 'loss']))
      : wrapWords(words.about, Math.min(100, size.columns - 3)).map((row) => textRow(theme, [` ${row}`, 'faint']))
  const shownBelow = below.slice(0, 4)
  const told = words.told === undefined ? [] : [textRow(theme, [` ${words.told}`, 'strong'])]
  const room = size.rows - ROWS_AROUND_FIELDS - shownBelow.length - told.length
  const body = [
    '',
    textRow(theme, [` ${words.title}`, 'strong']),
    '',
    ...scrolled(fieldRows(form, fields, theme), room),
    '',
    ...told,
    ...shownBelow,
  ]
  return page(body, contextKeyLine('form', size.columns, theme), size)
}

interface FieldRow {
  readonly text: string
  readonly isChosen: boolean
}

function fieldRows<Draft>(form: FormState<Draft>, fields: readonly FormField<Draft>[], theme: Theme): FieldRow[] {
  const { pointer, left, right } = theme.glyphs
  return fields.flatMap((field, index) => {
    const isChosen = index === form.cursor
    const value = isChosen && form.typing !== null ? `${form.typing}_` : field.shown(form.draft)
    const label = field.label.padEnd(LABEL_COLUMNS)
    const row = isChosen
      ? textRow(theme, [` ${pointer} ${label}${left} ${value} ${right}`, 'accent'])
      : textRow(theme, `   ${label}  ${value}`)
    const heading = field.heading ? [{ text: textRow(theme, [`   ${field.heading}`, 'faint']), isChosen: false }] : []
    return [...heading, { text: row, isChosen }]
  })
}

/** As many rows as there is room for, the chosen one among them. */
function scrolled(rows: readonly FieldRow[], room: number): string[] {
  const at = rows.findIndex(({ isChosen }) => isChosen)
  const first = Math.max(0, Math.min(at - Math.floor(room / 2), rows.length - room))
  return rows.slice(first, first + room).map(({ text }) => text)
}
