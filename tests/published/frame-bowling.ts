import { type PricedLine, searchLines } from '../../src/sim/analysis/shots/best-line.js'
import type { SpareShot, SpareSituation } from '../../src/sim/analysis/shots/spare-choice.js'
import { searchSpare } from '../../src/sim/analysis/shots/spare-search.js'
import { type Pricing, pricingFor } from '../../src/sim/analysis/value/pricing.js'
import { drawNormal, type StreamKey, stream } from '../../src/sim/random.js'
import { boardToMetres, metresToBoard } from '../../src/sim/units.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/world/ball/launch.js'
import { rollBall } from '../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { callContact } from '../../src/sim/world/block/seen.js'
import type { BowlerProfile } from '../../src/sim/world/bowler/profile.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../src/sim/world/bowler/release.js'
import { FILM_ROWS, type OilFilm } from '../../src/sim/world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../src/sim/world/lane/geometry.js'
import { freshLane, wearLane } from '../../src/sim/world/lane/wear.js'
import { FULL_RACK, maskOf } from '../../src/sim/world/pins/leaves.js'
import { drawRackNature } from '../../src/sim/world/pins/nature.js'
import { type RackResult, throwAtRack } from '../../src/sim/world/pins/rack.js'

/** A right-handed bowler on one lane that stays as it is, on the best line of one who sees the oil. */
export interface MatchedBowler {
  readonly profile: BowlerProfile
  readonly bag: readonly BallSpecification[]
  readonly line: PricedLine
  readonly spares: SpareSituation
}

/** A right-handed throw's meeting with the pins. */
export interface Entry {
  readonly inGutter: boolean
  readonly board: number
  readonly angleRadians: number
  readonly speedMetresPerSecond: number
}

export interface FirstBall {
  readonly entry: Entry
  /** By what the pocket is: the ball strikes the head pin and the 3 pin, and not the 2 pin. */
  readonly struckPocket: boolean
  /** By the board at the headpin's row, as the block's own call from the foul line has it. */
  readonly calledPocket: boolean
  /** Mask of what it left. */
  readonly leave: number
}

export interface BowledFrame extends FirstBall {
  /** Mask after the second ball; 0 after a strike. */
  readonly standing: number
}

const outcome = newRollOutcome()
const launch = scratchLaunch()
const POCKET_PINS = maskOf([1, 3])
const FRONT_PINS = maskOf([1, 2, 3])
const HEADPIN_LATERAL_METRES = boardToMetres(20)

function matchLine(
  film: OilFilm,
  profile: BowlerProfile,
  bag: readonly BallSpecification[],
  pricing: Pricing,
): MatchedBowler {
  const dynamics = bag.map((ball) => dynamicsOf(ball))
  const line = searchLines(film, dynamics, profile, pricing).best
  const inPlay = { film, steps: buildStepTable(film) }
  return { profile, bag, line, spares: { inPlay, bag: dynamics, profile, pricing, standing: FULL_RACK } }
}

/** One throw's keyed delivery and roll, as a block does it; writes the path when one is given. */
export function deliver(
  bowler: MatchedBowler,
  shot: Pick<SpareShot, 'ballIndex' | 'aim' | 'release'>,
  key: Omit<StreamKey, 'purpose'>,
  path?: Float64Array,
): Entry {
  const source = stream({ ...key, purpose: 'delivery' })
  const normals = [drawNormal(source), drawNormal(source), drawNormal(source), drawNormal(source), drawNormal(source)]
  const { inPlay, bag } = bowler.spares
  deliverInto(launch, meantThrow(bowler.profile, shot.aim, shot.release), normals)
  rollBall(inPlay.film, inPlay.steps, bag[shot.ballIndex]!, launch, outcome, path)
  return {
    inGutter: outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES,
    board: metresToBoard(outcome.lateralAtPinsMetres),
    angleRadians: Math.atan(outcome.tangentAtPins),
    speedMetresPerSecond: outcome.speedAtPinsMetresPerSecond,
  }
}

export const offsetOf = (entry: Entry): number => HEADPIN_LATERAL_METRES - boardToMetres(entry.board)

/** A live rack of the throw's own, by its key. */
function hitPins(
  entry: Entry,
  massKilograms: number,
  standing: number,
  key: Omit<StreamKey, 'purpose'>,
): Pick<RackResult, 'standing' | 'touched'> {
  if (entry.inGutter) return { standing, touched: 0 }
  const rackThrow = {
    offsetMetres: offsetOf(entry),
    angleRadians: entry.angleRadians,
    speedMetresPerSecond: entry.speedMetresPerSecond,
    ballMassKilograms: massKilograms,
    standing,
  }
  return throwAtRack(rackThrow, drawRackNature(stream({ ...key, purpose: 'rack' })))
}

/** Own first balls before the best line is looked for again while a lane is worn. */
const SEARCH_EVERY = 6

/** The bowler matched to a lane at each of some ages, counted in own first balls on the best line; ages in rising order. `history` is the seed of the misses that wear it. */
export function matchLines(
  film: OilFilm,
  profile: BowlerProfile,
  bag: readonly BallSpecification[],
  ages: readonly number[],
  history: string,
): MatchedBowler[] {
  const pricing = pricingFor(profile, 'ten-pin')
  const path = new Float64Array(FILM_ROWS)
  const matched: MatchedBowler[] = []
  let lane = freshLane(film)
  let bowler = matchLine(lane.film, profile, bag, pricing)
  for (let age = 0; age <= ages.at(-1)!; age++) {
    if (age % SEARCH_EVERY === 0 && age > 0) bowler = matchLine(lane.film, profile, bag, pricing)
    if (ages.includes(age)) matched.push(bowler)
    deliver(bowler, { ...bowler.line, release: 'strike' }, { seed: history, game: 0, frame: age, ball: 1 }, path)
    const { uptake, freshCoverShare } = dynamicsOf(bag[bowler.line.ballIndex]!)
    lane = wearLane(lane, { path, coverUptake: uptake, freshCoverShare })
  }
  return matched
}

/** First balls on the frozen lane, each at a live rack. */
export function bowlFirstBalls(bowler: MatchedBowler, seed: string, count: number): FirstBall[] {
  return Array.from({ length: count }, (_, index) => {
    const key = { ...frameKey(seed, index), ball: 1 }
    const entry = deliver(bowler, { ...bowler.line, release: 'strike' }, key)
    const hit = hitPins(entry, bowler.bag[bowler.line.ballIndex]!.massKilograms, FULL_RACK, key)
    return {
      entry,
      struckPocket: (hit.touched & FRONT_PINS) === POCKET_PINS,
      calledPocket: !entry.inGutter && callContact(entry.board) === 'pocket',
      leave: hit.standing,
    }
  })
}

/** Frames on the frozen lane, both balls at live racks. */
export function bowlFrames(bowler: MatchedBowler, seed: string, count: number): BowledFrame[] {
  const shots = new Map<number, SpareShot>()
  return bowlFirstBalls(bowler, seed, count).map((first, index) => {
    const key = { ...frameKey(seed, index), ball: 2 }
    return { ...first, standing: first.leave === 0 ? 0 : shootSpare(bowler, first.leave, key, shots) }
  })
}

const frameKey = (seed: string, index: number) => ({ seed, game: 1 + Math.floor(index / 10), frame: 1 + (index % 10) })

/** Chance of clearing a leave, by so many spare balls at live racks. */
export function conversionRate(bowler: MatchedBowler, leave: number, seed: string, count: number): number {
  const shots = new Map<number, SpareShot>()
  let made = 0
  for (let index = 0; index < count; index++)
    if (shootSpare(bowler, leave, { seed, game: leave, frame: index, ball: 2 }, shots) === 0) made++
  return made / count
}

function shootSpare(
  bowler: MatchedBowler,
  standing: number,
  key: Omit<StreamKey, 'purpose'>,
  shots: Map<number, SpareShot>,
): number {
  let shot = shots.get(standing)
  if (!shot) {
    shot = searchSpare({ ...bowler.spares, standing })
    shots.set(standing, shot)
  }
  const entry = deliver(bowler, shot, key)
  return hitPins(entry, bowler.bag[shot.ballIndex]!.massKilograms, standing, key).standing
}
