import { type Dispatch, useEffect, useRef } from 'react'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Action, AppState } from './app-state.js'
import { positionOf } from './drill-types.js'
import { blockOf, isBowledOut, isOnlyTried, notesOf, type PlayState } from './play-state.js'
import { sentenceOf } from './sentence-of.js'
import type { TrainerServices } from './services.js'

/** Puts on the disk what has to stay, when it has to. */
export function useKeeping(state: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  useTryingOut(dispatch, services)
  useKeepingThrow(state, dispatch, services)
  const asked = useRef(new WeakSet<BlockState>())
  const play = playOn(state)
  const isLookedBackOn = state.screen.kind === 'debrief'
  useFiling({ play, isLookedBackOn, asked: asked.current }, dispatch, services)
  const other = play?.rival?.kind === 'guest' ? play.rival.play : null
  useFiling({ play: other, isLookedBackOn, asked: asked.current }, dispatch, services)
  useTakingUp(state, dispatch)
  useKeepingNotes(state, dispatch, services)
  useKeepingChoices(state, dispatch, services)
}

/** A block that could not be filed is in its journal meanwhile. */
const RETRY_MILLISECONDS = 5000

/** The block on screen, being played or looked back on. */
const playOn = ({ screen }: AppState): PlayState | null =>
  screen.kind === 'play' || screen.kind === 'debrief' ? screen.play : null

/** Says on the screen that something could not be kept, and why. */
export const notKept =
  (dispatch: Dispatch<Action>, what: string) =>
  (fault: unknown): void =>
    dispatch({ type: 'trouble', sentence: `${what} could not be kept: ${sentenceOf(fault)}` })

/** Says at once where no block could be kept, and not after a game. */
function useTryingOut(dispatch: Dispatch<Action>, services: TrainerServices): void {
  useEffect(() => {
    services.tryOut().catch(notKept(dispatch, 'Blocks'))
  }, [dispatch, services])
}

/** Keeps a throw before its ball rolls. Where it cannot be kept, that is said, and the throw is not made. */
function useKeepingThrow({ screen }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const play = screen.kind === 'play' ? screen.play : null
  const next = play?.stage.kind === 'rolling' && !play.stage.isKept ? play.stage.next : null
  const thrown = useRef(play)
  thrown.current = play
  useEffect(() => {
    const from = thrown.current
    if (!next || !from) return
    const by = {
      ...(from.who?.isGuest ? { guest: from.who.name } : {}),
      ...(from.drill ? { cameToBe: 'drill' as const } : {}),
      ...(from.isShort ? { cameToBe: 'short-block' as const } : {}),
    }
    services.keepThrow(from.scenario, blockOf(from), next, by).then(
      () => dispatch({ type: 'kept', next }),
      (fault: unknown) => dispatch({ type: 'not-kept', next, sentence: sentenceOf(fault) }),
    )
  }, [next, dispatch, services])
}

interface Filing {
  readonly play: PlayState | null
  readonly isLookedBackOn: boolean
  /** Blocks that are being filed or are. */
  readonly asked: WeakSet<BlockState>
}

/** Files a block once it is over or ended; until then keeps what is said of it. What is only tried and what is filed already stay out. */
function useFiling(
  { play, isLookedBackOn, asked }: Filing,
  dispatch: Dispatch<Action>,
  services: TrainerServices,
): void {
  const isOurs = play !== null && !isOnlyTried(play) && play.grades.length > firstOwn(play) && play.recordPath === null
  const block = isOurs ? blockOf(play) : null
  const isFinished =
    isLookedBackOn || (play !== null && (isBowledOut(play) || (play.drill !== undefined && play.stage.kind === 'done')))
  const looked = useRef(play)
  looked.current = play
  useEffect(() => {
    if (!block || !looked.current || asked.has(block)) return
    const notes = notesOf(looked.current)
    const complain = notKept(dispatch, 'The block')
    if (!isFinished) {
      services.keepSaid(block, notes).catch(complain)
      return
    }
    asked.add(block)
    const { scenario, grades, ownThrows, who } = looked.current
    const guest = who?.isGuest ? who.name : undefined
    let again: NodeJS.Timeout | undefined
    let isGone = false
    const file = (): void => {
      services.file(scenario, block, notes, guest).then(
        (path) => dispatch({ type: 'filed', block, path }),
        (fault: unknown) => {
          complain(fault)
          if (isGone) asked.delete(block)
          else again = setTimeout(file, RETRY_MILLISECONDS)
        },
      )
    }
    file()
    // The account, which has the grades in it too, comes later and takes the place of this.
    if (grades.some((grade) => grade)) {
      services.keepWorked(scenario, block, { grades, account: null }, ownThrows).catch(complain)
    }
    return () => {
      isGone = true
      if (again) asked.delete(block)
      clearTimeout(again)
    }
  }, [block, isFinished, asked, dispatch, services])
}

/** The first throw that a drill left to the player; 0 outside a drill. */
const firstOwn = ({ drill }: PlayState): number => (drill ? positionOf(drill).given.length : 0)

/** Plays a block again that is to be gone on with. */
function useTakingUp({ screen }: AppState, dispatch: Dispatch<Action>): void {
  const kept = screen.kind === 'home' ? screen.takingUp : undefined
  useEffect(() => {
    if (!kept) return
    kept.takeUp().then(
      (played) => dispatch({ type: 'taken-up', kept, played }),
      (fault: unknown) => dispatch({ type: 'take-up-refused', kept, sentence: sentenceOf(fault) }),
    )
  }, [kept, dispatch])
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
    services.keepNotes(path, notesOf(play)).catch(notKept(dispatch, 'What you said'))
  }, [play, path, findings, dispatch, services])
}

/** Keeps settings and kit whenever they change. */
function useKeepingChoices({ settings, kit }: AppState, dispatch: Dispatch<Action>, services: TrainerServices): void {
  const keptSettings = useRef(settings)
  const keptKit = useRef(kit)
  useEffect(() => {
    const tell = (aside: string | null) =>
      aside !== null && dispatch({ type: 'trouble', sentence: `What could not be read is kept as ${aside}.` })
    if (keptSettings.current !== settings) {
      keptSettings.current = settings
      services.keepSettings(settings).then(tell, notKept(dispatch, 'The settings'))
    }
    if (keptKit.current !== kit) {
      keptKit.current = kit
      services.keepKit(kit).then(tell, notKept(dispatch, 'Your bag and bowler'))
    }
  }, [settings, kit, dispatch, services])
}
