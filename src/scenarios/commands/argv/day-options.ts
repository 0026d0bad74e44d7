import { InvalidArgumentError } from 'commander'

const DAY = /^\d{4}-\d{2}-\d{2}$/
const DAY_WORDS = 'allowed is a day, such as 2026-03-01'

/** A reader of a day. */
export function dayOption(text: string): string {
  const when = new Date(`${text}T00:00:00Z`)
  const isDay = DAY.test(text) && !Number.isNaN(when.getTime()) && when.toISOString().startsWith(text)
  if (!isDay) throw new InvalidArgumentError(DAY_WORDS)
  return text
}

/** A reader of one more alias; what is allowed in it is said where they are used. */
export function aliasOption(text: string, earlier: readonly string[] = []): readonly string[] {
  return [...earlier, text]
}
