import { type Dispatch, useEffect, useRef } from 'react'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Action, AppState, Compared } from './app-state.js'
import { isComparedWith } from './compared.js'
import { blockOf, type PlayState } from './play-state.js'
import type { TrainerServices } from './services.js'

const playOn = ({ screen }: AppState): PlayState | null =>
  screen.kind === 'play' || screen.kind === 'debrief' ? screen.play : null

/**
 * What others score on the luck of the block on screen: worked out by the second thinker from the first throw on where it takes nothing
 * away from the first, else once the block is over; and where nobody thinks apart, only while it is looked at.
 */
export function useComparison(state: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const { secondThinker, hasSpareCore } = services
  const play = playOn(state)
  const isThrown = play !== null && play.tour === null && play.contest === undefined && play.grades.length > 0
  const isOver = isThrown && (blockOf(play).spot === null || state.screen.kind === 'debrief')
  const isLooked = state.screen.kind === 'debrief' && state.screen.debrief.view === 'luck'
  const isTime = secondThinker.isApart ? isOver || hasSpareCore : isLooked
  const begun = useSameObject(isThrown && isTime ? play.states[0]! : null)
  const isKnown = begun !== null && state.compared?.comparison != null && isComparedWith(state.compared, begun)
  const asked = isKnown ? null : begun
  const scenario = useRef(play?.scenario)
  scenario.current = play?.scenario
  useEffect(() => {
    const of = scenario.current
    if (!asked || !of) return
    let giveUp = () => {}
    let isGone = false
    const tell = (share: number, comparison: Compared['comparison'] = null) =>
      dispatch({ type: 'comparing', compared: { begun: asked, share, comparison } })
    const work = async () => {
      const kept = await services.keptComparison(of, asked.seed)
      if (isGone) return
      if (kept) return tell(1, kept)
      const working = services.secondThinker.ask(asked, { kind: 'comparison' }, ({ share }) => tell(share))
      giveUp = working.giveUp
      const comparison = await working.answer
      tell(1, comparison)
      await services.keepComparison(of, asked.seed, comparison)
    }
    // What cannot be worked out or kept is only not told.
    work().catch(() => {})
    return () => {
      isGone = true
      giveUp()
    }
  }, [asked, dispatch, services])
}

/** The same object as before for a block of the same lanes and luck, so that handing over the keys starts nothing anew. */
function useSameObject(begun: BlockState | null): BlockState | null {
  const last = useRef<BlockState | null>(null)
  if (begun && !(last.current && isComparedWith({ begun: last.current }, begun))) last.current = begun
  return begun && last.current
}
