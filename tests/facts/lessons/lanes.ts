import { type OilWanted, oilSheet } from '../../../src/scenarios/library/oil-sheet.js'
import { feetToMetres } from '../../../src/sim/units.js'
import type { BallSpecification } from '../../../src/sim/world/ball/specification.js'
import type { BlockSetup } from '../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../src/sim/world/bowler/levels.js'
import type { BowlerProfile } from '../../../src/sim/world/bowler/profile.js'
import { layPattern, type OilPattern } from '../../../src/sim/world/lane/pattern.js'
import { freshLane, type LaneState } from '../../../src/sim/world/lane/wear.js'
import { bag } from '../../sim/world/ball/bag-for-tests.js'
import { flatFortyFive, houseForty } from '../../sim/world/lane/patterns-for-tests.js'

/** Machine passes that measure as wanted, as a pattern in SI. */
export function patternOf(name: string, wanted: OilWanted): OilPattern {
  const passes = oilSheet(wanted).map(
    ({ direction, boards, microlitresPerBoard, fromFeet, toFeet, taperFeet = 0 }) => ({
      direction,
      fromBoard: boards[0],
      toBoard: boards[1],
      microlitresPerBoard,
      fromMetres: feetToMetres(fromFeet),
      toMetres: feetToMetres(toFeet),
      taperMetres: feetToMetres(taperFeet),
    }),
  )
  return { name, passes }
}

export const LENGTHS_FEET = [35, 38, 41, 44, 47] as const

/** Flat oil of one shape at any length, as much a foot at each. */
export const madeToMeasure = (lengthFeet: number): OilPattern =>
  patternOf(`${lengthFeet} ft`, {
    lengthFeet,
    millilitres: (24 * lengthFeet) / 41,
    ratio: 2.5,
    crown: [7, 14],
    edge: 1,
  })

const sportThirtyNine = patternOf('sport 39 ft', { lengthFeet: 39, millilitres: 23, ratio: 2.8, crown: [7, 14] })

/** The lanes on which friction, wear and the launch limit were fitted; with the made-to-measure lengths. */
export const FITTED = { house: houseForty, flat: flatFortyFive, sport: sportThirtyNine } as const

/** Lanes on which nothing was fitted, chosen before the fit: they only check it. */
export const HELD_OUT = {
  'heavy house 42 ft': patternOf('heavy house', { lengthFeet: 42, millilitres: 29, ratio: 8 }),
  'long flat 43 ft': patternOf('long flat', { lengthFeet: 43, millilitres: 27, ratio: 2, crown: [6, 15] }),
  'challenge 41 ft': patternOf('challenge', { lengthFeet: 41, millilitres: 25, ratio: 5.5 }),
  'light house 38 ft': patternOf('light house', { lengthFeet: 38, millilitres: 20, ratio: 10 }),
} as const

/** A block alone on one lane. */
export function aloneOn(
  pattern: OilPattern,
  bowler: BowlerProfile = levelProfile('200'),
  balls: readonly BallSpecification[] = bag,
): BlockSetup {
  return {
    name: pattern.name,
    lanes: [{ name: 'lane', oil: { kind: 'pattern', pattern } }],
    bag: balls,
    bowler,
    field: [],
    practiceThrows: 0,
    games: 1,
    scoring: 'ten-pin',
    posted: 'sheet',
    seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
  }
}

export const freshOn = (pattern: OilPattern): LaneState => freshLane(layPattern(pattern))
