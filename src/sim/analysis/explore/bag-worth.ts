import type { BallSpecification } from '../../world/ball/specification.js'
import type { BlockSetup } from '../../world/block/types.js'
import type { LaneState } from '../../world/lane/wear.js'
import { knownSearch } from '../oracle/known-choice.js'

/** One lane at one time of its life, with the best a bowler's balls can do on it: expected game pins a throw. */
export interface BagOnLane {
  /** By the balls' places in the bag. */
  readonly bestOfBall: readonly number[]
  /** The best line of a ball with another surface, by the ball's place. */
  readonly bestResurfaced: readonly Resurfaced[]
}

export interface Resurfaced {
  readonly place: number
  readonly surface: Surface
  readonly worth: number
}

export interface Surface {
  readonly grit: number
  readonly polished: boolean
}

/** First balls at full racks in ten frames; what fill balls add is in the worth of a strike. */
export const THROWS_A_GAME = 10
/** Surfaces in common use in a shop, from rough to shiny (common practice, no source). */
const SURFACES: readonly Surface[] = [
  { grit: 500, polished: false },
  { grit: 1000, polished: false },
  { grit: 2000, polished: false },
  { grit: 4000, polished: false },
  { grit: 4000, polished: true },
]

/** What each ball of a bag, and each ball resurfaced, can do on a lane with its oil in sight. */
export function bagOnLane(setup: BlockSetup, lane: LaneState): BagOnLane {
  const { perBall } = knownSearch(setup, lane)
  const changed = setup.bag.flatMap((ball, place) => otherSurfaces(ball).map((surface) => ({ ball, place, surface })))
  const bag = changed.map(({ ball, surface }) => ({ ...ball, surfaceGrit: surface.grit, polished: surface.polished }))
  const lines = bag.length === 0 ? [] : knownSearch({ ...setup, bag }, lane).perBall
  return {
    bestOfBall: perBall.map(({ worth }) => worth),
    bestResurfaced: changed.map(({ place, surface }, index) => ({ place, surface, worth: lines[index].worth })),
  }
}

/** The next rougher and the next smoother surface of a ball; a plastic ball is left as it is. */
function otherSurfaces(ball: BallSpecification): Surface[] {
  if (ball.cover === 'plastic') return []
  const own = shine({ grit: ball.surfaceGrit, polished: ball.polished })
  const rougher = SURFACES.findLast((one) => shine(one) < own)
  const smoother = SURFACES.find((one) => shine(one) > own)
  return [rougher, smoother].filter((one) => one !== undefined)
}

const shine = ({ grit, polished }: Surface): number => grit + (polished ? 10_000 : 0)

/** Game pins a bag with only these balls gives up against the whole bag, each lane counting alike. */
export function lostWith(lanes: readonly BagOnLane[], places: readonly number[]): number {
  const lost = lanes.map(({ bestOfBall }) => {
    const kept = places.reduce((most, place) => Math.max(most, bestOfBall[place]), -Infinity)
    return Math.max(...bestOfBall) - kept
  })
  return THROWS_A_GAME * mean(lost)
}

/** Game pins the whole bag gains where one of its balls has another surface; below 0 it loses. */
export function gainedBySurface(lanes: readonly BagOnLane[], place: number, surface: Surface): number {
  const gains = lanes.map(({ bestOfBall, bestResurfaced }) => {
    const changed = bestResurfaced.find(
      (one) => one.place === place && one.surface.grit === surface.grit && one.surface.polished === surface.polished,
    )
    if (!changed) throw new RangeError('That surface was not tried.')
    const others = bestOfBall.map((worth, at) => (at === place ? changed.worth : worth))
    return Math.max(...others) - Math.max(...bestOfBall)
  })
  return THROWS_A_GAME * mean(gains)
}

/** The fewest balls that give up no more than `pins` a game, and of those bags the one that gives up least. */
export function fewestBalls(lanes: readonly BagOnLane[], pins: number): { places: number[]; lostPins: number } {
  const count = lanes[0].bestOfBall.length
  let best = { places: Array.from({ length: count }, (_, place) => place), lostPins: 0 }
  for (let set = 1; set < 1 << count; set++) {
    const places = Array.from({ length: count }, (_, place) => place).filter((place) => set & (1 << place))
    if (places.length > best.places.length) continue
    const lostPins = lostWith(lanes, places)
    if (lostPins <= pins && (places.length < best.places.length || lostPins < best.lostPins))
      best = { places, lostPins }
  }
  return best
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
