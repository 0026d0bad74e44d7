import { type Dispatch, useEffect, useMemo, useRef, useState } from 'react'
import type { BlockState } from '../../sim/block/types.js'
import type { PlayerView } from '../../sim/block/view.js'
import type { LanePicture } from '../parts/lane.js'
import type { DebriefRolls } from '../screens/debrief-screen.js'
import type { TrainerServices } from '../services.js'
import type { Action, AppState } from './app-state.js'
import { homePicture } from './home-picture.js'
import { blockOf } from './play-state.js'

/** Twelve pictures a second while something moves; no timer runs otherwise. */
const FRAME_MILLISECONDS = 83
/** How long the grade stands alone where nothing moves. */
const STILL_MILLISECONDS = 700
const RUN_MILLISECONDS = 250

/** What is derived from the state for drawing, worked out once a state and not once a picture. */
export interface Looks {
  readonly view: PlayerView | null
  readonly rolls: DebriefRolls | null
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
  const play = screen.kind === 'play' || screen.kind === 'debrief' ? screen.play : null
  const block = play ? blockOf(play) : null
  useWeighing(state, dispatch, services)
  useRolling(state, dispatch, noMotion)
  useKeeping(state, dispatch, services)
  useGrading(state, dispatch, services)
  useRunning(state, dispatch)
  const view = useMemo(() => (block ? services.view(block) : null), [block, services])
  const rolls = useRolls(state, services)
  const picture = useHomePicture(state, services)
  return { view, rolls, homePicture: picture }
}

const sentenceOf = (fault: unknown): string => (fault instanceof Error ? fault.message.split('\n')[0]! : String(fault))

function useWeighing({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const weighing = screen.kind === 'play' && screen.play.stage.kind === 'weighing' ? screen.play : null
  useEffect(() => {
    if (!weighing) return
    const turn = setImmediate(() => {
      const block = blockOf(weighing)
      const grade = services.grade(block, weighing.decision)
      dispatch({ type: 'weighed', grade, next: services.advance(block, weighing.decision) })
    })
    return () => clearImmediate(turn)
  }, [weighing, dispatch, services])
}

function useRolling({ screen }: AppState, dispatch: Dispatch<Action>, noMotion: boolean): void {
  const isRolling = screen.kind === 'play' && screen.play.stage.kind === 'rolling'
  useEffect(() => {
    if (!isRolling) return
    if (noMotion) {
      const timer = setTimeout(() => dispatch({ type: 'command', command: 'skip' }), STILL_MILLISECONDS)
      return () => clearTimeout(timer)
    }
    const timer = setInterval(() => dispatch({ type: 'tick' }), FRAME_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRolling, dispatch, noMotion])
}

/** Keeps the block after every throw, and files it once it is over or ended. */
function useKeeping({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const play = screen.kind === 'play' || screen.kind === 'debrief' ? screen.play : null
  const thrown = play?.grades.length ?? 0
  const block = play && thrown > 0 ? blockOf(play) : null
  const isFinished = screen.kind === 'debrief' || block?.spot === null
  const scenario = play?.scenario
  const lastKept = useRef<{ block: BlockState; isFinished: boolean } | null>(null)
  useEffect(() => {
    if (!block || !scenario) return
    const isKept = lastKept.current?.block === block && lastKept.current.isFinished === isFinished
    if (isKept) return
    lastKept.current = { block, isFinished }
    services.keep(scenario, block, isFinished).catch((fault: unknown) => {
      dispatch({ type: 'trouble', sentence: `The block could not be kept: ${sentenceOf(fault)}` })
    })
  }, [block, scenario, isFinished, dispatch, services])
}

/** Weighs what has no grade yet (a block taken up again), one throw a turn so that keys come through. */
function useGrading({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const play = screen.kind === 'debrief' ? screen.play : null
  useEffect(() => {
    const throwIndex = play ? play.grades.indexOf(undefined) : -1
    if (!play || throwIndex < 0) return
    const turn = setImmediate(() => {
      const before = play.states[throwIndex]!
      dispatch({
        type: 'graded',
        throwIndex,
        grade: services.grade(before, blockOf(play).throws[throwIndex]!.decision),
      })
    })
    return () => clearImmediate(turn)
  }, [play, dispatch, services])
}

function useRunning({ screen }: AppState, dispatch: Dispatch<Action>): void {
  const isRunning = screen.kind === 'debrief' && screen.debrief.running
  useEffect(() => {
    if (!isRunning) return
    const timer = setInterval(() => dispatch({ type: 'ran-on' }), RUN_MILLISECONDS)
    return () => clearInterval(timer)
  }, [isRunning, dispatch])
}

function useRolls({ screen }: AppState, services: TrainerServices): DebriefRolls | null {
  const play = screen.kind === 'debrief' ? screen.play : null
  const chosen = screen.kind === 'debrief' ? screen.debrief.chosen : 0
  const before = play?.states[chosen]
  const decision = play ? blockOf(play).throws[chosen]?.decision : undefined
  const best = play?.grades[chosen]?.best
  return useMemo(() => {
    if (!before || !decision) return null
    return { meant: services.meantRoll(before, decision), best: best ? services.meantRoll(before, best) : null }
  }, [before, decision, best, services])
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
