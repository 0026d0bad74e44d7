import type { RandomSource } from '../../random.js'
import { metresToBoard } from '../../units.js'
import { dynamicsOf } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import { followTheMiss } from '../../world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision } from '../../world/block/types.js'
import { intendedLaunch } from '../../world/bowler/release.js'
import { type Belief, weights } from '../belief/belief.js'
import { imaginedLane } from '../belief/imagined-lanes.js'
import { isSame } from '../debrief/ledger/throw-worths.js'
import { contactChances } from '../grade/contact-chances.js'
import type { MomentPrices } from '../grade/fair-grade.js'
import type { FairSpareSearch } from '../grade/fair-spare.js'
import type { Price } from '../grade/first-ball-prices.js'
import { sparePrices } from '../grade/spare-grade.js'
import { lastFirstBall } from '../shots/least-move.js'
import { eitherWay, linesAround, movedLine, sizesOf } from './offered-moves.js'
import { COMMON_CONTACTS, type DecidedSkill, type OfferedAnswer } from './position.js'

/** What is offered at a moment, before it is known whether there is something to decide. */
export interface Offer {
  readonly skill: DecidedSkill
  readonly decisions: readonly Decision[]
  readonly costsPins: readonly number[]
  readonly standing: number | null
}

/** Answers that cost less than this lose nothing worth learning; so much has to hang on the dearest answer. */
export const LEAST_STAKES_PINS = 1
const MOST_ANSWERS = 6
/** A surprise worth asking about: so far off the target at the arrows, or a miss of the pocket. */
const OFF_TARGET_BOARDS = 1

function distinct(decisions: readonly (Decision | null)[]): Decision[] {
  const kept: Decision[] = []
  for (const one of decisions) if (one && !kept.some((other) => isSame(one, other))) kept.push(one)
  return kept
}

/** The order from the bowler's own side outwards, ball by ball as they lie in the bag. */
function inOrder(setup: BlockSetup, decisions: readonly Decision[]): Decision[] {
  const place = ({ ballId }: Decision): number => setup.bag.findIndex(({ id }) => id === ballId)
  return [...decisions].sort(
    (a, b) =>
      place(a) - place(b) ||
      a.aim.feetBoard - b.aim.feetBoard ||
      a.aim.targetBoard - b.aim.targetBoard ||
      a.aim.speedStep - b.aim.speedStep,
  )
}

/** Whether an offer has something to decide: a best among few that are as good, and pins on the others. */
export function isWorthAsking({ costsPins, decisions }: Offer): boolean {
  if (decisions.length < 4) return false
  const free = costsPins.filter((cost) => cost === 0).length
  return free >= 1 && free <= decisions.length / 2 && Math.max(...costsPins) >= LEAST_STAKES_PINS
}

/** What an answer costs, and what it loses before anything is forgiven. */
type Costs = Pick<Price, 'chargedPins' | 'lostPins'>

/** An answer that is let off more than this is no fair one: nobody could tell why it is as good as the best. */
const MOST_LET_OFF_PINS = 0.3
const isFair = ({ chargedPins, lostPins }: Costs): boolean => lostPins - chargedPins <= MOST_LET_OFF_PINS

interface Offered {
  readonly skill: DecidedSkill
  readonly decisions: readonly (Decision | null)[]
  readonly stay: Decision | null
}

function offer(setup: BlockSetup, { skill, decisions, stay }: Offered, costsOf: (decision: Decision) => Costs): Offer {
  const offered = inOrder(setup, distinct(decisions))
    .map((decision) => ({ decision, costs: costsOf(decision) }))
    .filter(({ costs }) => isFair(costs))
    .slice(0, MOST_ANSWERS)
  const standing = stay ? offered.findIndex(({ decision }) => isSame(decision, stay)) : -1
  return {
    skill,
    decisions: offered.map(({ decision }) => decision),
    costsPins: offered.map(({ costs }) => costs.chargedPins),
    standing: standing < 0 ? null : standing,
  }
}

/** Every offer of a first ball, skill by skill. @param draw the moment's own draws, for what stands beside the best */
export function firstBallOffers(state: BlockState, prices: MomentPrices, draw: RandomSource): Offer[] {
  const { setup, spot } = state
  const last = spot ? lastFirstBall(state, spot.lane) : null
  if (!last) return []
  const stay = last.decision
  const best = prices.shownBest()
  const leaders = bestOfEachBall(prices)
  const sameBall = best.ballId === stay.ballId ? best : (leaders.find(({ ballId }) => ballId === stay.ballId) ?? stay)
  const direction = best.aim.feetBoard >= stay.aim.feetBoard ? 1 : -1
  const moved = (moves: ReturnType<typeof eitherWay>) => moves.map((move) => movedLine(stay, move))
  const offered = (skill: DecidedSkill, decisions: readonly (Decision | null)[]): Offer =>
    offer(setup, { skill, decisions, stay }, prices.priceOf)
  const isFree = prices.priceOf(stay).chargedPins === 0
  const offers = [
    offered('timing', [stay, ...moved(eitherWay())]),
    offered('ball', [stay, ...leaders.slice(0, MOST_ANSWERS - 1)]),
    offered('line', [
      stay,
      ...(isFree ? [] : [sameBall]),
      ...linesAround(isFree ? stay : sameBall, isFree ? 4 : 3, 'first-ball', draw),
    ]),
    ...(isFree ? [] : [offered('move-size', [stay, ...moved(sizesOf(direction))])]),
  ]
  const seen = state.throws.findLast(
    (one) => one.spot.lane === spot?.lane && one.decision.release === 'strike' && isSame(one.decision, stay),
  )?.observation
  const isSurprise =
    seen !== undefined &&
    (seen.contact !== 'pocket' || Math.abs(seen.arrowsBoard - stay.aim.targetBoard) > OFF_TARGET_BOARDS)
  if (isSurprise) {
    // Whoever blames the lane follows the miss as if the ball had rolled over its target.
    const blamed = { ...stay, aim: followTheMiss(stay.aim, { ...seen, arrowsBoard: stay.aim.targetBoard }) }
    offers.push(offered('throw-or-lane', [stay, blamed, ...moved(eitherWay())]))
  }
  return offers.filter((one) => one.standing !== null)
}

function bestOfEachBall({ search }: MomentPrices): Decision[] {
  const { finalists, setup } = search
  return finalists
    .filter((line, at) => finalists.findIndex((one) => one.ballIndex === line.ballIndex) === at)
    .map(({ ballIndex, aim }) => ({ ballId: setup.bag[ballIndex].id, aim, release: 'strike' as const }))
}

/** The offer of a spare: the habit, the best found, some others around it, and the strike ball at it. */
export function spareOffer(
  setup: BlockSetup,
  search: FairSpareSearch,
  { habit, strike }: { readonly habit: Decision; readonly strike: Decision | null },
  draw: RandomSource,
): Offer {
  const prices = sparePrices(search, habit)
  const best = prices.shownBest()
  const wanted = [habit, best, strike, ...linesAround(best, 4, 'spare', draw)]
  // What stands is the line of the first ball: whoever changes nothing throws that again.
  const decisions = distinct(wanted).slice(0, MOST_ANSWERS)
  return offer(setup, { skill: 'spare', decisions, stay: strike }, (decision) => {
    const chargedPins = prices.chargeOf(decision)
    return { chargedPins, lostPins: chargedPins }
  })
}

const outcome = newRollOutcome()

/** Where a line enters without a miss under each idea of the oil. */
export function meantEntries(setup: BlockSetup, belief: Belief, lane: number, decision: Decision): Float64Array {
  const ball = setup.bag.find(({ id }) => id === decision.ballId)
  if (!ball) throw new RangeError(`There is no ball "${decision.ballId}" in the bag.`)
  const launch = intendedLaunch(setup.bowler, decision.aim, decision.release)
  return weights(belief).map((_, hypothesis) => {
    const { film, steps } = imaginedLane(belief, hypothesis, lane, setup.bowler.hand)
    rollBall(film, steps, dynamicsOf(ball), launch, outcome)
    return metresToBoard(outcome.lateralAtPinsMetres)
  })
}

const rounded = (value: number, steps: number): number => Math.round(value * steps) / steps

/** The priced answers of an offer, with where each would come in. */
export function answersOf(
  setup: BlockSetup,
  belief: Belief,
  lane: number,
  { skill, decisions, costsPins }: Offer,
): OfferedAnswer[] {
  const shares = weights(belief)
  return decisions.map((decision, place) => {
    const entries = meantEntries(setup, belief, lane, decision)
    const mean = entries.reduce((sum, entry, i) => sum + shares[i] * entry, 0)
    const chances = skill === 'spare' ? null : contactChances(setup, belief, lane, decision)
    const share = (contact: string): number =>
      rounded(chances?.find((one) => one.contact === contact)?.chance ?? 0, 100)
    const [light, pocket, high] = COMMON_CONTACTS.map(share)
    return {
      decision,
      costPins: rounded(costsPins[place], 100),
      entryBoard: rounded(mean, 10),
      contacts: chances && { light, pocket, high },
    }
  })
}

/** What hangs on an answer. */
export const stakesOf = ({ costsPins }: Offer): number => rounded(Math.max(...costsPins), 100)

/** What deciding at a moment without a clue costs. */
export const blindCostOf = (offers: readonly Offer[]): number => {
  const all = offers.flatMap(({ costsPins }) => costsPins)
  return all.length === 0 ? 0 : rounded(all.reduce((sum, cost) => sum + cost, 0) / all.length, 100)
}
