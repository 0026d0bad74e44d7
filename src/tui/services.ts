import type { Scenario } from '../scenarios/scenario.js'
import type { BlockState, Decision } from '../sim/block/types.js'
import type { PlayerView } from '../sim/block/view.js'
import type { Hand } from '../sim/bowler/profile.js'
import type { KnownGrade } from '../sim/decision/grade.js'

/** A block as it stands, with all that led there. */
export interface PlayedBlock {
  readonly scenario: Scenario
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
}

/** A block left unfinished, told without playing it again. */
export interface KeptBlock {
  readonly title: string
  readonly throws: number
  /**
   * Plays it again up to where it was left.
   *
   * @throws ScenarioError when it no longer comes out the same
   */
  takeUp(): PlayedBlock
}

/** A way a first ball would have rolled had it been delivered as meant. */
export interface MeantRoll {
  /** Boards from the bowler's own side at the middle of each half foot; NaN off the lane. */
  readonly boards: Float64Array
  readonly entryBoard: number
  readonly entryAngleDegrees: number
}

/** All that the screens ask of the scenarios and the simulator, gathered so that tests can put other answers in. */
export interface TrainerServices {
  scenarioNames(): readonly string[]
  /** @throws ScenarioError */
  loadScenario(pathOrName: string): Promise<Scenario>
  /** Levels a bowler can be chosen from, most even first. */
  levels(): readonly string[]
  /** The scenario with another bowler in it. */
  withBowler(scenario: Scenario, level: string, hand: Hand): Scenario
  freshSeed(): string
  /** @throws ScenarioError */
  begin(scenario: Scenario, seed: string): BlockState
  view(block: BlockState): PlayerView | null
  check(block: BlockState, decision: Decision): string | null
  advance(block: BlockState, decision: Decision): BlockState
  /** What the decision gives away against the oil as it is; null where that is not priced (practice, spares). */
  grade(block: BlockState, decision: Decision): KnownGrade | null
  /** The ball as meant, on the lane as it lies before the block's next throw. */
  meantRoll(block: BlockState, decision: Decision): MeantRoll
  /** The block left unfinished last time, if there is one that can be read. */
  keptBlock(): Promise<KeptBlock | null>
  /** Keeps an unfinished block for next time, or files a finished one. */
  keep(scenario: Scenario, block: BlockState, finished: boolean): Promise<void>
}
