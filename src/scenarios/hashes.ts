import { createHash } from 'node:crypto'
import { CARRY_CELLS_TEXT, CARRY_TABLE, SPARE_CURVES_TEXT } from '../sim/pins/carry-table-data.js'
import type { ScenarioData } from './schema/scenario.js'

let table: string | undefined

/** Names the carry table that choices are priced by: its rack version and a digest of all its figures. */
export function carryTableHash(): string {
  table ??= `${CARRY_TABLE.rackVersion}-${digest(CARRY_CELLS_TEXT + SPARE_CURVES_TEXT)}`
  return table
}

/** Names a scenario by all that is in it, in whatever order its fields were written. */
export function scenarioHash(data: ScenarioData): string {
  return digest(JSON.stringify(sorted(data)))
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
