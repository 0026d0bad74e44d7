import { stream } from '../../random.js'
import { metresToBoards } from '../../units.js'
import type { BallSpecification } from '../../world/ball/specification.js'
import { followTheMiss } from '../../world/block/follow-the-miss.js'
import type { BlockState, Decision } from '../../world/block/types.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { bestFairChoice } from '../grade/fair-grade.js'
import { knownPlay } from '../oracle/known-play.js'
import { playerView } from '../view/player-view.js'

/** known sees the oil; fair sees what a player sees and decides best; thumb follows the usual rules of thumb; stay never moves; random throws anywhere sensible. */
export const POLICIES = ['known', 'fair', 'thumb', 'stay', 'random'] as const
export type Policy = (typeof POLICIES)[number]

/**
 * What a policy would throw next. The policies that are not told what is best shoot spares by habit.
 * @throws RangeError when the block is over
 */
export function choose(policy: Policy, state: BlockState): Decision {
  const view = playerView(state)
  if (!view || !state.spot) throw new RangeError('The block is over; there is nothing left to decide.')
  if (policy === 'known') return knownPlay(state)
  if (policy === 'fair') return bestFairChoice(state)
  if (state.standing !== FULL_RACK || view.suggestion.release === 'spare') return view.suggestion
  if (policy === 'random') return randomChoice(state)
  const last = view.onThisLane.findLast((one) => one.standingBefore === FULL_RACK && one.decision.release === 'strike')
  if (!last) return { ...view.suggestion, ballId: openingBall(state, view.posted?.lengthFeet).id }
  if (policy === 'stay') return last.decision
  return { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) }
}

const LONG_FEET = 42
const SHORT_FEET = 37

/** The rule of thumb for the first ball: the more oil the stronger; common practice, no source. */
function openingBall(state: BlockState, lengthFeet: number | undefined): BallSpecification {
  const strongestFirst = [...state.setup.bag]
    .filter((ball) => ball.cover !== 'plastic')
    .sort((a, b) => strength(b) - strength(a))
  const bag = strongestFirst.length > 0 ? strongestFirst : state.setup.bag
  const last = bag.length - 1
  if (lengthFeet === undefined) return bag[Math.floor(last / 2)]
  return bag[lengthFeet >= LONG_FEET ? 0 : lengthFeet <= SHORT_FEET ? last : Math.floor(last / 2)]
}

const COVER_STRENGTH = { solid: 4, hybrid: 3, pearl: 2, urethane: 1, plastic: 0 } as const

function strength(ball: BallSpecification): number {
  return COVER_STRENGTH[ball.cover] - ball.surfaceGrit / 10000 + ball.differentialMetres * 100
}

/** Laydowns and exit boards among which the random policy draws evenly; from the right edge out to the middle. */
const RANDOM_LAYDOWN: readonly [number, number] = [8, 30]
const RANDOM_SWING: readonly [number, number] = [-9, 0]

function randomChoice(state: BlockState): Decision {
  const { spot, setup, seed } = state
  if (!spot) throw new RangeError('The block is over; there is nothing left to decide.')
  const draw = stream({ seed, game: spot.game, frame: spot.frame, ball: spot.ball, purpose: 'policy' })
  const among = ([low, high]: readonly [number, number]): number =>
    low + Math.floor(draw() * (2 * (high - low) + 1)) / 2
  const ball = setup.bag[Math.floor(draw() * setup.bag.length)]
  const laydown = among(RANDOM_LAYDOWN)
  const targetBoard = Math.max(2, laydown + among(RANDOM_SWING))
  const feetBoard = Math.round((laydown + metresToBoards(setup.bowler.slideToLaydownMetres)) * 2) / 2
  return { ballId: ball.id, aim: { feetBoard, targetBoard, speedStep: 0 }, release: 'strike' }
}
