import { dayOf } from '../review/period.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'

/** Blocks of one stretch of time. */
interface Stretch {
  readonly name: string
  readonly within: readonly ReviewedBlock[]
}

/** The latest so many are told. */
const MOST_TOLD = 12
const FEWEST = 2
const DAY_MILLISECONDS = 86_400_000

/** Blocks by month or, where all lie in one, by week or by day; those of unknown day are a stretch of their own, the first. */
export function stretchesOf(blocks: readonly ReviewedBlock[]): Stretch[] {
  const known = blocks.filter((block) => dayOf(block) !== null)
  const unknown = blocks.filter((block) => dayOf(block) === null)
  const cuts: readonly ((day: string) => string)[] = [(day) => day.slice(0, 7), weekOf, (day) => day]
  const told = cuts.map((cut) => cutBy(known, cut))
  const chosen = told.find((stretches) => stretches.length >= FEWEST) ?? told[0]!
  return [...(unknown.length > 0 ? [{ name: 'unknown', within: unknown }] : []), ...chosen.slice(-MOST_TOLD)]
}

function cutBy(blocks: readonly ReviewedBlock[], cut: (day: string) => string): Stretch[] {
  const names = [...new Set(blocks.map((block) => cut(dayOf(block)!)))]
  return names.map((name) => ({ name, within: blocks.filter((block) => cut(dayOf(block)!) === name) }))
}

/** The Monday of a day's week. */
function weekOf(day: string): string {
  const when = Date.parse(`${day}T00:00:00Z`)
  const weekday = (new Date(when).getUTCDay() + 6) % 7
  return new Date(when - weekday * DAY_MILLISECONDS).toISOString().slice(0, 10)
}
