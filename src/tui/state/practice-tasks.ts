import { type Dispatch, useEffect, useRef } from 'react'
import type { OpenPosition } from '../../scenarios/practice/open-position.js'
import type { Action, AppState } from './app-state.js'
import { isShortBlockNext, type PracticeEvent } from './practice-state.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'

/** Plans a session, makes each position ready ahead of its turn, and puts answers on the disk. */
export function usePractice({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const practice = screen.kind === 'practice' ? screen.practice : null
  const latest = useRef(practice)
  latest.current = practice
  const { practice: keeper, thinker } = services
  const isUnplanned = practice?.stage.kind === 'opening' && practice.desk === null
  useEffect(() => {
    const asked = latest.current
    if (!isUnplanned || !asked) return
    return whileWanted(keeper.sitDown(asked.minutes, asked.kinds), dispatch, (desk) => ({ kind: 'sat', desk }))
  }, [isUnplanned, keeper, dispatch])

  const isAheadWanted =
    practice !== null && practice.desk !== null && practice.ahead === undefined && practice.stage.kind !== 'over'
  const drawn = practice?.desk?.session.drawn.length ?? 0
  useEffect(() => {
    const desk = latest.current?.desk
    if (!isAheadWanted || !desk || desk.session.drawn.length !== drawn) return
    const anew = ({ state, position }: OpenPosition) =>
      thinker
        .ask(state, { kind: 'positions', scenario: position.moment.scenario })
        .answer.then(
          ({ positions: found }) =>
            found.find(({ id }) => id === position.id) ?? found.find(({ skill }) => skill === position.skill) ?? null,
        )
    return whileWanted(keeper.next(desk, anew), dispatch, (next) => ({
      kind: 'made',
      desk: next?.desk ?? desk,
      open: next?.open ?? null,
    }))
  }, [isAheadWanted, drawn, keeper, thinker, dispatch])

  const isShortBlockWanted = practice !== null && isShortBlockNext(practice) && practice.shortBlock === null
  useEffect(() => {
    const desk = latest.current?.desk
    if (!isShortBlockWanted || !desk) return
    return whileWanted(keeper.shortBlock(desk), dispatch, (lane) => ({ kind: 'short-block', lane }))
  }, [isShortBlockWanted, keeper, dispatch])

  const said = practice?.stage.kind === 'keeping' ? practice.stage : null
  useEffect(() => {
    const asked = latest.current
    if (!said || !asked?.desk || !asked.open) return
    keeper.answer(asked.desk, asked.open, said.said).then(
      ({ desk, loss }) => dispatch({ type: 'practice', event: { kind: 'kept', desk, loss } }),
      (fault: unknown) => {
        dispatch({ type: 'practice', event: { kind: 'not-kept' } })
        dispatch({ type: 'trouble', sentence: `Not kept, so not counted: ${sentenceOf(fault)}` })
      },
    )
  }, [said, keeper, dispatch])
}

/** Tells what comes of a piece of work as long as it is wanted. */
function whileWanted<Result>(
  work: Promise<Result>,
  dispatch: Dispatch<Action>,
  told: (result: Result) => PracticeEvent,
): () => void {
  let isWanted = true
  work.then(
    (result) => isWanted && dispatch({ type: 'practice', event: told(result) }),
    (fault: unknown) => isWanted && dispatch({ type: 'trouble', sentence: sentenceOf(fault) }),
  )
  return () => {
    isWanted = false
  }
}
