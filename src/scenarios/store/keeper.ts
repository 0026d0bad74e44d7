import type { BowlerAverage } from '../../sim/analysis/explore/bowler-average.js'
import type { Comparison } from '../../sim/analysis/explore/same-luck.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import type { BlockNotes } from './block-notes.js'
import type { KeptAccount } from './kept-account.js'
import type { OpenBlock } from './open-block.js'
import type { OwnKit } from './own-kit.js'
import type { PastBlock } from './past-blocks.js'
import type { Remembered } from './remembered.js'

/** A block as it stands, with all that led there. */
export interface PlayedBlock {
  readonly scenario: Scenario
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
  readonly notes: BlockNotes
  /** Where it is filed; null while it is unfinished. */
  readonly recordPath: string | null
  /** By the throw's number, as far as known: whether what it cost is the player's own; all are where it is left out. */
  readonly ownThrows?: readonly boolean[]
  /** Why later ones were passed over, one sentence each. */
  readonly passedOver?: readonly string[]
  /** Whether it is the short block that practice ends with. */
  readonly isShort?: boolean
  /** The contest it is an entry of: grades and oil are held back. None where it is left out. */
  readonly contest?: string
  /** Whose it is, where that is known and it is somebody else's. */
  readonly bowledBy?: string
  /** What was worked out of it before, if it is still kept. */
  readonly worked?: KeptAccount
}

/** A block left unfinished, told without playing it again. */
export interface KeptBlock {
  readonly title: string
  readonly throws: number
  /**
   * Plays it again up to where it was left, and takes it up.
   *
   * @throws ScenarioError when it no longer comes out the same, WriteError when somebody else has taken it up
   */
  takeUp(): Promise<PlayedBlock>
}

interface LeftBlocks {
  /** The latest first. */
  readonly blocks: readonly KeptBlock[]
  /** Why others cannot be gone on with, one sentence each; they are left as they are. */
  readonly problems: readonly string[]
}

/** Whose block a throw begins, and how that comes to be. */
export interface ThrownBy {
  /** Whose it is where it is not the player's own. */
  readonly guest?: string
  /** In a drill what was thrown before is given. */
  readonly cameToBe?: 'played' | 'drill' | 'short-block'
}

/** All that has to stay on the disk but the settings. */
export interface Keeper {
  /** Tries whether blocks can be kept at all, before one is played for nothing. @throws WriteError */
  tryOut(): Promise<void>
  /** Blocks left unfinished before, on screen or in plain play. */
  leftBlocks(): Promise<LeftBlocks>
  /**
   * The block left last (true), or the one of an unfinished record (its path), played again and taken up.
   *
   * @throws ScenarioError
   */
  resume(from: string | true): Promise<PlayedBlock>
  /** Plays on a block that somebody else has opened. @param states the block before each throw, and last as it stands */
  adopt(open: OpenBlock, states: readonly BlockState[]): PlayedBlock
  /**
   * Puts the throw that leads from one state to the next on the disk: only then may its result be shown.
   *
   * @param by told with a block's first throw
   * @throws WriteError
   */
  keepThrow(scenario: Scenario, before: BlockState, after: BlockState, by?: ThrownBy): Promise<void>
  /** Keeps what the player said of a block that is still played. */
  keepSaid(block: BlockState, notes: BlockNotes): Promise<void>
  /** Files a block that is over or ended, and tells where. */
  file(scenario: Scenario, block: BlockState, notes: BlockNotes, guest?: string): Promise<string>
  /** Replaces the notes beside a filed record. */
  keepNotes(recordPath: string, notes: BlockNotes): Promise<void>
  /** Keeps what was worked out of a filed block, so that it need not be worked out again. */
  keepWorked(scenario: Scenario, block: BlockState, worked: KeptAccount, ownThrows?: readonly boolean[]): Promise<void>
  hasPast(): Promise<boolean>
  /** What the first screen tells of these blocks; nothing is graded for it. */
  remembered(past: readonly PastBlock[]): Promise<Remembered>
  /** What others score on the luck of a seed, as worked out before; null where it is not. */
  keptComparison(scenario: Scenario, seed: string): Promise<Comparison | null>
  keepComparison(scenario: Scenario, seed: string, comparison: Comparison): Promise<void>
  /** What a scenario's bowler averages over so many games, as worked out before; null where it is not. */
  keptAverage(scenario: Scenario, games: number): Promise<BowlerAverage | null>
  keepAverage(scenario: Scenario, games: number, average: BowlerAverage): Promise<void>
  listPast(): Promise<readonly PastBlock[]>
  /** @throws ScenarioError when it cannot be read or no longer comes out the same */
  openPast(path: string): Promise<PlayedBlock>
  /** Own balls and bowler; `problem` is why they could not be read, else empty. */
  findKit(): Promise<{ readonly kit: OwnKit; readonly problem: string }>
  /** Returns where a file that could not be read lies now, out of the way of the new one; null where there was none. */
  keepKit(kit: OwnKit): Promise<string | null>
  /** Ends the keeping once all that was to be kept is; blocks left unfinished stay for next time. */
  leave(): Promise<void>
}
