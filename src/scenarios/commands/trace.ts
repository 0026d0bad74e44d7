import { wornByLine } from '../../sim/analysis/explore/worn-lane.js'
import { arcTangent } from '../../sim/exact-math.js'
import { metresPerSecondToMph, metresToBoard, metresToFeet, radiansToDegrees } from '../../sim/units.js'
import { dynamicsOf } from '../../sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../sim/world/ball/motion.js'
import { buildStepTable } from '../../sim/world/ball/step-table.js'
import { type Aim, intendedLaunch } from '../../sim/world/bowler/release.js'
import { FILM_ROWS, mirrorFilm } from '../../sim/world/lane/film.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { ballPlace, laneIndex } from '../files/scenario/choose-ball.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { loadScenario } from '../library/load.js'
import { dataFolder } from '../store/data-folder.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'
import { seedOf } from './seed.js'

export interface TraceOptions {
  readonly ball: string
  readonly feet: number
  readonly target: number
  readonly speed: 'softer' | 'usual' | 'firmer'
  readonly release: 'strike' | 'spare'
  /** From 1. */
  readonly lane: number
  readonly after: number
  readonly seed?: string
  readonly json?: boolean
}

const SPEED_STEPS = { softer: -1, usual: 0, firmer: 1 } as const
const TOLD_EVERY_FEET = 5
/** Boards are told for each foot from 1 up to here; the headpin's row is the entry board. */
const LAST_FOOT = 59

/** One ball as the bowler means it, on the lane as oiled or after some throws: where it goes and what it is doing when. */
export async function traceCommand(name: string, asked: TraceOptions, console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(name)
  refuseSealedLane(dataFolder(undefined, console.environment), scenario)
  const options = { ...asked, seed: seedOf(asked.seed, scenario) }
  const { bowler } = scenario.setup
  const ball = scenario.setup.bag[ballPlace(scenario, options.ball)]
  const aim: Aim = { feetBoard: options.feet, targetBoard: options.target, speedStep: SPEED_STEPS[options.speed] }
  const fresh = beginScenario(scenario, options.seed).lanes[laneIndex(scenario, options.lane)]
  const line = { ball, aim, release: options.release }
  const progress = progressOn(console, 'throws that wear the lane')
  const throws = { seed: options.seed, to: options.after, reached: progress.reached }
  const lane = wornByLine(scenario.setup, fresh, line, throws)
  progress.over()

  const film = bowler.hand === 'left' ? mirrorFilm(lane.film) : lane.film
  const outcome = newRollOutcome()
  const path = new Float64Array(FILM_ROWS)
  rollBall(film, buildStepTable(film), dynamicsOf(ball), intendedLaunch(bowler, aim, options.release), outcome, path)

  const feet = (metres: number): number | null => (Number.isFinite(metres) ? rounded(metresToFeet(metres), 2) : null)
  const report = {
    scenario: scenario.name,
    lane: scenario.setup.lanes[options.lane - 1].name,
    ball: ball.id,
    feetBoard: options.feet,
    targetBoard: options.target,
    speed: options.speed,
    release: options.release,
    after: options.after,
    seed: options.seed,
    hookStartFeet: feet(outcome.hookStartMetres),
    breakpointFeet: feet(outcome.breakpointMetres),
    breakpointBoard: rounded(metresToBoard(outcome.breakpointLateralMetres), 2),
    rollStartFeet: feet(outcome.rollStartMetres),
    gutterFeet: feet(outcome.leftLaneMetres),
    entryBoard: rounded(metresToBoard(outcome.lateralAtPinsMetres), 2),
    entryAngleDegrees: rounded(radiansToDegrees(arcTangent(outcome.tangentAtPins)), 2),
    entrySpeedMph: rounded(metresPerSecondToMph(outcome.speedAtPinsMetresPerSecond), 2),
    secondsToPins: rounded(outcome.timeToPinsSeconds, 3),
    boardByFoot: Array.from({ length: LAST_FOOT }, (_, before) => boardAt(path, before + 1)),
  }
  if (options.json) printText(console, jsonText(report))
  else for (const line of traceLines(report, ball.name)) console.print(line)
  return EXIT.fine
}

/** Board at a whole foot, halfway between the middles of the rows before and after; null where the ball is not on the lane. */
function boardAt(path: Float64Array, foot: number): number | null {
  const lateral = (path[2 * foot - 1] + path[2 * foot]) / 2
  return Number.isNaN(lateral) ? null : rounded(metresToBoard(lateral), 2)
}

type TraceReport = Readonly<Record<string, string | number | null | readonly (number | null)[]>> & {
  readonly boardByFoot: readonly (number | null)[]
}

function traceLines(report: TraceReport, ballName: string): string[] {
  const { boardByFoot } = report
  const told = boardByFoot.flatMap((board, before) =>
    (before + 1) % TOLD_EVERY_FEET === 0 && board !== null ? [`${before + 1}: ${board.toFixed(1)}`] : [],
  )
  const worn = report.after === 0 ? 'as oiled' : `after ${report.after} throws of the same line`
  const start = `${ballName}, slide ${report.feetBoard}, target ${report.targetBoard}, speed ${report.speed}, ${report.release} release`
  return [
    `${start}; ${report.lane} ${worn}`,
    // Where friction reaches a third of that on dry boards, which may lie on either side of the breakpoint.
    report.hookStartFeet === null
      ? '  the lane never takes hold of it'
      : `  the lane takes hold at ${report.hookStartFeet} ft`,
    `  breakpoint board ${report.breakpointBoard} at ${report.breakpointFeet} ft`,
    report.rollStartFeet === null ? '  still skidding at the pins' : `  rolls from ${report.rollStartFeet} ft`,
    ...(report.gutterFeet === null ? [] : [`  off the lane at ${report.gutterFeet} ft`]),
    `  enters at board ${report.entryBoard}, ${report.entryAngleDegrees} degrees, ${report.entrySpeedMph} mph, after ${report.secondsToPins} s`,
    `  board by foot: ${told.join('  ')}`,
  ]
}
