import { type Dispatch, useEffect, useMemo, useState } from 'react'
import type { PlayerView } from '../../sim/analysis/view/player-view.js'
import type { LanePicture } from '../parts/lane.js'
import type { Action, AppState } from './app-state.js'
import { homePicture } from './home-picture.js'
import { useKeeping } from './keeping-tasks.js'
import { blockOf } from './play-state.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'
import { useThinking } from './thinking-tasks.js'

/** Twelve pictures a second while something moves; no timer runs otherwise. */
const FRAME_MILLISECONDS = 83
/** How long the grade stands alone where nothing moves. */
const STILL_MILLISECONDS = 700
const RUN_MILLISECONDS = 250

/** What is derived from the state for drawing, worked out once a state and not once a picture. */
export interface Looks {
  readonly view: PlayerView | null
  readonly homePicture: LanePicture | null
}

/** Runs what takes time after the screen that announces it has been drawn, and reports back by actions. */
export function useTasks(
  state: AppState,
  dispatch: Dispatch<Action>,
  services: TrainerServices,
  noMotion: boolean,
): Looks {
  const { screen } = state
  useScenarios(state, dispatch, services)
  const play = screen.kind === 'play' ? screen.play : null
  const block = play ? blockOf(play) : null
  const isStill = noMotion || state.settings.motion === 'off'
  useThinking(state, dispatch, services)
  useRolling(state, dispatch, isStill)
  useKeeping(state, dispatch, services)
  usePast(state, dispatch, services)
  useRunning(state, dispatch)
  useSideBySide(state, dispatch, isStill)
  const view = useMemo(() => (block ? services.view(block) : null), [block, services])
  const picture = useHomePicture(state, services)
  return { view, homePicture: picture }
}

function useRolling({ screen }: AppState, dispatch: Dispatch<Action>, isStill: boolean): void {
  const isRolling = screen.kind === 'play' && screen.play.stage.kind === 'rolling'
  useEffect(() => {
    if (!isRolling) return
    if (isStill) {
      const timer = setTimeout(() => dispatch({ type: 'command', command: 'skip' }), STILL_MILLISECONDS)
      return () => clearTimeout(timer)
    }
    const timer = setInterval(() => dispatch({ type: 'tick' }), FRAME_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRolling, dispatch, isStill])
}

/** Reads the built-in scenarios that the first picture could do without. */
function useScenarios({ scenarios }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isShort = scenarios.length < services.scenarioNames().length
  useEffect(() => {
    if (!isShort) return
    const turn = setImmediate(() => {
      Promise.all(services.scenarioNames().map((name) => services.loadScenario(name))).then(
        (all) => dispatch({ type: 'scenarios-read', scenarios: all }),
        (fault: unknown) => dispatch({ type: 'trouble', sentence: sentenceOf(fault) }),
      )
    })
    return () => clearImmediate(turn)
  }, [isShort, dispatch, services])
}

/** Reads the list of past blocks, and plays one again that was chosen. */
function usePast({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isUnread = screen.kind === 'past' && screen.blocks === null
  useEffect(() => {
    if (!isUnread) return
    services.listPast().then(
      (blocks) => dispatch({ type: 'past-read', blocks }),
      (fault: unknown) => {
        dispatch({ type: 'past-read', blocks: [] })
        dispatch({ type: 'trouble', sentence: `Past blocks cannot be read: ${sentenceOf(fault)}` })
      },
    )
  }, [isUnread, dispatch, services])
  const path = screen.kind === 'past' ? screen.opening : null
  useEffect(() => {
    if (path === null) return
    services.openPast(path).then(
      (played) => dispatch({ type: 'past-opened', path, played }),
      (fault: unknown) => {
        dispatch({ type: 'past-refused', sentence: sentenceOf(fault) })
      },
    )
  }, [path, dispatch, services])
}

function useRunning({ screen }: AppState, dispatch: Dispatch<Action>): void {
  const isRunning = screen.kind === 'debrief' && screen.debrief.running
  useEffect(() => {
    if (!isRunning) return
    const timer = setInterval(() => dispatch({ type: 'ran-on' }), RUN_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRunning, dispatch])
}

/** Balls rolling side by side; where nothing moves their whole paths show at once. */
function useSideBySide({ screen }: AppState, dispatch: Dispatch<Action>, isStill: boolean): void {
  const isRolling = screen.kind === 'debrief' && screen.debrief.rolling !== null
  useEffect(() => {
    if (!isRolling) return
    const timer = setInterval(() => dispatch({ type: 'rolled-on' }), isStill ? 0 : FRAME_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRolling, dispatch, isStill])
}

function useHomePicture({ screen, scenarios }: AppState, services: TrainerServices): LanePicture | null {
  const [picture, setPicture] = useState<LanePicture | null>(null)
  const isHome = screen.kind === 'home'
  useEffect(() => {
    if (!isHome || picture) return
    const turn = setImmediate(() => setPicture(homePicture(scenarios, services)))
    return () => clearImmediate(turn)
  }, [isHome, picture, scenarios, services])
  return picture
}
