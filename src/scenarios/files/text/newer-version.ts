import { ScenarioError } from './scenario-error.js'
import type { LocatedData } from './source-text.js'

/**
 * Refuses a file of a later format version than this program knows, whatever else is in it.
 *
 * @throws ScenarioError
 */
export function refuseNewer(source: LocatedData, known: number): void {
  const { data } = source
  const version = typeof data === 'object' && data !== null ? (data as { version?: unknown }).version : undefined
  if (typeof version !== 'number' || !Number.isInteger(version) || version <= known) return
  throw new ScenarioError([
    `${source.place(['version'], 'value').text} version: found ${version}, of a newer Dryboard; this one reads version ${known} and leaves the file as it is.`,
  ])
}
