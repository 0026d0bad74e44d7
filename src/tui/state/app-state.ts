import type { Drill } from '../../scenarios/drills/load-drill.js'
import type { WaitingDrill } from '../../scenarios/drills/waiting-drill.js'
import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import type { BallData } from '../../scenarios/files/schema/ball.js'
import type { LaneOfTheDay } from '../../scenarios/library/lane-of-the-day.js'
import type { ProgressReport } from '../../scenarios/reports/progress/progress-report.js'
import type { Mode } from '../../scenarios/store/block-notes.js'
import type { KeptBlock, PlayedBlock } from '../../scenarios/store/keeper.js'
import type { BowlerData, OwnKit } from '../../scenarios/store/own-kit.js'
import type { PastBlock } from '../../scenarios/store/past-blocks.js'
import type { Remembered } from '../../scenarios/store/remembered.js'
import type { BeliefSummary } from '../../sim/analysis/belief/summary.js'
import type { Account, AccountStep } from '../../sim/analysis/debrief/account.js'
import type { BowlerAverage } from '../../sim/analysis/explore/bowler-average.js'
import type { Comparison } from '../../sim/analysis/explore/same-luck.js'
import type { WhatIf } from '../../sim/analysis/explore/what-if.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Style } from '../../sim/world/bowler/levels.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import type { Hit } from '../draw/hits.js'
import type { FormState } from '../forms/form.js'
import type { Command, KeyContext } from '../keys/binding.js'
import type { Settings } from '../settings/settings.js'
import type { DebriefState } from './debrief-state.js'
import type { DrillPlay } from './drill-types.js'
import type { PlayState, ThrowGrade } from './play-state.js'
import type { PracticeEvent, PracticeState } from './practice-state.js'

/** Who bowls with what on a scenario, being chosen. */
export interface BowlerChoice extends BlockSource {
  readonly scenario: Scenario
  readonly cursor: number
  readonly hand: Hand
  /** Manner of a typical bowler. */
  readonly style: Style
  readonly bag: 'scenario' | 'own'
  readonly mode: Mode
}

/** Which luck a block has, and who else bowls it. */
export interface BlockSource {
  /** Seed of oil and luck; empty for one nobody has seen. */
  readonly seed: string
  /** Who bowls the same lane and luck at these keys by turns; null where nobody does. */
  readonly guest: string | null
  /** What is being typed. */
  readonly naming: { readonly what: 'seed' | 'guest'; readonly text: string } | null
  /** The date whose lane this is; null for a lane of the player's choice. */
  readonly day: string | null
}

/** What others score on a block's luck. */
export interface Compared {
  /** The block before its first throw. */
  readonly begun: BlockState
  /** How much of it is worked out, 0 to 1. */
  readonly share: number
  readonly comparison: Comparison | null
}

/** Games simulated for an average: enough for an interval of about five pins either way. */
export const AVERAGE_GAMES = 40

/** What the bowler being entered averages, as far as it is simulated; null until the first game is. */
export interface Averages {
  /** The bowler as entered. */
  readonly of: BowlerData
  readonly house: BowlerAverage | null
  readonly sport: BowlerAverage | null
}

/** The open help: the keys, or the words of the trade, scrolled by so many rows. */
export interface Help {
  readonly page: 'keys' | 'words'
  readonly scroll: number
}

/** Words a list is narrowed by; open while they are being typed. */
export interface Filter {
  readonly words: string
  readonly isOpen: boolean
}

/** What was bowled on a lane before. */
export interface Played {
  readonly blocks: number
  /** Best game; null where none was finished. */
  readonly bestGame: number | null
}

export type Screen =
  /** `takingUp` is the block just being played again up to where it was left; `opening` the drill whose positions are. */
  | { readonly kind: 'home'; readonly cursor: number; readonly takingUp?: KeptBlock; readonly opening?: WaitingDrill }
  /** The cursor counts what the filter lets through. */
  | { readonly kind: 'scenarios'; readonly cursor: number; readonly filter?: Filter }
  | ({ readonly kind: 'bowler' } & BowlerChoice)
  /** Blocks null until they are read; `opening` is the file being played again. */
  | {
      readonly kind: 'past'
      readonly cursor: number
      readonly blocks: readonly PastBlock[] | null
      readonly opening: string | null
      /** Whether what is being opened is to be bowled against, and not looked back on. */
      readonly isRival?: boolean
      readonly filter?: Filter
    }
  /** Null until it is read. */
  | { readonly kind: 'progress'; readonly report: ProgressReport | null; readonly scroll: number }
  | { readonly kind: 'kit'; readonly cursor: number }
  /** `place` in the bag, or null for a ball that is new. */
  | { readonly kind: 'ball'; readonly form: FormState<BallData>; readonly place: number | null }
  | { readonly kind: 'own-bowler'; readonly form: FormState<BowlerData>; readonly averages?: Averages }
  | { readonly kind: 'settings'; readonly cursor: number }
  | { readonly kind: 'drill-over'; readonly drill: DrillPlay }
  | { readonly kind: 'play'; readonly play: PlayState }
  | { readonly kind: 'practice'; readonly practice: PracticeState }
  | { readonly kind: 'debrief'; readonly play: PlayState; readonly debrief: DebriefState }

export type ScreenOf<Kind extends Screen['kind']> = Extract<Screen, { kind: Kind }>

export interface AppState {
  readonly screen: Screen
  readonly scenarios: readonly Scenario[]
  /** Blocks to go on with, the latest first. */
  readonly kept: readonly KeptBlock[]
  /** The last block played to its end in this sitting. */
  readonly finished: PlayState | null
  readonly hasPast: boolean
  readonly kit: OwnKit
  /** Kits to go back to, the latest last. */
  readonly kitUndo: readonly OwnKit[]
  readonly settings: Settings
  readonly help: Help | null
  /** When Enter was last pressed, by the services' clock; null before the first time. */
  readonly enterAt: number | null
  /** What was bowled on each lane before, by its title; null until it is read. */
  readonly played: ReadonlyMap<string, Played> | null
  /** The looking back that a moment is played again from; null while none is. */
  readonly momentFrom: ScreenOf<'debrief'> | null
  /** What the home screen tells of the blocks before; null until it is read. */
  readonly remembered: Remembered | null
  /** The drill on what costs most, where none was played since; null until that is known. */
  readonly waitingDrill: WaitingDrill | null
  /** The lane of the day; null until it is worked out. */
  readonly today: LaneOfTheDay | null
  /** Of the block on screen or the last one that was; null before the first. */
  readonly compared: Compared | null
  /** Why something asked for did not happen. */
  readonly notice: string
  /** Set when the trainer should close. */
  readonly exitCode: number | null
}

export type Action =
  /** A key by its name. `bagDrawn` tells that the open bag was on screen, whose own list hears most keys itself. */
  | { readonly type: 'key'; readonly name: string; readonly bagDrawn: boolean }
  | { readonly type: 'pasted'; readonly text: string }
  | { readonly type: 'command'; readonly command: Command }
  | { readonly type: 'ball-chosen'; readonly place: number }
  | { readonly type: 'weighed'; readonly next: BlockState; readonly grade: ThrowGrade }
  | { readonly type: 'waited' }
  /** The host did not throw it, and so it is yet to be made. */
  | { readonly type: 'not-thrown'; readonly sentence: string }
  | { readonly type: 'tick' }
  /** `before` is the state the throw was decided in. */
  | { readonly type: 'graded'; readonly before: BlockState; readonly grade: ThrowGrade }
  | { readonly type: 'believed'; readonly before: BlockState; readonly belief: BeliefSummary }
  | { readonly type: 'accounted'; readonly block: BlockState; readonly step: AccountStep }
  | { readonly type: 'account-whole'; readonly block: BlockState; readonly account: Account }
  | { readonly type: 'what-if'; readonly result: WhatIf }
  | { readonly type: 'ran-on' }
  | { readonly type: 'rolled-on' }
  /** The throw that leads to this state is on the disk. */
  | { readonly type: 'kept'; readonly next: BlockState }
  /** It cannot be put there, and so is not made. */
  | { readonly type: 'not-kept'; readonly next: BlockState; readonly sentence: string }
  | { readonly type: 'taken-up'; readonly kept: KeptBlock; readonly played: PlayedBlock }
  | { readonly type: 'take-up-refused'; readonly kept: KeptBlock; readonly sentence: string }
  | { readonly type: 'filed'; readonly block: BlockState; readonly path: string }
  | { readonly type: 'scenarios-read'; readonly scenarios: AppState['scenarios'] }
  | { readonly type: 'progress-read'; readonly report: ProgressReport }
  | { readonly type: 'past-read'; readonly blocks: readonly PastBlock[] }
  | { readonly type: 'remembered'; readonly remembered: Remembered; readonly drill: WaitingDrill | null }
  | { readonly type: 'drill-opened'; readonly waiting: WaitingDrill; readonly drill: Drill }
  | { readonly type: 'drill-refused'; readonly waiting: WaitingDrill; readonly sentence: string }
  | { readonly type: 'today-read'; readonly today: LaneOfTheDay }
  | { readonly type: 'comparing'; readonly compared: Compared }
  | { readonly type: 'averaged'; readonly averages: Pick<Averages, 'of'> & Partial<Averages> }
  /** A click on what a screen marked to be clicked; feet down the lane where that is a lane. */
  | { readonly type: 'clicked'; readonly hit: Hit; readonly feet: number }
  | { readonly type: 'past-opened'; readonly path: string; readonly played: PlayedBlock }
  | { readonly type: 'past-refused'; readonly sentence: string }
  /** What came back from the files while practising. */
  | { readonly type: 'practice'; readonly event: PracticeEvent }
  | { readonly type: 'trouble'; readonly sentence: string }

/** Which keys hold just now. */
export function keyContext(state: AppState): KeyContext {
  if (state.help) return 'help'
  const { screen } = state
  if (screen.kind === 'debrief') {
    if (screen.debrief.own) return 'own-account'
    if (!screen.debrief.whatIf) return 'debrief'
    return screen.debrief.whatIf.lab.typing === null ? 'what-if' : 'typing'
  }
  if (screen.kind === 'ball' || screen.kind === 'own-bowler') return 'form'
  if ((screen.kind === 'scenarios' || screen.kind === 'past') && screen.filter?.isOpen) return 'filter'
  if (screen.kind === 'bowler' && screen.naming) return 'naming'
  if (screen.kind !== 'play') return screen.kind
  const { stage, open, typing } = screen.play
  if (stage.kind === 'done' && screen.play.drill) return 'drill-done'
  if (stage.kind !== 'deciding') return stage.kind
  if (typing !== null) return 'typing'
  return open === 'nothing' ? 'play' : open
}
