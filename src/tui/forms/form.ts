/** One line of a form about a draft: what it says, and how a step or a typed figure changes it. */
export interface FormField<Draft> {
  readonly label: string
  readonly shown: (draft: Draft) => string
  /** The draft one step up or down. */
  readonly step: (draft: Draft, by: 1 | -1) => Draft
  /** The draft with what was typed; undefined where the text says nothing here. */
  readonly typed?: (draft: Draft, text: string) => Draft | undefined
  /** What may be typed. */
  readonly accepts?: RegExp
  readonly heading?: string
}

/** A form being filled in: which line is under the hand, and what is being typed into it. */
export interface FormState<Draft> {
  readonly draft: Draft
  readonly cursor: number
  /** Null while nothing is being typed. */
  readonly typing: string | null
  /** What the last attempt to keep it was refused for. */
  readonly faults: readonly string[]
}

export type FormKey = 'up' | 'down' | 'left' | 'right' | 'erase' | { readonly type: string }

const LONGEST_TYPED = 40

export const openForm = <Draft>(draft: Draft): FormState<Draft> => ({ draft, cursor: 0, typing: null, faults: [] })

/** The form after a key; what is being typed is taken over when the hand moves on. */
export function reduceForm<Draft>(
  form: FormState<Draft>,
  fields: readonly FormField<Draft>[],
  key: FormKey,
): FormState<Draft> {
  const field = fields[form.cursor]
  if (!field) return { ...form, cursor: 0 }
  if (typeof key === 'object') return typeInto(form, field, key.type)
  switch (key) {
    case 'erase': {
      if (!field.typed) return form
      const text = form.typing ?? field.shown(form.draft)
      return { ...form, typing: text.slice(0, -1) }
    }
    case 'up':
    case 'down': {
      const by = key === 'up' ? -1 : 1
      return { ...settleTyping(form, fields), cursor: (form.cursor + by + fields.length) % fields.length }
    }
    case 'left':
    case 'right': {
      const settled = settleTyping(form, fields)
      return { ...settled, draft: field.step(settled.draft, key === 'left' ? -1 : 1), faults: [] }
    }
  }
}

function typeInto<Draft>(form: FormState<Draft>, field: FormField<Draft>, text: string): FormState<Draft> {
  if (!field.typed || !field.accepts?.test(text)) return form
  const typing = ((form.typing ?? '') + text).slice(0, LONGEST_TYPED)
  return { ...form, typing, faults: [] }
}

const PRINTABLE = /^[\u0020-\u007e\u00a0-\uffff]$/

/**
 * The form with pasted text typed into its line: line ends and whatever is not printable are dropped, and what is too long is
 * cut. Text with other characters than the line takes is refused whole, for a figure with some of them left out is another.
 */
export function pasteInto<Draft>(
  form: FormState<Draft>,
  fields: readonly FormField<Draft>[],
  text: string,
): FormState<Draft> {
  const field = fields[form.cursor]
  const { accepts } = field ?? {}
  const printable = [...text]
    .filter((one) => PRINTABLE.test(one))
    .join('')
    .trim()
  if (!field?.typed || !accepts || printable === '') return form
  if ([...printable].some((one) => !accepts.test(one))) {
    const found = printable.slice(0, LONGEST_TYPED)
    return { ...form, faults: [`"${found}" was pasted; this line takes digits, a point and a minus sign.`] }
  }
  const typing = ((form.typing ?? '') + printable).slice(0, LONGEST_TYPED)
  return { ...form, typing, faults: [] }
}

/** The form with what was typed taken over; what says nothing is dropped. */
export function settleTyping<Draft>(form: FormState<Draft>, fields: readonly FormField<Draft>[]): FormState<Draft> {
  if (form.typing === null) return form
  const draft = fields[form.cursor]?.typed?.(form.draft, form.typing) ?? form.draft
  return { ...form, draft, typing: null }
}

/** A field that is one of a few words. */
export function choiceField<Draft, Key extends keyof Draft>(
  label: string,
  key: Key,
  values: readonly Draft[Key][],
  words: (value: Draft[Key]) => string = String,
): FormField<Draft> {
  return {
    label,
    shown: (draft) => words(draft[key]),
    step: (draft, by) => {
      const at = values.indexOf(draft[key])
      return { ...draft, [key]: values[(at + by + values.length) % values.length] }
    },
  }
}

const NUMBER_KEY = /^[0-9.-]$/

/** A figure that is stepped through or typed; what it may be is for the check at the end to say. */
export function numberField<Draft>(
  label: string,
  unit: string,
  step: number,
  decimals: number,
  read: (draft: Draft) => number,
  write: (draft: Draft, value: number) => Draft,
): FormField<Draft> {
  const rounded = (value: number) => Number(value.toFixed(decimals))
  return {
    label: unit === '' ? label : `${label}, ${unit}`,
    shown: (draft) => read(draft).toFixed(decimals),
    step: (draft, by) => write(draft, rounded(read(draft) + by * step)),
    accepts: NUMBER_KEY,
    typed: (draft, text) => {
      const value = Number(text)
      return text.trim() === '' || !Number.isFinite(value) ? undefined : write(draft, rounded(value))
    },
  }
}

/** A line of text, typed. */
export function textField<Draft>(
  label: string,
  read: (draft: Draft) => string,
  write: (draft: Draft, text: string) => Draft,
): FormField<Draft> {
  return {
    label,
    shown: read,
    step: (draft) => draft,
    accepts: PRINTABLE,
    typed: (draft, text) => (text.trim() === '' ? undefined : write(draft, text.trim())),
  }
}
