import { type Dispatch, useEffect, useRef } from 'react'
import { furtherBlock, unseenCount } from '../../scenarios/practice/further.js'
import { isWalkOver } from '../../sim/analysis/practice/walk-end.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Action, AppState } from './app-state.js'
import type { TrainerServices } from './services.js'

/** With fewer positions than this that were not asked lately, further ones are made. */
const ENOUGH = 60

interface Walk {
  readonly scenario: string
  readonly state: BlockState
}

/** Makes further positions ahead, one moment at a time, in the thinker's own thread; nothing waits for them. */
export function useFurther(
  { screen }: AppState,
  dispatch: Dispatch<Action>,
  { thinker, advance }: TrainerServices,
): void {
  const desk = screen.kind === 'practice' ? screen.practice.desk : null
  const isWanted = desk !== null && thinker.isApart && unseenCount(desk.session) < ENOUGH
  const walk = useRef<Walk | null>(null)
  const latest = useRef(desk)
  latest.current = desk
  useEffect(() => {
    if (!isWanted) return
    let isOn = true
    const step = async (): Promise<void> => {
      if (!isOn || !latest.current) return
      if (!walk.current || isWalkOver(walk.current.state)) walk.current = await furtherBlock(latest.current.session)
      const { scenario, state } = walk.current
      const { positions, next } = await thinker.ask(state, { kind: 'positions', scenario }).answer
      walk.current = { scenario, state: advance(state, next) }
      if (isOn && positions.length > 0) dispatch({ type: 'practice', event: { kind: 'further', positions } })
      return step()
    }
    // What cannot be made is not missed.
    step().catch(() => {})
    return () => {
      isOn = false
    }
  }, [isWanted, thinker, advance, dispatch])
}
