import type { BeliefSummary } from '../belief/summary.js'
import { summarise } from '../belief/summary.js'
import type { BlockState, Decision, Observation, Spot, ThrowRecord } from '../block/types.js'
import { facesNewRack } from '../block/view.js'
import { bestKnownChoice } from '../decision/known-choice.js'
import { type Alternative, alternativesOf } from './alternatives.js'
import { type BeliefWalk, walkBeliefs } from './belief-walk.js'
import { CAUTIONS } from './cautions.js'
import { type FirstBallJudge, judgeFirstBalls } from './first-ball-judge.js'
import { type Innovation, innovationOf } from './innovation.js'
import { type LedgerTerms, ledgerOf } from './ledger.js'
import { type LuckNote, luckNotes } from './luck-notes.js'
import { type MeantPath, meantPath } from './meant-path.js'
import { stateBefore } from './moments.js'
import { readFirstBall } from './read-first-ball.js'
import { readSpare } from './read-spare.js'
import type { Reading, Verdict } from './reading.js'
import { type AccountSums, sumsOf } from './sums.js'
import type { Tag } from './tag.js'
import { tagsOf } from './tags.js'
import { throwWorths } from './throw-worths.js'
import { verdictOn } from './verdict.js'

export interface AccountOptions {
  /** Grades fixed during play, by the throw's number; what is missing is graded now. */
  readonly grades?: readonly (Verdict | null | undefined)[]
  /** Whether to price the road not taken; without it and with grades kept, an account takes a fraction of the time. */
  readonly alternatives?: boolean
}

/** The account of one throw. What only counts in a game is null in practice. */
export interface ThrowAccount {
  /** Number of the throw in the block, from 0. */
  readonly index: number
  readonly spot: Spot
  readonly kind: Reading['kind']
  readonly decision: Decision
  readonly observation: Observation
  readonly standingBefore: number
  readonly standingAfter: number
  readonly graded: {
    readonly verdict: Verdict
    readonly bestKnown: Decision
    readonly ledger: LedgerTerms
    /** Empty for spares, and where it was not asked for. */
    readonly alternatives: readonly Alternative[]
  } | null
  /** Without a miss, on the oil as it was: the choice made and, in a game, both best choices. */
  readonly paths: {
    readonly choice: MeantPath
    readonly bestFair: MeantPath | null
    readonly bestKnown: MeantPath | null
  }
  /** What could be known of the oil before this throw. */
  readonly belief: BeliefSummary
  /** What the throw told of hand and lane; null for spares and balls in the gutter. */
  readonly innovation: Innovation | null
}

export interface Account {
  readonly throws: readonly ThrowAccount[]
  readonly sums: AccountSums
  readonly tags: readonly Tag[]
  readonly luck: readonly LuckNote[]
  /** To be shown once with the tags. */
  readonly cautions: readonly string[]
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

/** Works an account out throw by throw: yields after each, returns the whole. Draws nothing of the block's own luck. */
export function* accountSteps(state: BlockState, options: AccountOptions = {}): Generator<AccountStep, Account> {
  const walk = walkBeliefs()
  const throws: ThrowAccount[] = []
  const readings: Reading[] = []
  for (const [index, record] of state.throws.entries()) {
    const { account, reading } = accountThrow(stateBefore(state, index), record, walk, throws, options)
    throws.push(account)
    if (reading) readings.push(reading)
    yield { done: index + 1, of: state.throws.length, latest: account }
  }
  return {
    throws,
    sums: sumsOf(throws),
    tags: tagsOf({ setup: state.setup, readings }),
    luck: luckNotes(
      throws.flatMap(({ index, spot, graded }) =>
        graded ? [{ index, frame: spot.frame, chargedPins: graded.verdict.givenAwayPins, ledger: graded.ledger }] : [],
      ),
    ),
    cautions: CAUTIONS,
  }
}

function accountThrow(
  before: BlockState,
  record: ThrowRecord,
  walk: BeliefWalk,
  earlier: readonly ThrowAccount[],
  { grades, alternatives = true }: AccountOptions,
): { account: ThrowAccount; reading: Reading | null } {
  const { spot, decision } = record
  const index = before.throws.length
  const belief = walk.at(before, spot.lane)
  const summary = summarise(belief)
  const isFirstBall = facesNewRack(before)
  let opened: FirstBallJudge | null = null
  const openJudge = (): FirstBallJudge => {
    opened ??= judgeFirstBalls(before.setup, belief, spot.lane)
    return opened
  }
  const counts = spot.phase === 'game'
  const verdict = counts ? (grades?.[index] ?? verdictOn(before, decision, belief, openJudge)) : null
  const reading =
    verdict === null
      ? null
      : isFirstBall
        ? readFirstBall(before, record, openJudge, verdict, (at) => earlier[at].innovation, null)
        : readSpare(before, record, belief, verdict)
  const bestKnown = verdict === null ? null : bestKnownChoice(before)
  const bestFair = verdict === null ? null : verdict.lostPins > 0 ? verdict.best : decision
  const graded =
    verdict && bestKnown && bestFair
      ? {
          verdict,
          bestKnown,
          ledger: ledgerOf(Math.max(0, verdict.lostPins), throwWorths(before, record, bestFair, bestKnown)),
          alternatives: isFirstBall && alternatives ? alternativesOf(before, decision, openJudge()) : [],
        }
      : null
  const thrown = { ...before, events: [...before.events, { type: 'throw', record } as const] }
  const innovation = isFirstBall ? innovationOf(before.setup, belief, walk.at(thrown, spot.lane), record) : null
  return {
    reading,
    account: {
      index,
      spot,
      kind: isFirstBall ? 'first-ball' : 'spare',
      decision,
      observation: record.observation,
      standingBefore: record.standingBefore,
      standingAfter: record.standingAfter,
      graded,
      paths: {
        choice: meantPath(before, decision),
        bestFair: bestFair && meantPath(before, bestFair),
        bestKnown: bestKnown && meantPath(before, bestKnown),
      },
      belief: summary,
      innovation,
    },
  }
}
