import { type Dispatch, useEffect, useMemo, useRef, useState } from 'react'
import { ScenarioError } from '../../scenarios/scenario-error.js'
import type { BlockState } from '../../sim/block/types.js'
import type { PlayerView } from '../../sim/decision/player-view.js'
import type { LanePicture } from '../parts/lane.js'
import type { TrainerServices } from '../services.js'
import type { Action, AppState } from './app-state.js'
import { homePicture } from './home-picture.js'
import { blockOf, notesOf, type PlayState } from './play-state.js'
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
  useKeepingNotes(state, dispatch, services)
  useKeepingChoices(state, dispatch, services)
  usePast(state, dispatch, services)
  useRunning(state, dispatch)
  useSideBySide(state, dispatch, isStill)
  const view = useMemo(() => (block ? services.view(block) : null), [block, services])
  const picture = useHomePicture(state, services)
  return { view, homePicture: picture }
}

const sentenceOf = (fault: unknown): string => (fault instanceof Error ? fault.message.split('\n')[0]! : String(fault))

/** The block on screen, played or looked back on. */
const playOn = ({ screen }: AppState): PlayState | null =>
  screen.kind === 'play' || screen.kind === 'debrief' ? screen.play : null

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

/** Keeps the block after every throw, and files it once it is over or ended. The tour and what is filed already stay out. */
function useKeeping(state: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const play = playOn(state)
  const isOurs = play !== null && play.tour === null && play.grades.length > 0 && play.recordPath === null
  const block = isOurs ? blockOf(play) : null
  const isFinished = state.screen.kind === 'debrief' || block?.spot === null
  const scenario = play?.scenario
  const notes = useRef(play && notesOf(play))
  notes.current = play && notesOf(play)
  const lastKept = useRef<{ block: BlockState; isFinished: boolean } | null>(null)
  useEffect(() => {
    if (!block || !scenario || !notes.current) return
    const isKept = lastKept.current?.block === block && lastKept.current.isFinished === isFinished
    if (isKept) return
    lastKept.current = { block, isFinished }
    services.keep(scenario, block, isFinished, notes.current).then(
      (path) => path !== null && dispatch({ type: 'filed', block, path }),
      (fault: unknown) => dispatch({ type: 'trouble', sentence: `The block could not be kept: ${sentenceOf(fault)}` }),
    )
  }, [block, scenario, isFinished, dispatch, services])
}

/** Keeps what the player says of a block that is filed already. */
function useKeepingNotes({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const play = screen.kind === 'debrief' ? screen.play : null
  const path = play?.recordPath ?? null
  const findings = play?.ownFindings
  const said = useRef(findings)
  useEffect(() => {
    if (!play || path === null || findings === said.current || findings?.length === 0) return
    said.current = findings
    services.keepNotes(path, notesOf(play)).catch((fault: unknown) => {
      dispatch({ type: 'trouble', sentence: `What you said could not be kept: ${sentenceOf(fault)}` })
    })
  }, [play, path, findings, dispatch, services])
}

/** Keeps settings and kit whenever they change. */
function useKeepingChoices({ settings, kit }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const keptSettings = useRef(settings)
  const keptKit = useRef(kit)
  useEffect(() => {
    const complain = (what: string) => (fault: unknown) =>
      dispatch({ type: 'trouble', sentence: `${what} could not be kept: ${sentenceOf(fault)}` })
    if (keptSettings.current !== settings) {
      keptSettings.current = settings
      services.keepSettings(settings).catch(complain('The settings'))
    }
    if (keptKit.current !== kit) {
      keptKit.current = kit
      services.keepKit(kit).catch(complain('Your bag and bowler'))
    }
  }, [settings, kit, dispatch, services])
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
        const sentence = fault instanceof ScenarioError ? fault.sentences[0]! : sentenceOf(fault)
        dispatch({ type: 'past-refused', sentence })
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
