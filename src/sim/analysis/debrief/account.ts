import { lazily } from '../../lazily.js'
import type { BlockState, Decision, ThrowRecord } from '../../world/block/types.js'
import { beginSession, type FairSession, follow, sessionOf } from '../belief/session.js'
import { summarise } from '../belief/summary.js'
import { contactChances } from '../grade/contact-chances.js'
import { choicesFor, type FairChoices, gradeFair, prepareFair, pricesOf } from '../grade/fair-grade.js'
import type { FairSearch } from '../grade/fair-search.js'
import type { FairSpareSearch } from '../grade/fair-spare.js'
import type { FairGrade, PricedFairGrade } from '../grade/grade-types.js'
import { fullInformationBest } from '../oracle/oracle.js'
import { facesNewRack } from '../view/player-view.js'
import { type LuckNote, luckNotes } from './findings/luck-notes.js'
import type { Tag } from './findings/tag.js'
import { findingsOf } from './findings/tags.js'
import { ledgerOf } from './ledger/ledger.js'
import { type TrueOilPrices, throwWorths, trueOilPrices } from './ledger/throw-worths.js'
import { stateAfter, stateBefore } from './moments.js'
import { alternativesOf } from './reading/alternatives.js'
import { innovationOf } from './reading/innovation.js'
import { meantPath } from './reading/meant-path.js'
import { readFirstBall } from './reading/read-first-ball.js'
import { readSpare } from './reading/read-spare.js'
import type { Reading } from './reading/reading.js'
import { type AccountSums, sumsOf } from './sums.js'
import type { ThrowAccount } from './throw-account.js'

export interface AccountOptions {
  /** Grades fixed during play, by the throw's number; what is missing is graded now. */
  readonly grades?: readonly (FairGrade | null | undefined)[]
  /** By the throw's number: whether what it cost is the player's own and so is summed and told of; all are where it is left out. */
  readonly own?: readonly boolean[]
  /** Whether to price the road not taken; without it and with grades kept, an account takes a fraction of the time. */
  readonly alternatives?: boolean
}

export interface Account {
  readonly throws: readonly ThrowAccount[]
  readonly sums: AccountSums
  /** The findings worth telling, dearest first. */
  readonly tags: readonly Tag[]
  /** What is charged beside them: too small or too unsure to be named. With the findings it adds up to the charge. */
  readonly untoldPins: number
  readonly luck: readonly LuckNote[]
}

export interface AccountStep {
  readonly done: number
  readonly of: number
  readonly latest: ThrowAccount
}

/** The whole account of a block, finished or not; see accountSteps for one that can show how far it is. */
export function accountOf(state: BlockState, options: AccountOptions = {}): Account {
  const steps = accountSteps(state, options)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/** An account on its way: it goes on with the block it was begun with, or any later state of it. */
export interface AccountSoFar {
  readonly session: FairSession
  readonly throws: readonly ThrowAccount[]
  /** By the throw's number; null for practice. */
  readonly readings: readonly (Reading | null)[]
}

/** An account of nothing yet. */
export function beginAccount({ setup, seed }: BlockState): AccountSoFar {
  return { session: beginSession(setup, seed), throws: [], readings: [] }
}

/**
 * The account with the next throw of `state` in it. Comes in small steps, so that other work can be slipped in.
 * @param before the very state that throw was decided in, where the caller has it: what was worked out for it is then used again
 * @throws RangeError when all throws are in it, or the block is another one
 */
export function* accountNext(
  soFar: AccountSoFar,
  state: BlockState,
  options: AccountOptions = {},
  before?: BlockState,
): Generator<null, AccountSoFar> {
  const { account, reading, after } = yield* accountThrow({ state, soFar, options, before })
  return { session: after, throws: [...soFar.throws, account], readings: [...soFar.readings, reading] }
}

/**
 * Works an account out throw by throw: yields after each, and null now and then on the way; returns the whole. Draws nothing of
 * the block's own luck.
 * @param begun an account of an earlier state of the block, to go on with
 */
export function* accountSteps(
  state: BlockState,
  options: AccountOptions = {},
  begun: AccountSoFar = beginAccount(state),
): Generator<AccountStep | null, Account> {
  let soFar = begun
  while (soFar.throws.length < state.throws.length) {
    soFar = yield* accountNext(soFar, state, options)
    const done = soFar.throws.length
    yield { done, of: state.throws.length, latest: soFar.throws[done - 1] }
  }
  return wholeAccount(soFar, options)
}

function wholeAccount({ throws, readings }: AccountSoFar, options: AccountOptions): Account {
  const isOwn = (index: number): boolean => options.own?.[index] ?? true
  return {
    throws,
    sums: sumsOf(throws.filter(({ index }) => isOwn(index))),
    ...findingsOf({ readings: readings.filter((one, index): one is Reading => one !== null && isOwn(index)) }),
    luck: luckNotes(
      throws.flatMap(({ index, spot, graded }) =>
        graded && isOwn(index) ? [{ index, game: spot.game, frame: spot.frame, ledger: graded.ledger }] : [],
      ),
    ),
  }
}

interface Accounted {
  readonly account: ThrowAccount
  readonly reading: Reading | null
  /** What could be known once the throw had been seen. */
  readonly after: FairSession
}

interface ThrowToAccount {
  readonly state: BlockState
  readonly soFar: AccountSoFar
  readonly options: AccountOptions
  readonly before: BlockState | undefined
}

function* accountThrow(work: ThrowToAccount): Generator<null, Accounted> {
  const { state, soFar } = work
  const { grades, alternatives = true, own } = work.options
  const { throws: earlier } = soFar
  const index = earlier.length
  const record = state.throws[index]
  if (!record) throw new RangeError(`The block has ${state.throws.length} throws, and all are in the account.`)
  const { spot, decision } = record
  const before = work.before ?? stateBefore(state, index)
  const session = work.before ? sessionOf(before) : follow(soFar.session, before)
  yield null
  const shown = stateAfter(state, index)
  const after = work.before ? sessionOf(shown) : follow(session, shown)
  yield null
  const isFirstBall = facesNewRack(before)
  const choices = lazily(() => (work.before ? choicesFor(before) : prepareFair(before, 'lane', session)))
  const openPrices = lazily(() => pricesOf(before, firstBallsOf(choices())))
  const onTrueOil = lazily(() => trueOilPrices(before))
  // What a throw that was given cost is nobody's, and nobody is told.
  const isPriced = spot.phase === 'game' && (own?.[index] ?? true)
  const grade = isPriced ? pricedOf(grades?.[index] ?? gradeFair(before, decision, choices())) : null
  yield null
  const bestFair = grade?.best ?? null
  const bestKnown = grade && fullInformationBest(before)
  yield null
  const graded = grade && bestKnown && gradedOf({ grade, record, bestKnown, onTrueOil: onTrueOil() })
  yield null
  const beliefBefore = session.beliefs[spot.lane].toChooseBy
  const read = (): Reading | null => {
    if (!grade) return null
    const thrown = { before, record, verdict: grade, onTrueOil: onTrueOil() }
    return isFirstBall
      ? readFirstBall({ ...thrown, openPrices, innovationOf: (at) => earlier[at].innovation })
      : readSpare({ ...thrown, openSearch: () => sparesOf(choices()) })
  }
  const reading = read()
  yield null
  return {
    after,
    reading,
    account: {
      index,
      spot,
      kind: isFirstBall ? 'first-ball' : 'spare',
      decision,
      observation: record.observation,
      standingBefore: record.standingBefore,
      standingAfter: record.standingAfter,
      graded: graded && {
        ...graded,
        alternatives:
          isFirstBall && alternatives
            ? alternativesOf({
                bag: before.setup.bag,
                decision,
                best: graded.grade.best,
                prices: openPrices(),
                onTrueOil: onTrueOil(),
              })
            : [],
      },
      paths: {
        choice: meantPath(before, decision),
        bestFair: bestFair && meantPath(before, bestFair),
        bestKnown: bestKnown && meantPath(before, bestKnown),
      },
      belief: summarise(beliefBefore),
      contactChances: isFirstBall ? contactChances(before.setup, beliefBefore, spot.lane, decision) : null,
      innovation: isFirstBall
        ? innovationOf(before.setup, beliefBefore, after.beliefs[spot.lane].toChooseBy, record)
        : null,
    },
  }
}

/** The grade with the ledger that stands on it. */
function gradedOf(thrown: {
  readonly grade: PricedFairGrade
  readonly record: ThrowRecord
  readonly bestKnown: Decision
  readonly onTrueOil: TrueOilPrices
}): Omit<NonNullable<ThrowAccount['graded']>, 'alternatives'> {
  const { grade, record, bestKnown, onTrueOil } = thrown
  const worths = throwWorths(onTrueOil, record, grade.best, bestKnown)
  return {
    grade,
    bestKnown,
    knownLostPins: worths.bestKnown - worths.choice,
    knownStandardErrorPins: onTrueOil.errorBetween(bestKnown, record.decision),
    ledger: ledgerOf(grade.givenAwayPins, worths),
  }
}

function pricedOf(grade: FairGrade): PricedFairGrade {
  if (grade.kind === 'practice') throw new RangeError('A throw of a game was graded as practice.')
  return grade
}

function firstBallsOf(choices: FairChoices): FairSearch {
  if (choices.kind === 'spare') throw new RangeError('These choices are at a spare.')
  return choices
}

function sparesOf(choices: FairChoices): FairSpareSearch {
  if (choices.kind !== 'spare') throw new RangeError('These choices are at a full rack.')
  return choices
}
