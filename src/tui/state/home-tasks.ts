import { type Dispatch, useEffect } from 'react'
import { waitingDrill } from '../../scenarios/drills/waiting-drill.js'
import type { Action, AppState } from './app-state.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'

/** Reads what the home screen tells of the blocks before, and works out the lane of the day, after its first picture stands. */
export function useHome(state: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isHome = state.screen.kind === 'home'
  const isUntold = isHome && state.today === null
  useEffect(() => {
    if (!isUntold) return
    const turn = setImmediate(() => dispatch({ type: 'today-read', today: services.laneOfToday() }))
    return () => clearImmediate(turn)
  }, [isUntold, dispatch, services])
  const isUnread = isHome && state.hasPast && state.remembered === null
  useEffect(() => {
    if (!isUnread) return
    let isGone = false
    const read = async () => {
      const past = await services.listPast()
      const remembered = await services.remembered(past)
      if (isGone) return
      dispatch({ type: 'past-read', blocks: past })
      dispatch({ type: 'remembered', remembered, drill: waitingDrill(remembered, past) })
    }
    // The list of past blocks says why it cannot be read.
    const turn = setImmediate(() => void read().catch(() => {}))
    return () => {
      isGone = true
      clearImmediate(turn)
    }
  }, [isUnread, dispatch, services])
  const opening = (state.screen.kind === 'home' && state.screen.opening) || null
  useEffect(() => {
    if (opening === null) return
    services.openDrill(opening).then(
      (drill) => dispatch({ type: 'drill-opened', waiting: opening, drill }),
      (fault: unknown) => dispatch({ type: 'drill-refused', waiting: opening, sentence: sentenceOf(fault) }),
    )
  }, [opening, dispatch, services])
}
