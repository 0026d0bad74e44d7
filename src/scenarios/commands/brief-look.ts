import { trueOilPrices } from '../../sim/analysis/debrief/ledger/throw-worths.js'
import { DIFFICULTY_SEEDS, type Difficulty } from '../../sim/analysis/explore/difficulty.js'
import { blockPricing } from '../../sim/analysis/grade/lane-baseline.js'
import { decisionOf, knownSearch } from '../../sim/analysis/oracle/known-choice.js'
import { choose } from '../../sim/analysis/policies/policies.js'
import { facesNewRack } from '../../sim/analysis/view/player-view.js'
import { advance } from '../../sim/world/block/advance.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'

/** Policies that a brief look plays. */
export const BRIEF_POLICIES = ['known', 'thumb', 'memo', 'stay'] as const
type BriefPolicy = (typeof BRIEF_POLICIES)[number]

/**
 * A scenario looked at in a few seconds: one game by each policy, the best line by the quick search alone. `difficultyOf` and
 * the ladder take half a minute over the same.
 */
export interface BriefLook {
  readonly difficulty: Difficulty
  /** What each policy's first balls were worth, game pins in expectation against the bowler's average first ball. */
  readonly expected: Readonly<Record<BriefPolicy, number>>
}

/** One first ball of so many is held against the best line with the oil in sight, and counts for the others. */
const PRICED_EVERY = 3
/** One who sees the oil looks for a better line at every so many first balls on a lane, and shoots spares by habit. */
const LOOKS_EVERY = 4

/** Plays a game by each policy under one seed. @param reached is told after each game */
export function briefLook(scenario: Scenario, reached: (games: number) => void): BriefLook {
  const known = playedBy(scenario, knownLines()).expectedPins
  reached(1)
  const thumb = playedBy(scenario, (state) => choose('thumb', state))
  reached(2)
  const memo = playedBy(scenario, (state) => choose('memo', state))
  reached(3)
  const stay = playedBy(scenario, (state) => choose('stay', state))
  reached(4)
  return {
    difficulty: { thumbPins: thumb.lostPins(), memoPins: memo.lostPins(), stayPins: stay.lostPins() },
    expected: { known, thumb: thumb.expectedPins, memo: memo.expectedPins, stay: stay.expectedPins },
  }
}

type Choose = (state: BlockState) => Decision

/** First balls of a game that count, with what the lane was like before each. */
function playedBy(scenario: Scenario, chooseOf: Choose) {
  let state = beginScenario(scenario, DIFFICULTY_SEEDS[0])
  let expectedPins = 0
  const firstBalls: { readonly before: BlockState; readonly decision: Decision }[] = []
  while (state.spot && state.spot.game <= 1) {
    const before = state
    const decision = chooseOf(before)
    state = advance(before, decision)
    if (before.spot?.phase !== 'game' || !facesNewRack(before)) continue
    expectedPins += trueOilPrices(before).ofChoice(decision)
    firstBalls.push({ before, decision })
  }
  const lostPins = (): number => {
    const priced = firstBalls.filter((_, place) => place % PRICED_EVERY === 0).map(lostBy)
    return (priced.reduce((sum, pins) => sum + pins, 0) * firstBalls.length) / priced.length
  }
  return { expectedPins, lostPins }
}

function lostBy({ before, decision }: { readonly before: BlockState; readonly decision: Decision }): number {
  const { best, worthOf } = searchOn(before)
  const ball = before.setup.bag.findIndex((one) => one.id === decision.ballId)
  return Math.max(0, best.worth - worthOf(ball, decision.aim))
}

function knownLines(): Choose {
  const onLane = new Map<number, { readonly decision: Decision; readonly thrown: number }>()
  return (state) => {
    const lane = state.spot?.lane ?? 0
    if (!facesNewRack(state)) return choose('stay', state)
    const last = onLane.get(lane)
    const thrown = last?.thrown ?? 0
    const decision = last && thrown % LOOKS_EVERY !== 0 ? last.decision : decisionOf(state.setup, searchOn(state).best)
    onLane.set(lane, { decision, thrown: thrown + 1 })
    return decision
  }
}

function searchOn({ setup, seed, lanes, spot }: BlockState) {
  return knownSearch(setup, lanes[spot?.lane ?? 0], blockPricing({ setup, seed }))
}
