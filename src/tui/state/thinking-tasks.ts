import { type Dispatch, useEffect, useRef } from 'react'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Thinker } from '../worker/thinker.js'
import type { Action, AppState } from './app-state.js'
import { notKept } from './keeping-tasks.js'
import { blockOf, type PlayState, type ThrowGrade, tellsGrades } from './play-state.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'
import { guided } from './tour.js'

/** The clock while a choice is weighed; the screen speaks of it from the second turn on. */
const WAIT_MILLISECONDS = 300

/** Asks the thinker for what the screen needs, when it needs it. */
export function useThinking(state: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  useWaking(services)
  usePreparing(state, services)
  useWeighing(state, dispatch, services)
  useBelief(state, dispatch, services)
  useSettling(state, services)
  useAccount(state, dispatch, services)
  useWhatIf(state, dispatch, services)
}

/** Wakes the thinker once the first picture stands. */
function useWaking({ thinker }: TrainerServices): void {
  useEffect(() => thinker.wake(), [thinker])
}

/** Thinks ahead about the coming throw while the player does. */
function usePreparing({ screen }: AppState, { thinker }: TrainerServices): void {
  const play = screen.kind === 'play' ? screen.play : null
  const next = play?.stage.kind === 'passing' && play.rival?.kind === 'guest' ? play.rival.play : play
  const block = next && next.contest === undefined && /deciding|passing/.test(next.stage.kind) ? blockOf(next) : null
  useEffect(() => {
    if (block?.spot?.phase !== 'game' || !thinker.isApart) return
    const { answer } = thinker.ask(block, { kind: 'prepare' })
    // A preparation that fails leaves the grade itself to say so.
    answer.catch(() => {})
  }, [block, thinker])
}

/** A drill waits for its grade. Elsewhere the ball is let go at once, and the grade worked out behind it where it can be. */
function useWeighing({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isWeighing = screen.kind === 'play' && screen.play.stage.kind === 'weighing'
  const weighing = useRef<PlayState | null>(null)
  weighing.current = isWeighing ? screen.play : null
  useEffect(() => {
    const play = weighing.current
    if (!isWeighing || !play) return
    const before = blockOf(play)
    const { decision } = play
    const { thinker, advance } = services
    const counts = before.spot?.phase === 'game'
    const offered = play.tour === null ? null : (services.view(before)?.suggestion ?? null)
    const release = (grade: ThrowGrade) =>
      dispatch({ type: 'weighed', grade: guided(grade, offered, decision), next: advance(before, decision) })
    if (services.throwElsewhere) {
      services.throwElsewhere(before, decision).then(
        (next) => dispatch({ type: 'weighed', grade: null, next }),
        (fault: unknown) => dispatch({ type: 'not-thrown', sentence: sentenceOf(fault) }),
      )
      return
    }
    if (!counts || !tellsGrades(play)) {
      const turn = setImmediate(() => release(counts && play.contest === undefined ? undefined : null))
      if (counts && thinker.isApart && play.contest === undefined) {
        const { answer } = thinker.ask(before, { kind: 'grade', decision })
        answer.then(
          (grade) => dispatch({ type: 'graded', before, grade }),
          () => {},
        )
      }
      return () => clearImmediate(turn)
    }
    const clock = setInterval(() => dispatch({ type: 'waited' }), WAIT_MILLISECONDS)
    const asked = thinker.ask(before, { kind: 'grade', decision })
    asked.answer
      .then(release, (fault: unknown) => {
        dispatch({ type: 'trouble', sentence: `This choice could not be weighed: ${sentenceOf(fault)}` })
        release(undefined)
      })
      .finally(() => clearInterval(clock))
    return () => {
      clearInterval(clock)
      asked.giveUp()
    }
  }, [isWeighing, dispatch, services])
}

/**
 * What could be known before the last choice: in a drill as soon as its ball is let go, when the thinker still has it in
 * mind; else once it is asked for.
 */
function useBelief({ screen }: AppState, dispatch: Dispatch<Action>, { thinker }: TrainerServices): void {
  const play = screen.kind === 'play' && screen.play.belief === null ? screen.play : null
  const isRolling = play?.stage.kind === 'rolling' && tellsGrades(play)
  const rolled = play && isRolling && thinker.isApart ? blockOf(play) : null
  const asked = play?.open === 'belief' ? play.states.at(-2) : undefined
  useEffect(() => {
    if (!rolled) return
    thinker.ask(rolled, { kind: 'belief' }).answer.then(
      (belief) => dispatch({ type: 'believed', before: rolled, belief }),
      () => {},
    )
  }, [rolled, dispatch, thinker])
  useAsked(asked, dispatch, thinker)
}

function useAsked(before: BlockState | undefined, dispatch: Dispatch<Action>, thinker: Thinker): void {
  useEffect(() => {
    if (!before) return
    const asked = thinker.ask(before, { kind: 'belief' })
    asked.answer.then(
      (belief) => dispatch({ type: 'believed', before, belief }),
      (fault: unknown) => dispatch({ type: 'trouble', sentence: sentenceOf(fault) }),
    )
    return asked.giveUp
  }, [before, dispatch, thinker])
}

/** Works the account of each throw out while the player thinks about the next, so that none of it is left to wait for. */
function useSettling({ screen }: AppState, { thinker }: TrainerServices): void {
  const play = screen.kind === 'play' && screen.play.stage.kind === 'deciding' ? screen.play : null
  const isPriced = play?.contest === undefined && play?.drill === undefined
  const isOwn = play !== null && isPriced && play.tour === null && play.rival?.kind !== 'guest'
  const block = isOwn && play.grades.length > 0 ? blockOf(play) : null
  const grades = useRef(play?.grades)
  grades.current = play?.grades
  useEffect(() => {
    if (!block || !grades.current || !thinker.isApart) return
    // What cannot be settled is left to the account itself, which then says why.
    thinker.ask(block, { kind: 'settle', grades: grades.current }).answer.catch(() => {})
  }, [block, thinker])
}

/** The account of the block looked back on, throw by throw as it comes. */
function useAccount({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const { thinker } = services
  const play = screen.kind === 'debrief' && screen.play.account === null ? screen.play : null
  const block = play ? blockOf(play) : null
  const opened = useRef(play)
  opened.current = play
  useEffect(() => {
    const looked = opened.current
    if (!block || !looked) return
    const { grades, ownThrows: own } = looked
    const asked = thinker.ask(block, { kind: 'account', grades, ...(own ? { own } : {}) }, (step) =>
      dispatch({ type: 'accounted', block, step }),
    )
    asked.answer.then(
      (account) => {
        dispatch({ type: 'account-whole', block, account })
        if (looked.tour !== null) return
        const grades = account.throws.map(({ graded }) => graded?.grade ?? null)
        services.keepWorked(looked.scenario, block, { grades, account }, own).catch(notKept(dispatch, 'The account'))
      },
      (fault: unknown) =>
        dispatch({ type: 'trouble', sentence: `The account could not be finished: ${sentenceOf(fault)}` }),
    )
    return asked.giveUp
  }, [block, dispatch, thinker, services])
}

/** What the choice made, and the one being tried in its place, come to. */
function useWhatIf({ screen }: AppState, dispatch: Dispatch<Action>, { thinker }: TrainerServices): void {
  const trial = screen.kind === 'debrief' ? screen.debrief.whatIf : null
  const before = trial ? blockOf(trial.lab) : null
  const index = trial ? trial.lab.states.length - 1 : 0
  const made = screen.kind === 'debrief' ? blockOf(screen.play).throws[index]?.decision : undefined
  const tried = trial?.lab.decision
  useEffect(() => {
    if (!before || !tried) return
    const asked = thinker.ask(before, { kind: 'what-if', decision: tried })
    asked.answer.then(
      // The answer of another thread carries a copy of the decision.
      (result) => dispatch({ type: 'what-if', result: { ...result, decision: tried } }),
      (fault: unknown) => dispatch({ type: 'trouble', sentence: sentenceOf(fault) }),
    )
    return asked.giveUp
  }, [before, tried, dispatch, thinker])
  useEffect(() => {
    if (!before || !made) return
    const asked = thinker.ask(before, { kind: 'what-if', decision: made })
    asked.answer.then(
      (result) => dispatch({ type: 'what-if', result: { ...result, decision: made } }),
      () => {},
    )
    return asked.giveUp
  }, [before, made, dispatch, thinker])
}
