import { keptWith } from '../../kept-with.js'
import { stream } from '../../random.js'
import { metresToBoards } from '../../units.js'
import { followTheMiss } from '../../world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision } from '../../world/block/types.js'
import { FULL_RACK } from '../../world/pins/leaves.js'
import { beginPair } from '../belief/belief-pair.js'
import { bestFairChoice } from '../grade/fair-grade.js'
import { searchFair } from '../grade/fair-search.js'
import { laneBaseline } from '../grade/lane-baseline.js'
import { fullInformationBest } from '../oracle/oracle.js'
import { pricingOf } from '../value/bowler-pricing.js'
import { playerView } from '../view/player-view.js'

/**
 * known sees the oil; fair sees what a player sees and decides best; thumb follows the usual rules of thumb; memo has learnt the
 * sheet's best line by heart and never moves; stay never moves from the starting line; random throws anywhere sensible.
 */
export const POLICIES = ['known', 'fair', 'thumb', 'memo', 'stay', 'random'] as const
export type Policy = (typeof POLICIES)[number]

/**
 * What a policy would throw next. The policies that are not told what is best shoot spares by habit.
 * @throws RangeError when the block is over
 */
export function choose(policy: Policy, state: BlockState): Decision {
  const view = playerView(state)
  if (!view || !state.spot) throw new RangeError('The block is over; there is nothing left to decide.')
  if (policy === 'known') return fullInformationBest(state)
  if (policy === 'fair') return bestFairChoice(state)
  if (state.standing !== FULL_RACK || view.suggestion.release === 'spare') return view.suggestion
  if (policy === 'random') return randomChoice(state)
  const last = view.onThisLane.findLast((one) => one.standingBefore === FULL_RACK && one.decision.release === 'strike')
  if (!last) return policy === 'memo' ? bestOfSheet(state, state.spot.lane) : view.suggestion
  if (policy === 'stay' || policy === 'memo') return last.decision
  return { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) }
}

/** The best of the sheet as one would learn it by heart: of the fresh lane, before anything was thrown. */
function bestOfSheet({ setup, seed }: BlockState, lane: number): Decision {
  const [line] = memorised(setup, { seed, lane }).finalists
  return { ballId: setup.bag[line.ballIndex].id, aim: line.aim, release: 'strike' }
}

const memorised = keptWith(
  ({ seed, lane }: { readonly seed: string; readonly lane: number }) => `${lane} ${seed}`,
  (setup: BlockSetup, { seed, lane }) =>
    searchFair(setup, beginPair(setup, lane, seed), lane, pricingOf(setup, laneBaseline(setup, seed))),
)

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
