import { keptWith } from '../../kept-with.js'
import type { BlockState, Decision } from '../../world/block/types.js'
import { type FairSession, sessionOf } from '../belief/session.js'
import { ballIndexOf } from '../shots/shots.js'
import type { JudgedThrow } from '../shots/worth-matrix.js'
import { tooCloseToCall } from '../value/as-good.js'
import { pricingOf } from '../value/bowler-pricing.js'
import { type FairSearch, searchFair } from './fair-search.js'
import { type FairSpareSearch, searchFairSpare } from './fair-spare.js'
import { decisionOf, gradeFirstBall, gradePractice, throwOf } from './first-ball-grade.js'
import { type FirstBallPrices, firstBallPrices, type Price, type PricedMoment } from './first-ball-prices.js'
import type { FairGrade } from './grade-types.js'
import { mostTeaching } from './lookahead.js'
import { type Counting, type Moment, momentOf } from './moment.js'
import { type Probing, probe } from './probing.js'
import { gradeSpare } from './spare-grade.js'

/** What the coming throw is decided and graded by: made once, it answers for every choice. */
export type FairChoices = FairSearch | FairSpareSearch

/**
 * Grades the coming throw by what had been shown, before it is thrown: expected game pins lost against the best choice
 * of one who saw the same. Reads nothing hidden: of the state only the setup's public part, what was shown, and the score.
 *
 * @param choices of the same moment, where the caller has them; else they are made, or taken from the last time asked
 * @throws RangeError when the block is over or the ball is not in the bag
 */
export function gradeFair(
  state: BlockState,
  decision: Decision,
  choices?: FairChoices,
  counting: Counting = 'lane',
): FairGrade {
  const made = choices ?? choicesFor(state, counting)
  const moment = momentOf(state, made.belief.lanes, counting)
  if (made.kind === 'spare') return gradeSpare(made, decision, moment.stay)
  if (moment.kind === 'practice') return gradePractice(made, decision, probingOf(made))
  const { priced, prices } = openPrices(made, moment)
  return gradeFirstBall(priced, prices, decision, moment.lane)
}

/** What choices cost at a moment of a game that faces a full rack: the prices its grade comes from. */
export interface MomentPrices {
  readonly search: FairSearch
  /** In pins; what every place prints for the choice. */
  readonly priceOf: (decision: Decision) => Price
  readonly shownBest: () => Decision
}

/** Prices of the coming first ball. @throws RangeError at a spare or in practice */
export function pricesOf(state: BlockState, choices: FairSearch, counting: Counting = 'lane'): MomentPrices {
  const moment = momentOf(state, choices.belief.lanes, counting)
  if (moment.kind !== 'first-ball') throw new RangeError('Only first balls of a game are priced one by one.')
  const { prices } = openPrices(choices, moment)
  return {
    search: choices,
    priceOf: (decision) => prices.priceOf(throwOf(choices, decision)),
    shownBest: () => decisionOf(choices, prices.shownBest()),
  }
}

const opened = new WeakMap<FairSearch, { readonly priced: PricedMoment; readonly prices: FirstBallPrices }>()

function openPrices(search: FairSearch, moment: Moment): { priced: PricedMoment; prices: FirstBallPrices } {
  const known = opened.get(search)
  if (known) return known
  const { stay, throwsToCome, isTeaching } = moment
  const priced = {
    search,
    last: throwOf(search, stay),
    throwsToCome,
    // no throw teaches more than seeing the oil would: where even that is worth nothing, lessons need not be looked at
    probing: isTeaching && search.information().mostPins > tooCloseToCall(0) ? probingOf(search) : null,
  }
  const made = { priced, prices: firstBallPrices(priced) }
  opened.set(search, made)
  return made
}

/** The best coming throw by what had been shown. */
export function bestFairChoice(state: BlockState, choices?: FairChoices, counting: Counting = 'lane'): Decision {
  const made = choices ?? choicesFor(state, counting)
  const moment = momentOf(state, made.belief.lanes, counting)
  const { ballIndex, aim, release = 'strike' } = made.kind === 'spare' ? made.finalists[0] : bestFirstBall(made, moment)
  return { ballId: made.setup.bag[ballIndex].id, aim, release }
}

function bestFirstBall(choices: FairSearch, moment: Moment): JudgedThrow {
  if (moment.kind === 'practice') return mostTeaching(probingOf(choices))
  return openPrices(choices, moment).prices.leader
}

/**
 * Makes what the coming throw is decided by; ask for it while the player thinks.
 * @param session of the state, where the caller carries one along
 */
export function prepareFair(
  state: BlockState,
  counting: Counting = 'lane',
  session: FairSession = sessionOf(state),
): FairChoices {
  const lane = state.spot?.lane ?? 0
  const beliefs = session.beliefs[lane]
  const { toChooseBy } = beliefs
  const moment = momentOf(state, toChooseBy.lanes, counting)
  const { bag, bowler, scoring } = state.setup
  const shown = { bag, bowler, scoring }
  const pricing = pricingOf(shown, moment.baseline, moment.weights)
  if (moment.kind !== 'spare') return searchFair(shown, beliefs, lane, pricing)
  const { ballId, aim, release } = moment.stay
  const stay = { ballIndex: ballIndexOf(bag, ballId), aim, release }
  return searchFairSpare(shown, toChooseBy, lane, moment.standing, pricing, [stay])
}

const prepared = keptWith((counting: Counting) => counting, prepareFair)

/** The same, kept with the state. */
export function choicesFor(state: BlockState, counting: Counting = 'lane'): FairChoices {
  return prepared(state, counting)
}

const probings = new WeakMap<FairSearch, Probing>()

function probingOf(choices: FairSearch): Probing {
  const known = probings.get(choices)
  if (known) return known
  const probing = probe(choices)
  probings.set(choices, probing)
  return probing
}
