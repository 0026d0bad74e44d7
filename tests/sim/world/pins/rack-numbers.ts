import { stream } from '../../../../src/sim/random.js'
import { boardsToMetres, degreesToRadians, mphToMetresPerSecond, poundsToKilograms } from '../../../../src/sim/units.js'
import { drawRackNature, type RackNature } from '../../../../src/sim/world/pins/nature.js'
import { type RackResult, type RackThrow, throwAtRack } from '../../../../src/sim/world/pins/rack.js'

/** A throw in the units of the published figures; board as the ball's centre crosses the head pin's row. */
export function throwOf(board: number, angleDegrees: number, mph = 17.5, standing = 1023, pounds = 15): RackThrow {
  return {
    offsetMetres: boardsToMetres(20 - board),
    angleRadians: degreesToRadians(angleDegrees),
    speedMetresPerSecond: mphToMetresPerSecond(mph),
    ballMassKilograms: poundsToKilograms(pounds),
    standing,
  }
}

/** The k-th rack of a named study. */
export const rackNumber = (study: string, k: number): RackNature =>
  drawRackNature(stream({ seed: study, game: 0, frame: 0, ball: 1, purpose: 'study', index: k }))

/** The same throw at `count` racks of a named study. */
export const manyThrows = (rackThrow: RackThrow, study: string, count: number): RackResult[] =>
  Array.from({ length: count }, (_, k) => throwAtRack(rackThrow, rackNumber(study, k)))

export const strikeShare = (results: readonly RackResult[]): number =>
  results.filter(({ standing }) => standing === 0).length / results.length

/** Values with how often each came, commonest first. */
export function tallied(values: readonly number[]): (readonly [value: number, share: number])[] {
  const counts = new Map<number, number>()
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1)
  return [...counts]
    .map(([value, count]) => [value, count / values.length] as const)
    .sort((first, second) => second[1] - first[1] || first[0] - second[0])
}
