import { metresToBoard, metresToFeet } from '../../units.js'
import type { RollOutcome } from '../../world/ball/launch.js'
import { newRollOutcome, rollBalls } from '../../world/ball/motion.js'
import { observe } from '../../world/block/seen.js'
import type { Observation, SeeingRules, Truth } from '../../world/block/types.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { ARROWS_METRES, deliverInto, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { type Cell, type SeenCells, seenCells } from '../belief/seen-cells.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import type { Bench, JudgedThrow } from '../shots/worth-matrix.js'

/** Throws that are told apart by where they cross the arrows: means of the three thirds of a normal number. */
const ALONG = [-1.0908, 0, 1.0908] as const
/** Misses that nobody sees, for each of those: across the arrows' line, spin, rotation. */
const UNSEEN = [
  [1, 1, -1],
  [-1, -1, 1],
] as const
export const UNSEEN_MISSES = UNSEEN.length

/** How one throw would go on one lane: place at the arrows by place, unseen miss by unseen miss. */
export type ThrowOnLane = readonly RollOutcome[]

const launches = Array.from({ length: ALONG.length * UNSEEN_MISSES }, scratchLaunch)
const normals = new Float64Array(5)

/** Rolls a throw with a handful of misses that stand for all. */
export function rollProbe({ film, steps }: FilmInPlay, bench: Bench, thrown: JudgedThrow): ThrowOnLane {
  const { profile, bag } = bench
  const release = thrown.release ?? 'strike'
  const [byLaydown, byAngle] = arrowsDirection(profile, release)
  const meant = meantThrow(profile, thrown.aim, release)
  let count = 0
  for (const along of ALONG)
    for (const [across, spin, rotation] of UNSEEN) {
      normals[0] = along * byLaydown - across * byAngle
      normals[1] = along * byAngle + across * byLaydown
      normals[2] = 0
      normals[3] = spin
      normals[4] = rotation
      deliverInto(launches[count++], meant, normals)
    }
  const rolled = launches.map(newRollOutcome)
  rollBalls(film, steps, bag[thrown.ballIndex], launches, rolled, count)
  return rolled
}

/** Unit vector of the laydown's and the angle's own normal number along which the place at the arrows moves. */
function arrowsDirection(profile: BowlerProfile, release: 'strike' | 'spare'): readonly [number, number] {
  const error = release === 'strike' ? profile.error : profile.spareError
  const rho = error.lateralAngleCorrelation
  const byLaydown = error.lateralMetres + ARROWS_METRES * error.angleRadians * rho
  const byAngle = ARROWS_METRES * error.angleRadians * Math.sqrt(1 - rho * rho)
  const length = Math.sqrt(byLaydown * byLaydown + byAngle * byAngle)
  return length > 0 ? [byLaydown / length, byAngle / length] : [1, 0]
}

/** Says what would be shown of a rolled throw, and what may lie behind it. */
export type Sight = (rolled: RollOutcome) => SeenCells

/** Looks with an eye that follows the given rules; cells are worked out once for each thing that can be seen. */
export function sightBy(rules: SeeingRules): Sight {
  const boards = new Map<number, Cell>()
  const feet = new Map<number, Cell>()
  const entries = new Map<Observation['contact'], Cell | null>()
  let arrowsAndSpeed: SeenCells | null = null
  return (rolled) => {
    const seen = observe(asTruth(rolled), 0, FULL_RACK, rules)
    if (
      arrowsAndSpeed === null ||
      !boards.has(seen.breakpointBoard) ||
      !feet.has(seen.breakpointFeet) ||
      !entries.has(seen.contact)
    ) {
      const cells = seenCells(seen, rules)
      arrowsAndSpeed = cells
      boards.set(seen.breakpointBoard, cells.breakpointBoard)
      feet.set(seen.breakpointFeet, cells.breakpointFeet)
      entries.set(seen.contact, cells.entryBoard)
    }
    return {
      ...arrowsAndSpeed,
      breakpointBoard: boards.get(seen.breakpointBoard) ?? arrowsAndSpeed.breakpointBoard,
      breakpointFeet: feet.get(seen.breakpointFeet) ?? arrowsAndSpeed.breakpointFeet,
      entryBoard: entries.get(seen.contact) ?? null,
    }
  }
}

/** What of an imagined throw the eye rounds; the rest of a truth is nobody's business here. */
function asTruth(rolled: RollOutcome): Truth {
  return {
    path: NOTHING,
    entryBoard: metresToBoard(rolled.lateralAtPinsMetres),
    entryAngleRadians: 0,
    entrySpeedMetresPerSecond: rolled.speedAtPinsMetresPerSecond,
    breakpointBoard: metresToBoard(rolled.breakpointLateralMetres),
    breakpointFeet: metresToFeet(rolled.breakpointMetres),
    hookStartFeet: 0,
    rollStartFeet: 0,
    leftLaneFeet: metresToFeet(rolled.leftLaneMetres),
    touched: 0,
    laneBefore: { film: { microns: NOTHING }, laidMicrolitres: 0, wipedMicrolitres: 0 },
    normals: [],
  }
}

const NOTHING = new Float64Array(0)
