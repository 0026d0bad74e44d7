import type { BallSpecification } from '../ball/specification.js'
import type { BowlerProfile, Hand } from '../bowler/profile.js'
import type { Aim } from '../bowler/release.js'
import type { PatternLimits } from '../lane/generator.js'
import type { OilPattern } from '../lane/pattern.js'
import type { LaneState } from '../lane/wear.js'
import type { Scoring } from '../scoring/game.js'

/** Where a lane's oil comes from: a written pattern, or limits within which the seed draws one. */
export type LaneOil =
  | { readonly kind: 'pattern'; readonly pattern: OilPattern }
  | { readonly kind: 'limits'; readonly limits: PatternLimits }

export interface LaneSetup {
  readonly name: string
  readonly oil: LaneOil
}

/** What the scenario tells the player about the oil before the first throw. */
export type Posted = 'sheet' | 'length' | 'nothing'

/** The figures that are posted about a lane's oil: what its machine was told, which is true give or take a little (see lane/as-laid). */
export interface PostedSheet {
  readonly lengthFeet: number
  readonly volumeMillilitres?: number
  readonly ratio?: number
}

/** How finely an eye at the foul line can tell things, in the trade's units because that is what is read off a lane. */
export interface SeeingRules {
  readonly arrowsBoardStep: number
  readonly breakpointBoardStep: number
  readonly breakpointFeetStep: number
  readonly speedMphStep: number
}

/** Another bowler on the same lanes, whose throws use up the oil too. */
export interface FieldBowler {
  readonly profile: BowlerProfile
  readonly ball: BallSpecification
  /** The line this bowler starts on, in boards from their own side. */
  readonly aim: Aim
}

/** A validated scenario, as far as the simulator needs it. */
export interface BlockSetup {
  readonly name: string
  readonly lanes: readonly [LaneSetup] | readonly [LaneSetup, LaneSetup]
  readonly bag: readonly BallSpecification[]
  readonly bowler: BowlerProfile
  readonly field: readonly FieldBowler[]
  /** Frames the field has bowled on each lane before the player comes to it, watched; none when left out. */
  readonly fieldFramesBefore?: number
  /** Practice throws on each lane before the first game. */
  readonly practiceThrows: number
  readonly games: number
  readonly scoring: Scoring
  readonly posted: Posted
  readonly seeing: SeeingRules
}

/** What the player settles before a throw. Boards count from the player's own side. */
export interface Decision {
  readonly ballId: string
  readonly aim: Aim
  /** The usual release, or the straighter, calmer one kept for spares. */
  readonly release: 'strike' | 'spare'
}

/**
 * How the ball met the rack, as called from the foul line. `missed`: passed the headpin on the bowler's own side;
 * `past`: crossed in front of the headpin and missed it on the far side.
 */
export type Contact = 'gutter' | 'missed' | 'light' | 'pocket' | 'high' | 'nose' | 'crossover' | 'past'

/** What an eye at the foul line tells of a throw, rounded by the scenario's seeing rules; boards from the bowler's own side. */
export interface Observation {
  readonly arrowsBoard: number
  readonly breakpointBoard: number
  readonly breakpointFeet: number
  readonly contact: Contact
  readonly speedMph: number
  readonly standing: number
}

/** What really happened on the lane; the player sees it only when the oil is lifted. */
export interface Truth {
  /** Lateral metres from the bowler's own edge at each half foot's middle; NaN where the ball was not on the lane. */
  readonly path: Float64Array
  readonly entryBoard: number
  readonly entryAngleRadians: number
  readonly entrySpeedMetresPerSecond: number
  readonly breakpointBoard: number
  readonly breakpointFeet: number
  readonly hookStartFeet: number
  /** Infinity where the ball never came to roll. */
  readonly rollStartFeet: number
  /** Where the ball left the lane for a gutter; Infinity where it stayed on. */
  readonly leftLaneFeet: number
  /** Pins the ball touched; null where no rack was thrown at, since it was known what the throw left. */
  readonly touched: number | null
  /** The oil as this ball met it. */
  readonly laneBefore: LaneState
  /** The five standard normal numbers the delivery error was made from. */
  readonly normals: readonly number[]
}

type Phase = 'practice' | 'game' | 'done'

/** Where a throw stands in the block. */
export interface Spot {
  readonly phase: 'practice' | 'game'
  /** 0-based lane index. */
  readonly lane: number
  /** From 1; 0 in practice. */
  readonly game: number
  /** From 1; in practice the number of the practice throw. */
  readonly frame: number
  /** 1 to 3. */
  readonly ball: number
}

export interface ThrowRecord {
  readonly spot: Spot
  readonly decision: Decision
  readonly standingBefore: number
  readonly standingAfter: number
  readonly observation: Observation
  readonly truth: Truth
}

export interface FieldThrowRecord {
  readonly lane: number
  /** From 1, in the order they bowl. */
  readonly bowlerIndex: number
  readonly bowlerName: string
  readonly hand: Hand
  readonly ballName: string
  readonly aim: Aim
  readonly observation: Observation
  readonly truth: Truth
}

/** What happened, in order; every reader (screen, plain mode, grader, tests) works from these. */
export type BlockEvent =
  | { readonly type: 'field-throw'; readonly record: FieldThrowRecord }
  | { readonly type: 'throw'; readonly record: ThrowRecord }
  | { readonly type: 'practice-done' }
  | { readonly type: 'frame-done'; readonly game: number; readonly frame: number }
  | { readonly type: 'game-done'; readonly game: number; readonly total: number }
  | { readonly type: 'block-done'; readonly total: number }

export interface BlockState {
  readonly setup: BlockSetup
  readonly seed: string
  /** What is posted about each lane's oil, measured once when the block begins; null where nothing is. */
  readonly posted: readonly (PostedSheet | null)[]
  readonly lanes: readonly LaneState[]
  readonly phase: Phase
  /** The throw to be decided next; null when the block is done. */
  readonly spot: Spot | null
  /** Pins standing before that throw. */
  readonly standing: number
  /** Pins felled by each ball so far: games, then frames, then balls. */
  readonly balls: readonly (readonly (readonly number[])[])[]
  readonly throws: readonly ThrowRecord[]
  readonly fieldThrows: readonly FieldThrowRecord[]
  readonly events: readonly BlockEvent[]
}
