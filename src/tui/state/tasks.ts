import { type Dispatch, useEffect, useMemo, useState } from 'react'
import type { PlayerView } from '../../sim/analysis/view/player-view.js'
import type { PinFall } from '../../sim/world/block/pin-fall.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { LanePicture } from '../draw/lane-picture.js'
import type { Action, AppState } from './app-state.js'
import { useAverages } from './average-tasks.js'
import { useComparison } from './comparison-tasks.js'
import { useFurther } from './further-positions.js'
import { homePicture } from './home-picture.js'
import { useHome } from './home-tasks.js'
import { useKeeping } from './keeping-tasks.js'
import { blockOf, type Rolling } from './play-state.js'
import { usePractice } from './practice-tasks.js'
import { FALL_SECONDS, ROLL_FRAMES } from './reduce-throw.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'
import { useThinking } from './thinking-tasks.js'

/** Twelve pictures a second while something moves; no timer runs otherwise. */
const FRAME_MILLISECONDS = 83
/** The same while pins fall, which takes half a second in all. */
const FALL_MILLISECONDS = 60
/** How long the grade stands alone where nothing moves. */
const STILL_MILLISECONDS = 700
const RUN_MILLISECONDS = 250

/** What is derived from the state for drawing, worked out once a state and not once a picture. */
export interface Looks {
  readonly view: PlayerView | null
  readonly homePicture: LanePicture | null
  /** The pins of the ball that is on its way, once worked out. */
  readonly fall: PinFall | null
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
  useComparison(state, dispatch, services)
  useAverages(state, dispatch, services)
  useHome(state, dispatch, services)
  usePast(state, dispatch, services)
  useProgress(state, dispatch, services)
  useRunning(state, dispatch)
  usePractice(state, dispatch, services)
  useFurther(state, dispatch, services)
  useSideBySide(state, dispatch, isStill)
  const view = useMemo(() => (block ? services.view(block) : null), [block, services])
  const picture = useHomePicture(state, services)
  const fall = useFall(state, services, isStill)
  return { view, homePicture: picture, fall }
}

function useRolling({ screen }: AppState, dispatch: Dispatch<Action>, isStill: boolean): void {
  const rolling = rollingOn(screen)
  const isRolling = rolling !== null
  const isFalling = rolling !== null && rolling.frame >= ROLL_FRAMES
  useEffect(() => {
    if (!isRolling) return
    if (isStill) {
      const timer = setTimeout(() => dispatch({ type: 'command', command: 'skip' }), STILL_MILLISECONDS)
      return () => clearTimeout(timer)
    }
    const timer = setInterval(() => dispatch({ type: 'tick' }), isFalling ? FALL_MILLISECONDS : FRAME_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRolling, isFalling, dispatch, isStill])
}

const rollingOn = (screen: AppState['screen']): Rolling | null =>
  screen.kind === 'play' && screen.play.stage.kind === 'rolling' ? screen.play.stage : null

/** How the pins of a rolling ball will fall, worked out between two of its pictures. */
function useFall({ screen }: AppState, services: TrainerServices, isStill: boolean): PinFall | null {
  const [worked, setWorked] = useState<{ readonly of: BlockState; readonly fall: PinFall } | null>(null)
  const next = isStill ? null : (rollingOn(screen)?.next ?? null)
  useEffect(() => {
    if (!next) return
    const turn = setImmediate(() =>
      setWorked({ of: next, fall: services.pinFall(next, next.throws.length - 1, FALL_SECONDS) }),
    )
    return () => clearImmediate(turn)
  }, [next, services])
  return worked && worked.of === next ? worked.fall : null
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
function usePast({ screen, hasPast, played }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isUnread =
    (screen.kind === 'past' && screen.blocks === null) || (screen.kind === 'scenarios' && hasPast && played === null)
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

/** Reads what choices cost over time. */
function useProgress({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const isUnread = screen.kind === 'progress' && screen.report === null
  useEffect(() => {
    if (!isUnread) return
    services.readProgress().then(
      (report) => dispatch({ type: 'progress-read', report }),
      (fault: unknown) => dispatch({ type: 'trouble', sentence: `Progress cannot be read: ${sentenceOf(fault)}` }),
    )
  }, [isUnread, dispatch, services])
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
