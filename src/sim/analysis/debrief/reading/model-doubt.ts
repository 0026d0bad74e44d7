import type { BallDynamics } from '../../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../world/ball/motion.js'
import { buildStepTable, EASY_STEPS } from '../../../world/ball/step-table.js'
import type { BlockSetup, Decision } from '../../../world/block/types.js'
import { deliverInto, meantThrow, scratchLaunch } from '../../../world/bowler/release.js'
import { FILM_CELLS, mirrorFilm, type OilFilm } from '../../../world/lane/film.js'
import { type Belief, filmOf, pick } from '../../belief/belief.js'
import { COORDINATES } from '../../belief/hypotheses.js'
import { layFamilyMember } from '../../belief/pattern-family.js'
import type { FilmInPlay } from '../../shots/direct-worth.js'
import { ballIndexOf } from '../../shots/shots.js'
import { dynamicsOfBag } from '../../value/bowler-pricing.js'

/** The laws of the simulator with one of them bent by a tenth, which is how well any of them is known at best. */
interface BentLaws {
  /** Factor on the friction between cover and lane. */
  readonly friction: number
  /** Factor on the oil that is gone since the start. */
  readonly wear: number
  /** Factor on how far from the pocket a ball may be for the same result. */
  readonly carryWidth: number
}

const TENTH = 0.1
const UNBENT: BentLaws = { friction: 1, wear: 1, carryWidth: 1 }
export const BENT_LAWS: readonly BentLaws[] = [1 - TENTH, 1 + TENTH].flatMap((factor) => [
  { ...UNBENT, friction: factor },
  { ...UNBENT, wear: factor },
  { ...UNBENT, carryWidth: factor },
])

/** A finding is dropped when it fails under more than this share of the bent laws. */
export const MOST_FAILURES_SHARE = 0.2

const DOUBT_LANES = 24
const DOUBT_ROUND = 22
/** The scale of the oil is looked for between these. */
const OIL_SCALES: readonly [number, number] = [0.4, 2.5]
const HALVINGS = 8
/** Every so many lanes are enough to find it. */
const FITTED_STRIDE = 3

/** Worth of a choice on one lane with the balls as they are under bent laws. */
export type BentWorth = (
  film: FilmInPlay,
  balls: readonly BallDynamics[],
  choice: Decision,
  carryWidth: number,
) => number

/** A check of findings about one throw. */
export interface Doubt {
  /** Whether a choice stays worth more than another by more than `tooClosePins` under the bent laws. */
  readonly stands: (better: Decision, worse: Decision, tooClosePins: number) => boolean
}

/**
 * Doubts the physics: the laws of friction, wear and carry are each bent by a tenth either way. What was seen holds under
 * any law: under bent friction or wear the oil is scaled until the line thrown last comes in where it did under the
 * straight laws. The bent lanes are made once, when first asked for.
 *
 * @param seen the line thrown last on this lane; without one nothing is scaled
 */
export function doubtPhysics(
  setup: BlockSetup,
  belief: Belief,
  lane: number,
  seen: Decision | null,
  worthIn: BentWorth,
): Doubt {
  const bag = dynamicsOfBag(setup.bag)
  let made: readonly BentLanes[] | null = null
  return {
    stands: (better, worse, tooClosePins) => {
      made ??= bentLanes(setup, bag, oilIdeas(setup, belief, lane), seen)
      const failures = made.filter(({ films, balls, carryWidth }) => {
        const worthOf = (choice: Decision): number =>
          films.reduce((sum, film) => sum + worthIn(film, balls, choice, carryWidth), 0) / films.length
        return worthOf(better) - worthOf(worse) <= tooClosePins
      })
      return failures.length <= MOST_FAILURES_SHARE * made.length
    },
  }
}

/** What choices are rolled on under one bent law. */
interface BentLanes {
  readonly films: readonly FilmInPlay[]
  readonly balls: readonly BallDynamics[]
  readonly carryWidth: number
}

function bentLanes(
  setup: BlockSetup,
  bag: readonly BallDynamics[],
  ideas: readonly OilIdea[],
  seen: Decision | null,
): BentLanes[] {
  const straight = ideas.map(({ now }) => scaled(now, 1))
  return BENT_LAWS.map((laws) => {
    const balls = bag.map((ball) => withFriction(ball, laws.friction))
    if (laws.friction === 1 && laws.wear === 1) return { films: straight, balls, carryWidth: laws.carryWidth }
    const worn = ideas.map(({ now, fresh }) => withWear(now, fresh, laws.wear))
    const scale = seen === null ? 1 : oilScale(setup, bag, balls, straight, worn, seen)
    return { films: worn.map((film) => scaled(film, scale)), balls, carryWidth: laws.carryWidth }
  })
}

/** One idea of the oil, from the bowler's side as a right-hander's: as it lies now and as it was laid. */
interface OilIdea {
  readonly now: OilFilm
  readonly fresh: OilFilm
}

function oilIdeas(setup: BlockSetup, belief: Belief, lane: number): OilIdea[] {
  return Array.from(pick(belief, DOUBT_LANES, DOUBT_ROUND), (index) => {
    const own = filmOf(belief, index, lane)
    const fresh = { microns: new Float64Array(FILM_CELLS) }
    const z = belief.hypotheses.coordinates.subarray(index * COORDINATES, (index + 1) * COORDINATES)
    layFamilyMember(z, belief.ranges, fresh.microns)
    return { now: setup.bowler.hand === 'left' ? mirrorFilm(own) : own, fresh }
  })
}

/** How much more oil brings the line seen in where it was seen. */
function oilScale(
  setup: BlockSetup,
  bag: readonly BallDynamics[],
  balls: readonly BallDynamics[],
  straight: readonly FilmInPlay[],
  worn: readonly OilFilm[],
  seen: Decision,
): number {
  const place = ballIndexOf(setup.bag, seen.ballId)
  const some = <T>(lanes: readonly T[]): T[] => lanes.filter((_, at) => at % FITTED_STRIDE === 0)
  const goal = meanEntry(setup, some(straight), bag[place], seen)
  const fitted = some(worn)
  let [thin, thick] = OIL_SCALES
  for (let round = 0; round < HALVINGS; round++) {
    const scale = Math.sqrt(thin * thick)
    const entry = meanEntry(
      setup,
      fitted.map((film) => scaled(film, scale)),
      balls[place],
      seen,
    )
    // more oil, less hook: the ball ends further right
    if (entry > goal) thin = scale
    else thick = scale
  }
  return Math.sqrt(thin * thick)
}

function withWear(now: OilFilm, fresh: OilFilm, factor: number): OilFilm {
  return {
    microns: now.microns.map((film, cell) => Math.max(0, film - (factor - 1) * (fresh.microns[cell] - film))),
  }
}

function scaled({ microns }: OilFilm, factor: number): FilmInPlay {
  const film = { microns: factor === 1 ? microns : microns.map((cell) => cell * factor) }
  return { film, steps: buildStepTable(film, EASY_STEPS) }
}

function withFriction(ball: BallDynamics, factor: number): BallDynamics {
  const { dryFriction, oiledFriction } = ball.friction
  return {
    ...ball,
    friction: { ...ball.friction, dryFriction: dryFriction * factor, oiledFriction: oiledFriction * factor },
  }
}

const outcome = newRollOutcome()
const launch = scratchLaunch()
const MEANT = [0, 0, 0, 0, 0]

function meanEntry(setup: BlockSetup, films: readonly FilmInPlay[], ball: BallDynamics, seen: Decision): number {
  deliverInto(launch, meantThrow(setup.bowler, seen.aim, seen.release), MEANT)
  let sum = 0
  for (const { film, steps } of films) {
    rollBall(film, steps, ball, launch, outcome)
    sum += outcome.lateralAtPinsMetres
  }
  return sum / films.length
}
