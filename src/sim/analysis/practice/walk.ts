import { type RandomSource, stream } from '../../random.js'
import { advance } from '../../world/block/advance.js'
import { beginBlock } from '../../world/block/begin.js'
import type { BlockState, Decision } from '../../world/block/types.js'
import { countPins, FULL_RACK } from '../../world/pins/leaves.js'
import { sessionOf } from '../belief/session.js'
import { stateBefore } from '../debrief/moments.js'
import { choicesFor, type MomentPrices, pricesOf } from '../grade/fair-grade.js'
import { choose } from '../policies/policies.js'
import { facesNewRack, playerView } from '../view/player-view.js'
import {
  answersOf,
  blindCostOf,
  firstBallOffers,
  isWorthAsking,
  LEAST_STAKES_PINS,
  type Offer,
  spareOffer,
  stakesOf,
} from './make-decide.js'
import { callParts, type FreshOil, familyOf, freshOil, readParts, type Seen, throwOrLaneParts } from './make-seen.js'
import { movedLine } from './offered-moves.js'
import { type Position, READ_QUESTIONS, type Vanishes } from './position.js'
import { isWalkOver } from './walk-end.js'

/** So many first balls on a lane fit on the screen. */
const MOST_FIRST_BALLS = 9
const FEWEST_FIRST_BALLS = 2
/** Where deciding without a clue costs less, what is seen there need not be read. */
const LEAST_BLIND_PINS = 0.3
/** A single pin is shot at by habit nearly always: only some are looked at. */
const SINGLE_PINS = 0.2
const VANISHES: readonly Vanishes[] = [null, 15, 30, 45]
/** Shares of frames in which the scripted player repeats the line, follows the miss, and takes the best; else a line off the best. */
const REPEATS = 0.3
const FOLLOWS = 0.15
const BESTS = 0.15
/** How far off, in boards of feet, with the target moved half as far as "2 and 1" would, as far, or not at all. */
const OFF_BOARDS = [-6, -4, -3, 3, 4, 6]
const OFF_TARGETS = [0, 0.5, 0.5, 1]

/** What a walk through a block found at one moment. */
export interface Found {
  readonly positions: readonly Position[]
  /** Whether a first ball of a game was looked at, as which the moment counts in how often a kind comes up. */
  readonly isFirstBall: boolean
  readonly isSpare: boolean
}

/**
 * Plays a game by a script of keyed draws (repeat the line, follow the miss, take the best, or miss it by some boards) and takes every moment at which there is
 * something to ask. The same block and name give the same positions.
 *
 * @param begun a block before its first throw, without other bowlers
 */
export function* walkBlock(begun: BlockState, scenario: string): Generator<Found> {
  let state = begun
  while (!isWalkOver(state)) {
    const found = askAt(state, scenario)
    if (found.positions.length > 0 || found.isFirstBall || found.isSpare) yield found
    state = advance(state, found.next)
  }
}

/** What there is to ask at a moment, and what the script throws next. */
export interface Asked extends Found {
  readonly next: Decision
}

/** All there is to ask at a moment, and what the script throws next. @param scenario the name that positions carry */
export function askAt(state: BlockState, scenario: string): Asked {
  const { spot } = state
  const nothing = { positions: [], isFirstBall: false, isSpare: false, next: choose('thumb', state) }
  if (spot?.phase !== 'game') return nothing
  if (!facesNewRack(state)) {
    const isLookedAt = countPins(state.standing) > 1 || drawsOf(state, 5)() < SINGLE_PINS
    return isLookedAt ? { ...spareFound(state, scenario), next: nothing.next } : nothing
  }
  const shown = firstBallsOn(state, spot.lane)
  if (shown < FEWEST_FIRST_BALLS || shown > MOST_FIRST_BALLS) return nothing
  const prices = firstBallPrices(state)
  const begun = beginBlock(state.setup, state.seed)
  return { ...firstBallFound(begun, state, scenario, prices), next: scripted(state, prices) }
}

function firstBallPrices(state: BlockState): MomentPrices {
  const choices = choicesFor(state)
  if (choices.kind !== 'first-ball') throw new RangeError('These choices are at a spare.')
  return pricesOf(state, choices)
}

function scripted(state: BlockState, prices: MomentPrices): Decision {
  const draw = drawsOf(state, 1)()
  if (draw < REPEATS) return choose('stay', state)
  if (draw < REPEATS + FOLLOWS) return choose('thumb', state)
  const best = prices.shownBest()
  return draw < REPEATS + FOLLOWS + BESTS ? best : offLine(best, drawsOf(state, 6))
}

/** Somebody's honest mistake: a line off the best one. */
function offLine(best: Decision, draw: RandomSource): Decision {
  const feet = OFF_BOARDS[Math.floor(draw() * OFF_BOARDS.length)]
  const target = Math.round(2 * feet * OFF_TARGETS[Math.floor(draw() * OFF_TARGETS.length)]) / 2
  return movedLine(best, [feet, target]) ?? best
}

/** Draws of a moment's own, for so many uses. */
const drawsOf = ({ seed, spot }: BlockState, index: number): RandomSource =>
  stream({ seed, game: spot?.game ?? 0, frame: spot?.frame ?? 0, ball: spot?.ball ?? 0, purpose: 'policy', index })

const firstBallsOn = (state: BlockState, lane: number): number =>
  state.throws.filter((one) => one.spot.lane === lane && one.standingBefore === FULL_RACK).length

function base(state: BlockState, scenario: string, oil: FreshOil, what: string, stakesPins: number) {
  const { seed, throws } = state
  return {
    id: `${scenario}.${seed}.${throws.length}.${what}`,
    moment: { scenario, seed, decisions: throws.map(({ decision }) => decision) },
    family: familyOf(oil.lengthFeet, oil.ratio),
    stakesPins,
  }
}

function firstBallFound(begun: BlockState, state: BlockState, scenario: string, prices: MomentPrices): Found {
  const lane = state.spot?.lane ?? 0
  const { setup } = state
  const oil = freshOil(begun, lane)
  const offers = firstBallOffers(state, prices, drawsOf(state, 3))
  const after = sessionOf(state).beliefs[lane].toChooseBy
  const decided = offers.filter(isWorthAsking).map(
    (one): Position => ({
      ...base(state, scenario, oil, one.skill, stakesOf(one)),
      kind: 'decide',
      skill: one.skill,
      answers: answersOf(setup, after, lane, one),
      standing: one.standing,
    }),
  )
  return {
    positions: [...decided, ...seenPositions(begun, state, scenario, oil, offers)],
    isFirstBall: true,
    isSpare: false,
  }
}

/** Questions about what was seen, where the last throw was a first ball on this lane. */
function seenPositions(
  begun: BlockState,
  state: BlockState,
  scenario: string,
  oil: FreshOil,
  offers: readonly Offer[],
): Position[] {
  const lane = state.spot?.lane ?? 0
  const { setup } = state
  const stakesPins = blindCostOf(offers)
  const index = state.throws.findLastIndex((one) => one.spot.lane === lane && one.standingBefore === FULL_RACK)
  const last = state.throws[index]
  if (!last || stakesPins < LEAST_BLIND_PINS) return []
  const beforeLast = stateBefore(state, index)
  const before = sessionOf(beforeLast).beliefs[lane].toChooseBy
  const after = sessionOf(state).beliefs[lane].toChooseBy
  const seen: Seen = { setup, atFirst: sessionOf(begun).beliefs[lane].toChooseBy, before, after, last, oil }
  const found: Position[] = []
  const draw = drawsOf(state, 2)
  const question = READ_QUESTIONS[Math.floor(draw() * READ_QUESTIONS.length)]
  const read = readParts(seen, question, VANISHES[Math.floor(draw() * VANISHES.length)])
  if (read) found.push({ ...base(state, scenario, oil, 'read', stakesPins), kind: 'read', skill: 'read', ...read })
  const line = playerView(state)?.suggestion
  const call = line && callParts(state, after, line)
  if (call) found.push({ ...base(state, scenario, oil, 'call', stakesPins), kind: 'call', skill: 'call', ...call })
  const share = throwOrLaneParts(seen)
  const reaction = offers.find(({ skill }) => skill === 'throw-or-lane')
  if (share && reaction && stakesOf(reaction) >= LEAST_STAKES_PINS)
    found.push({
      ...base(state, scenario, oil, 'share', blindCostOf([reaction])),
      kind: 'throw-or-lane',
      skill: 'throw-or-lane',
      ...share,
    })
  return found
}

function spareFound(state: BlockState, scenario: string): Found {
  const view = playerView(state)
  const none = { positions: [], isFirstBall: false, isSpare: true }
  const choices = choicesFor(state)
  if (!view || choices.kind !== 'spare' || !state.spot) return none
  const { lane } = state.spot
  const strike = state.throws.findLast((one) => one.spot.lane === lane && one.standingBefore === FULL_RACK)?.decision
  const one = spareOffer(state.setup, choices, { habit: view.suggestion, strike: strike ?? null }, drawsOf(state, 4))
  if (!isWorthAsking(one)) return none
  const oil = freshOil(state, lane)
  return {
    positions: [
      {
        ...base(state, scenario, oil, 'spare', stakesOf(one)),
        kind: 'decide',
        skill: 'spare',
        answers: answersOf(state.setup, choices.belief, lane, one),
        standing: one.standing,
      },
    ],
    isFirstBall: false,
    isSpare: true,
  }
}
