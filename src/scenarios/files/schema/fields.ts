import { z } from 'zod'
import { lineWords, ONE_LINE } from '../text/one-line.js'

/**
 * Field kinds whose message is what is ALLOWED there, in words; `problems.ts` puts what was found before it.
 * Keeping the two apart gives every wrong value the same sentence, whatever is wrong with it.
 */

/** As ONE_LINE, with line ends. */
const SEVERAL_LINES = /^[\n\u0020-\u007e\u00a0-\uffff]*$/

/** A number from `least` to `most`, both included; `unit` is the word after the figures, such as 'feet'. */
export function numberFrom(least: number, most: number, unit = '') {
  const allowed = `a number from ${least} to ${most}${unit && ` ${unit}`}`
  return z
    .number({ error: () => allowed })
    .min(least, allowed)
    .max(most, allowed)
}

/** A whole number from `least` to `most`, both included. */
export function wholeFrom(least: number, most: number, unit = '') {
  const allowed = `a whole number from ${least} to ${most}${unit && ` ${unit}`}`
  return z
    .int({ error: () => allowed })
    .min(least, allowed)
    .max(most, allowed)
}

/** A whole or half number from `least` to `most`: the step boards are spoken of in. */
export function halfFrom(least: number, most: number, unit = '') {
  const allowed = `a whole or half number from ${least} to ${most}${unit && ` ${unit}`}`
  return z
    .number({ error: () => allowed })
    .min(least, allowed)
    .max(most, allowed)
    .multipleOf(0.5, allowed)
}

/** One of a few words. */
export function oneOf<const Words extends readonly [string, ...string[]]>(...words: Words) {
  return z.enum(words, { error: () => `one of ${words.join(', ')}` })
}

export function yesOrNo() {
  return z.boolean({ error: () => 'true or false' })
}

/** One line of text that is not empty. */
export function line(most: number) {
  const allowed = lineWords(most)
  return z
    .string({ error: () => allowed })
    .min(1, allowed)
    .max(most, allowed)
    .regex(ONE_LINE, allowed)
}

/** Text that may run over several lines and may be empty. */
export function prose(most: number) {
  const allowed = `text of at most ${most} characters`
  return z
    .string({ error: () => allowed })
    .max(most, allowed)
    .regex(SEVERAL_LINES, allowed)
}

/** A short name for use on the command line and in other fields: letters, digits and hyphens. */
export function identifier() {
  const allowed = 'a short name of small letters, digits and hyphens, 1 to 40 characters'
  return z.string({ error: () => allowed }).regex(/^[a-z0-9][a-z0-9-]{0,39}$/, allowed)
}

/** A list of `least` to `most` things. */
export function listOf<Item extends z.ZodType>(item: Item, least: number, most: number, things: string) {
  const allowed = `a list of ${least === most ? least : `${least} to ${most}`} ${things}`
  return z
    .array(item, { error: () => allowed })
    .min(least, allowed)
    .max(most, allowed)
}

/** Two numbers, the smaller first. */
export function range(least: number, most: number, unit: string) {
  const allowed = `two numbers, the smaller first, from ${least} to ${most} ${unit}`
  const end = z
    .number({ error: () => allowed })
    .min(least, allowed)
    .max(most, allowed)
  return z.tuple([end, end], { error: () => allowed }).refine(([low, high]) => low <= high, allowed)
}

/** A table of named fields; unknown names are errors, so that a slip of the pen is never silently ignored. */
export function table<Shape extends z.core.$ZodLooseShape>(shape: Shape, what: string) {
  const names = `one of the fields ${Object.keys(shape).join(', ')}`
  const needed = Object.entries(shape).flatMap(([name, field]) => (field._zod.optin === 'optional' ? [] : [name]))
  const allowed = `${what} with ${needed.join(', ')}`
  return z.strictObject(shape, { error: (issue) => (issue.code === 'unrecognized_keys' ? names : allowed) })
}
