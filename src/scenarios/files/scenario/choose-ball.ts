import { ScenarioError } from '../text/scenario-error.js'
import type { Scenario } from './scenario.js'

/**
 * Place in the bag of a ball named by its id or by its place from 1.
 *
 * @throws ScenarioError
 */
export function ballPlace({ name, setup: { bag } }: Scenario, named: string): number {
  const place = bag.findIndex((one, index) => one.id === named || String(index + 1) === named)
  if (place < 0) {
    throw new ScenarioError([
      `${name}: there is no ball "${named}"; the bag holds ${bag.map(({ id }) => id).join(', ')}.`,
    ])
  }
  return place
}

/**
 * Checks that a scenario has a lane, counted from 1, and returns its index.
 *
 * @throws ScenarioError
 */
export function laneIndex({ name, setup: { lanes } }: Scenario, lane: number): number {
  if (lane > lanes.length) {
    throw new ScenarioError([`${name}: there is no lane ${lane}; the scenario has ${lanes.length}.`])
  }
  return lane - 1
}
