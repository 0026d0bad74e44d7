import type { Desk } from '../../scenarios/practice/desk.js'
import type { OpenPosition } from '../../scenarios/practice/open-position.js'
import type { SaidAnswer } from '../../scenarios/practice/practice-keeper.js'
import type { ShortBlockLane } from '../../scenarios/practice/short-block-lane.js'
import type { Kind, Position } from '../../sim/analysis/practice/position.js'
import type { PracticeLoss } from '../../sim/analysis/practice/scoring.js'
import {
  isTest,
  SESSION_MINUTES,
  type SessionMinutes,
  type Support,
  supportFor,
} from '../../sim/analysis/practice/session.js'
import type { Command } from '../keys/binding.js'
import { answerOf, type Draft, draftFor, SURE_PERCENTS, stepped } from './practice-draft.js'

type Stage =
  /** How long is being chosen. */
  | { readonly kind: 'choosing'; readonly minutes: SessionMinutes }
  | { readonly kind: 'opening' }
  | { readonly kind: 'asking'; readonly draft: Draft }
  | { readonly kind: 'sure'; readonly draft: Draft }
  | { readonly kind: 'keeping'; readonly said: SaidAnswer }
  | { readonly kind: 'told'; readonly said: SaidAnswer; readonly loss: PracticeLoss | null }
  | { readonly kind: 'over' }

/** Practice on the screen. */
export interface PracticeState {
  readonly minutes: SessionMinutes
  readonly kinds: readonly Kind[] | null
  /** Null until the session is planned. */
  readonly desk: Desk | null
  /** The position on the screen. */
  readonly open: OpenPosition | null
  /** The one after it, made ready meanwhile; undefined while it is being made, null where the session ends. */
  readonly ahead: OpenPosition | null | undefined
  /** Where the short block at the end is bowled; null until it is known, and where the session has none. */
  readonly shortBlock: ShortBlockLane | null
  readonly stage: Stage
}

export type PracticeEvent =
  | { readonly kind: 'sat'; readonly desk: Desk }
  | { readonly kind: 'made'; readonly desk: Desk; readonly open: OpenPosition | null }
  | { readonly kind: 'kept'; readonly desk: Desk; readonly loss: PracticeLoss }
  | { readonly kind: 'not-kept' }
  | { readonly kind: 'short-block'; readonly lane: ShortBlockLane }
  /** Made ahead, to be drawn from now on. */
  | { readonly kind: 'further'; readonly positions: readonly Position[] }

export const openPractice = (minutes: SessionMinutes = 10, kinds: readonly Kind[] | null = null): PracticeState => ({
  minutes,
  kinds,
  desk: null,
  open: null,
  ahead: undefined,
  shortBlock: null,
  stage: { kind: 'choosing', minutes },
})

/** Practice asked for on the command line, which need not be chosen again. */
export const beginAtOnce = (minutes: SessionMinutes, kinds: readonly Kind[] | null): PracticeState => ({
  ...openPractice(minutes, kinds),
  stage: { kind: 'opening' },
})

export const supportOf = ({ desk, open }: PracticeState): Support =>
  desk && open ? supportFor(desk.session, open.position) : 'none'

/** Whether the session goes on with its short block. */
export const isShortBlockNext = ({ desk, stage }: PracticeState): boolean =>
  stage.kind === 'over' && desk !== null && desk.session.plan.hasShortBlock

export const isTested = ({ desk }: PracticeState): boolean =>
  desk !== null && isTest(desk.session.plan, desk.session.answered.length)

/** What came back from the files. */
export function practised(practice: PracticeState, event: PracticeEvent): PracticeState {
  switch (event.kind) {
    case 'sat':
      return { ...practice, desk: event.desk }
    case 'made': {
      // The plan of what comes is the maker's, what was answered meanwhile the screen's own.
      const desk = practice.desk && {
        ...practice.desk,
        session: {
          ...practice.desk.session,
          drawn: event.desk.session.drawn,
          store: stillThere(practice.desk, event.desk),
        },
      }
      const made = { ...practice, desk, ahead: event.open }
      return practice.stage.kind === 'opening' ? shown(made) : made
    }
    case 'kept': {
      if (practice.stage.kind !== 'keeping' || !practice.desk) return practice
      const { said } = practice.stage
      const answered = event.desk.session
      const kept = {
        ...practice,
        desk: {
          ...practice.desk,
          session: { ...practice.desk.session, learner: answered.learner, answered: answered.answered },
        },
      }
      const wasTested = isTested(practice)
      return said === null || wasTested ? shown(kept) : { ...kept, stage: { kind: 'told', said, loss: event.loss } }
    }
    case 'further': {
      const { desk } = practice
      if (!desk) return practice
      const { store } = desk.session
      const fresh = event.positions.filter(
        ({ id, kind }) => (practice.kinds?.includes(kind) ?? true) && !store.some((one) => one.id === id),
      )
      return { ...practice, desk: { ...desk, session: { ...desk.session, store: [...store, ...fresh] } } }
    }
    case 'short-block':
      return { ...practice, shortBlock: event.lane }
    case 'not-kept':
      return practice.stage.kind === 'keeping' && practice.open
        ? { ...practice, stage: { kind: 'asking', draft: draftFor(practice.open.position) } }
        : practice
  }
}

/** Positions to draw from: without those the maker found nothing to ask at, with those that were made meanwhile. */
function stillThere(mine: Desk, makers: Desk): readonly Position[] {
  const isMade = ({ moment }: Position): boolean => moment.seed.startsWith('further-')
  const kept = new Set(makers.session.store)
  return mine.session.store.filter((one) => kept.has(one) || isMade(one))
}

/** The position made ready comes on the screen; waits where it is not there yet, ends where there is none. */
function shown(practice: PracticeState): PracticeState {
  const { ahead } = practice
  if (ahead === undefined) return { ...practice, open: null, stage: { kind: 'opening' } }
  if (ahead === null) return { ...practice, open: null, stage: { kind: 'over' } }
  const next = { ...practice, open: ahead, ahead: undefined }
  if (supportOf(next) === 'worked') return { ...next, stage: { kind: 'told', said: null, loss: null } }
  return { ...next, stage: { kind: 'asking', draft: draftFor(ahead.position) } }
}

/** Practice after a command; null where it is left. */
export function reducePractice(practice: PracticeState, command: Command): PracticeState | null {
  const { stage, open } = practice
  if (command === 'back')
    return stage.kind === 'sure' ? { ...practice, stage: { kind: 'asking', draft: stage.draft } } : null
  switch (stage.kind) {
    case 'choosing':
      if (command === 'enter') return { ...practice, minutes: stage.minutes, stage: { kind: 'opening' } }
      if (command === 'up' || command === 'left')
        return { ...practice, stage: { kind: 'choosing', minutes: neighbour(SESSION_MINUTES, stage.minutes, -1) } }
      if (command === 'down' || command === 'right')
        return { ...practice, stage: { kind: 'choosing', minutes: neighbour(SESSION_MINUTES, stage.minutes, 1) } }
      return practice
    case 'asking': {
      if (!open) return practice
      if (command !== 'enter')
        return { ...practice, stage: { kind: 'asking', draft: stepped(open.position, stage.draft, command) } }
      if (open.position.kind === 'decide') return { ...practice, stage: { kind: 'sure', draft: stage.draft } }
      return {
        ...practice,
        stage: { kind: 'keeping', said: { answer: answerOf(open.position, stage.draft), sureShare: null } },
      }
    }
    case 'sure': {
      if (!open) return practice
      const { draft } = stage
      const sure = (by: 1 | -1): PracticeState => ({
        ...practice,
        stage: { kind: 'sure', draft: { ...draft, surePercent: neighbour(SURE_PERCENTS, draft.surePercent, by) } },
      })
      if (command === 'left' || command === 'down') return sure(-1)
      if (command === 'right' || command === 'up') return sure(1)
      if (command !== 'enter') return practice
      return {
        ...practice,
        stage: {
          kind: 'keeping',
          said: { answer: answerOf(open.position, draft), sureShare: draft.surePercent / 100 },
        },
      }
    }
    case 'told':
      if (command !== 'enter') return practice
      return stage.said === null ? { ...practice, stage: { kind: 'keeping', said: null } } : shown(practice)
    case 'over':
      // Enter begins the short block where there is one; until its lane is there, it waits.
      return command === 'enter' && !isShortBlockNext(practice) ? null : practice
    default:
      return practice
  }
}

function neighbour<Value>(values: readonly Value[], value: Value, by: 1 | -1): Value {
  return values[Math.min(values.length - 1, Math.max(0, values.indexOf(value) + by))]!
}
