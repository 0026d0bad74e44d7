import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import { type BlockNotes, type Call, type Mode, noNotes, type OwnFinding } from '../../scenarios/store/block-notes.js'
import type { PlayedBlock } from '../../scenarios/store/keeper.js'
import type { BeliefSummary } from '../../sim/analysis/belief/summary.js'
import type { Account } from '../../sim/analysis/debrief/account.js'
import type { ThrowAccount } from '../../sim/analysis/debrief/throw-account.js'
import type { FairGrade } from '../../sim/analysis/grade/grade-types.js'
import { isShortBlockOver, SHORT_BLOCK_FRAMES } from '../../sim/analysis/practice/short-block.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { FRAMES } from '../../sim/world/scoring/frame.js'
import type { DecisionField } from './decision-fields.js'
import type { DrillPlay } from './drill-types.js'

/** Known once weighed; null where a throw is not priced. Undefined while nobody has asked. */
export type ThrowGrade = FairGrade | null | undefined

/** The grade is fixed, and shown unless it is held back; the result is not. */
export interface Rolling {
  readonly kind: 'rolling'
  readonly next: BlockState
  readonly grade: ThrowGrade
  /** Picture of the ball's run; it stays at the first until the throw is kept. */
  readonly frame: number
  /** Whether the throw is safe on the disk. */
  readonly isKept: boolean
  /** Whether the run is to be passed over as soon as the throw is kept. */
  readonly isSkipped: boolean
}

/** Where a throw is between the decision and its result. */
type Stage =
  | { readonly kind: 'deciding' }
  /** The grade is being worked out, for so many turns of the clock; the screen says so once it takes long. */
  | { readonly kind: 'weighing'; readonly turns: number }
  | Rolling
  /** Asked to end the block early. */
  | { readonly kind: 'leaving' }
  | { readonly kind: 'done' }
  /** The frame is over, and the other player at these keys is next. */
  | { readonly kind: 'passing' }

export interface OwnFindingAt {
  readonly throwIndex: number
  readonly finding: OwnFinding
}

/** A moment of a block looked back on, played again. */
interface Moment {
  /** What the first of its choices cost in the block. */
  readonly thenPins: number
}

/** Whom a block is bowled against on the same lane and luck. */
type Rival =
  /** At the same keys by turns, each on a lane of their own; this block has no rival of its own. */
  | { readonly kind: 'guest'; readonly play: PlayState }
  /** A block bowled before, of which each throw is shown once the player has made theirs. */
  | { readonly kind: 'record'; readonly name: string; readonly block: BlockState; readonly costPins: number | null }

/** A block being played. */
export interface PlayState {
  readonly scenario: Scenario
  readonly mode: Mode
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
  /** One for each throw. */
  readonly grades: readonly ThrowGrade[]
  /** What was called before each throw. */
  readonly calls: readonly (Call | null)[]
  readonly ownFindings: readonly OwnFindingAt[]
  /** Where the finished block is filed; null until it is. */
  readonly recordPath: string | null
  /** By the throw's number: whether what it cost is the player's own; all are where it is left out. */
  readonly ownThrows?: readonly boolean[]
  /** Whether it is the short block that practice ends with. */
  readonly isShort?: boolean
  /** The contest it is an entry of: grades and oil are held back until it is over. */
  readonly contest?: string
  /** Throws accounted for so far, the first ones first; all of them once the account is whole. */
  readonly accounts: readonly ThrowAccount[]
  readonly account: Account | null
  readonly decision: Decision
  /** What is called for the coming throw. */
  readonly call: Call | null
  /** Earlier versions of the decision, to go back to until the throw. */
  readonly undo: readonly Decision[]
  readonly field: DecisionField
  /** What lies open over the decision. */
  readonly open: 'nothing' | 'bag' | 'call' | 'belief' | 'history'
  /** What could be known before the last choice; null until asked and worked out. */
  readonly belief: BeliefSummary | null
  readonly stage: Stage
  /** When the last result came on the screen, by the services' clock; null before the first. */
  readonly resultAt: number | null
  /** A figure being typed into the field under the hand; null while none is. */
  readonly typing: string | null
  /** The guided first frame, and how far the guide has come; null in a block of one's own. */
  readonly tour: number | null
  /** A moment of another block played again; null in a block of its own. */
  readonly moment: Moment | null
  /** Whose block it is where two share the keys. */
  readonly who: { readonly name: string; readonly isGuest: boolean } | null
  readonly rival: Rival | null
  /** The drill this is a position of. */
  readonly drill?: DrillPlay
  /** Why the last key did nothing; empty when it did. */
  readonly notice: string
}

/** What a choice is said to cost: 0 where it is as good as the best, or where nothing is priced. */
export const pinsGiven = (grade: ThrowGrade): number => grade?.givenAwayPins ?? 0

/** What all choices weighed so far cost. */
export const allPinsGiven = (play: PlayState): number =>
  play.grades.reduce<number>((sum, grade, index) => sum + (isOwn(play, index) ? pinsGiven(grade) : 0), 0)

/** Whether what a choice cost is the player's own, and not given by a drill or a copied block. */
export const isOwn = (play: PlayState, index: number): boolean => play.ownThrows?.[index] ?? true

/** Whether a choice has its grade, or is one that gets none. */
export const isWeighed = (play: PlayState, index: number): boolean =>
  play.grades[index] !== undefined || !counts(play, index)

/** Whether a throw had pins at stake; practice has none. */
export const counts = (play: PlayState, index: number): boolean => blockOf(play).throws[index]?.spot.phase === 'game'

/** Whether grades are told during the block. */
export const tellsGrades = (play: PlayState): boolean => play.mode === 'drill'

/** Whether all that was to be bowled is bowled. */
export const isBowledOut = (play: PlayState): boolean =>
  play.isShort ? isShortBlockOver(blockOf(play)) : blockOf(play).spot === null

export const blockOf = (play: PlayState): BlockState => play.states.at(-1)!

/** How many frames of a game are bowled. */
export const framesOf = ({ isShort }: PlayState): number => (isShort ? SHORT_BLOCK_FRAMES : FRAMES)

/** Whether a block is only tried, so that nothing of it is kept: the guided first frame, or a moment played again. */
export const isOnlyTried = ({ tour, moment }: PlayState): boolean => tour !== null || moment !== null

/** Whether a block goes its whole way from its first throw and anybody may bowl it; a contest's is nobody else's. */
export const isWholeBlock = (play: PlayState): boolean =>
  !isOnlyTried(play) && play.drill === undefined && play.contest === undefined && !play.isShort

/** Whether the coming throw is at a full rack, whose reaction can be called. */
export const canCall = (play: PlayState): boolean => blockOf(play).standing === FULL_RACK && blockOf(play).spot !== null

export const notesOf = ({ mode, calls, ownFindings }: PlayState): BlockNotes => ({ mode, calls, ownFindings })

const NO_DECISION: Decision = { ballId: '', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' }

/** A block to be played on from its last state, nothing decided yet. */
export function playFrom(
  scenario: Scenario,
  states: readonly BlockState[],
  grades: readonly ThrowGrade[],
  suggestion: Decision | undefined,
  notes: BlockNotes = noNotes('drill'),
): PlayState {
  return {
    scenario,
    mode: notes.mode,
    states,
    grades,
    calls: notes.calls,
    ownFindings: notes.ownFindings,
    recordPath: null,
    accounts: [],
    account: null,
    decision: suggestion ?? NO_DECISION,
    call: null,
    undo: [],
    field: 'feet',
    open: 'nothing',
    belief: null,
    stage: { kind: states.at(-1)?.spot ? 'deciding' : 'done' },
    resultAt: null,
    typing: null,
    tour: null,
    moment: null,
    who: null,
    rival: null,
    notice: '',
  }
}

/** A block played before, as far as it came, with what is kept of its grades. */
export function playedOn(
  { scenario, states, notes, recordPath, ownThrows, isShort, contest, worked }: PlayedBlock,
  suggestion?: Decision,
): PlayState {
  const grades = worked?.grades ?? new Array<ThrowGrade>(states.length - 1).fill(undefined)
  const play = playFrom(scenario, states, grades, suggestion ?? states.at(-1)?.throws.at(-1)?.decision, notes)
  const isOver = isShort === true && isShortBlockOver(states.at(-1)!)
  return {
    ...play,
    ...(isOver ? { stage: { kind: 'done' } } : {}),
    ...(isShort ? { isShort } : {}),
    ...(ownThrows ? { ownThrows } : {}),
    ...(contest === undefined ? {} : { contest }),
    recordPath,
    account: worked?.account ?? null,
    accounts: worked?.account?.throws ?? [],
  }
}
