import type { Drill } from '../../scenarios/drills/load-drill.js'
import type { WaitingDrill } from '../../scenarios/drills/waiting-drill.js'
import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import type { BallData } from '../../scenarios/files/schema/ball.js'
import type { LaneOfTheDay } from '../../scenarios/library/lane-of-the-day.js'
import type { PracticeKeeper } from '../../scenarios/practice/practice-keeper.js'
import type { ProgressReport } from '../../scenarios/reports/progress/progress-report.js'
import type { Keeper } from '../../scenarios/store/keeper.js'
import type { BowlerData } from '../../scenarios/store/own-kit.js'
import type { PlayerView } from '../../sim/analysis/view/player-view.js'
import type { PinFall } from '../../sim/world/block/pin-fall.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import type { Seeing, Settings } from '../settings/settings.js'
import type { Thinker } from '../worker/thinker.js'

/** What of a scenario is the player's to choose; what is left out stays the scenario's own. */
export interface Fitting {
  readonly bowler?: BowlerData
  readonly bag?: readonly BallData[]
  readonly seeing: Seeing
}

/** All that the screens ask of the scenarios and the simulator, gathered so that tests can put other answers in. */
export interface TrainerServices extends Keeper {
  scenarioNames(): readonly string[]
  /** @throws ScenarioError */
  loadScenario(pathOrName: string): Promise<Scenario>
  /** Levels a bowler can be chosen from, most even first. */
  levels(): readonly string[]
  /**
   * The scenario with the player's choices in it.
   *
   * @throws ScenarioError
   */
  fit(scenario: Scenario, fitting: Fitting): Scenario
  readonly practice: PracticeKeeper
  /** A seed for a new block. @param own the scenario's, which holds where the command line named none */
  freshSeed(own?: string): string
  /** A seed nobody has seen, whatever was named for the first block. */
  otherSeed(): string
  /** Who plays, if anybody has said. */
  readonly playerName: string | undefined
  /** The lane and seed of the date that clocks here show. */
  laneOfToday(): LaneOfTheDay
  /** A few positions of a drill of the library, with as many passed over as were answered before. @throws ScenarioError */
  openDrill(waiting: WaitingDrill): Promise<Drill>
  /** What choices cost over time, from the blocks that are priced already. @throws ScenarioError */
  readProgress(): Promise<ProgressReport>
  /** @throws ScenarioError */
  begin(scenario: Scenario, seed: string): BlockState
  view(block: BlockState): PlayerView | null
  check(block: BlockState, decision: Decision): string | null
  advance(block: BlockState, decision: Decision): BlockState
  /** Refuses a lane that a contest is still bowled on. @throws ScenarioError */
  checkOpen?(scenario: Scenario): void
  /** Asks a host to throw, where the lane is there and not here; takes the place of `advance`. @throws WriteError */
  throwElsewhere?(block: BlockState, decision: Decision): Promise<BlockState>
  /** The pins of a throw of a block at fixed instants, as the rack engine moved them. */
  pinFall(block: BlockState, index: number, instantsSeconds: readonly number[]): PinFall
  /** Milliseconds from any fixed start: what lies between two key presses, and nothing else, is told by it. */
  now(): number
  /** Grades, accounts and whatever else takes long. */
  readonly thinker: Thinker
  /** What nobody waits for: it thinks beside the other, or is the other where there is but one. */
  readonly secondThinker: Thinker
  /** Whether the second thinker takes nothing away from the first. */
  readonly hasSpareCore: boolean
  /**
   * The ball as meant, on the lane as it lies before the block's next throw: boards from the bowler's own side at the
   * middle of each half foot; NaN off the lane.
   */
  meantBoards(block: BlockState, decision: Decision): Float64Array
  /** Settings; `problem` is why they could not be read, else empty. */
  readSettings(): Promise<{ readonly settings: Settings; readonly problem: string }>
  /** Returns the same as keepKit. */
  keepSettings(settings: Settings): Promise<string | null>
}
