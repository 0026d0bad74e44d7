import { createHash } from 'node:crypto'
import { CARRY_CELLS_TEXT, CARRY_TABLE, SPARE_CURVES_TEXT } from '../../sim/analysis/carry/carry-table-data.js'
import { ScenarioError } from '../files/text/scenario-error.js'

let table: string | undefined

/** Names the carry table that choices are priced by: its rack version and a digest of all its figures. */
export function carryTableHash(): string {
  table ??= `${CARRY_TABLE.rackVersion}-${digest(CARRY_CELLS_TEXT + SPARE_CURVES_TEXT)}`
  return table
}

/** Names a scenario by all that is in it, in whatever order its fields were written. */
export function scenarioHash(data: unknown): string {
  return digest(canonicalText(data))
}

/** Data as one line of JSON with the fields in order: equal data give equal text. */
export function canonicalText(data: unknown): string {
  return JSON.stringify(sorted(data))
}

/**
 * Checks that the scenario in a file is the one that was put there. It is held against what is written, not against what the
 * schema makes of it: a later program may fill in more.
 *
 * @throws ScenarioError
 */
export function checkScenarioHash(name: string, written: unknown): void {
  const { scenario, scenarioHash: kept } = written as { scenario?: unknown; scenarioHash?: unknown }
  if (scenarioHash(scenario) === kept) return
  throw new ScenarioError([
    `${name}: the scenario inside is not the one the block was played on; the file was changed by hand.`,
  ])
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 16)
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, one]) => one !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, one]) => [name, sorted(one)]),
  )
}
