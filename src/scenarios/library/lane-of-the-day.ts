import { createHash } from 'node:crypto'
import { builtInNames, builtInScenario } from './library.js'

/** The lane and the luck that everybody has on one date. */
export interface LaneOfTheDay {
  /** As clocks here show it, 2026-11-27. */
  readonly date: string
  readonly scenarioName: string
  readonly title: string
  readonly seed: string
}

/** Digits of the lane rules' digest that stand in a seed. */
const RULES_DIGITS = 8
const DATE = /^\d{4}-\d{2}-\d{2}$/

/**
 * Which built-in lane a date has, and under which seed: both come from the date and the version of the lane rules alone, so that
 * whoever has the same program has the same oil and the same luck. Lanes to which a bowler takes a choice of balls are left out, for
 * there nobody bowls the same bag.
 *
 * @param date as 2026-11-27
 * @param laneRules names the laws of motion, wear and pins (the model's fingerprint)
 * @throws RangeError when that is no date
 */
export function laneOfTheDay(date: string, laneRules: string): LaneOfTheDay {
  if (!DATE.test(date)) throw new RangeError(`A date is written 2026-11-27, not ${date}.`)
  const seed = `day-${date}-${laneRules.slice(0, RULES_DIGITS)}`
  const names = builtInNames().filter((name) => builtInScenario(name)?.takeBalls === undefined)
  const draw = createHash('sha256').update(seed).digest().readUInt32BE(0)
  const scenarioName = names[draw % names.length]!
  return { date, scenarioName, title: builtInScenario(scenarioName)!.title, seed }
}
