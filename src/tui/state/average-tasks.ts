import { type Dispatch, useEffect } from 'react'
import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import { type Action, type AppState, AVERAGE_GAMES, type Averages } from './app-state.js'
import type { TrainerServices } from './services.js'

type Oil = Exclude<keyof Averages, 'of'>

/** The lanes an average is told of: house oil, and sport oil of about the same length. */
export const AVERAGE_LANES: Readonly<Record<Oil, string>> = { house: 'house-forty', sport: 'flat-forty' }
/** Whoever goes through the levels with an arrow key waits for none of them. */
const STILL_MILLISECONDS = 600

/** Simulates what the bowler in the form averages, once the form is left alone; figures simulated before are read. */
export function useAverages({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const bowler = screen.kind === 'own-bowler' ? screen.form.draft : null
  useEffect(() => {
    if (!bowler || !services.secondThinker.isApart) return
    let isGone = false
    let giveUp = () => {}
    const workOut = async (lane: Oil) => {
      const plain = await services.loadScenario(AVERAGE_LANES[lane])
      const scenario = services.fit(plain, { bowler, seeing: 'scenario' })
      const tell = (average: Averages['house']) =>
        dispatch({ type: 'averaged', averages: { of: bowler, [lane]: average } })
      const kept = await services.keptAverage(scenario, AVERAGE_GAMES)
      if (isGone) return
      if (kept) return tell(kept)
      const asked = services.secondThinker.ask(
        services.begin(scenario, lane),
        { kind: 'average', games: AVERAGE_GAMES },
        (average) => tell(average),
      )
      giveUp = asked.giveUp
      const average = await asked.answer
      tell(average)
      await services.keepAverage(scenario, AVERAGE_GAMES, average)
    }
    const timer = setTimeout(() => {
      const all = async () => {
        for (const lane of ['house', 'sport'] as const) if (!isGone) await workOut(lane)
      }
      all().catch((fault: unknown) => {
        // Figures that make no bowler yet are told of when the form is kept.
        if (!(fault instanceof ScenarioError)) dispatch({ type: 'trouble', sentence: String(fault) })
      })
    }, STILL_MILLISECONDS)
    return () => {
      isGone = true
      clearTimeout(timer)
      giveUp()
    }
  }, [bowler, dispatch, services])
}
