import { keptWith } from '../../kept-with.js'
import { stream } from '../../random.js'
import { samplesFrom } from '../../sample-ranges.js'
import { metresToBoard, metresToBoards } from '../../units.js'
import { dynamicsOf } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBall, rollBalls } from '../../world/ball/motion.js'
import { type BallSpecification, strengthOf } from '../../world/ball/specification.js'
import { buildStepTable, EASY_STEPS } from '../../world/ball/step-table.js'
import type { BlockSetup, Decision, PostedSheet } from '../../world/block/types.js'
import { type Aim, deliverInto, intendedLaunch, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import { FILM_CELLS } from '../../world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { blankHypotheses, COORDINATES, drawCoordinates } from '../belief/hypotheses.js'
import { layFamilyMember } from '../belief/pattern-family.js'
import { rangesOf } from '../belief/pattern-ranges.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../shots/delivery-nodes.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import { OFFERED_LAYDOWN_BOARDS, OFFERED_SWING_BOARDS } from '../shots/line-grid.js'

/** Where a good ball enters (common practice, no source), and how far off that a line may be on the sheet's middle. */
const POCKET_BOARD = 17.5
const POCKET_WITHIN_BOARDS = 0.5
/** The rule of thumb for where to let the ball turn: length less 31 (common practice, no source). */
const EXIT_RULE_FEET = 31
const UNPOSTED_LENGTH_FEET = 40
/** How far from that board a line may let the ball turn for the sake of more room (common practice, no source). */
const EXIT_WITHIN_BOARDS = 1
/** A board off the pocket weighs as much as this many off the exit board, where no line keeps to both. */
const POCKET_WEIGHT = 2
/** Sheets of the same figures differ in shape: lines are found on the middle one and tried on some others. */
const SHAPES = 8
/** Misses each line is tried with, and how far off the pocket is as bad as any. */
const MISSES = 16
const LOST_BOARDS = 4
/** The roomiest on the middle shape are tried on the others. */
const TRIED_LINES = 16
/** Coordinates of length, volume and ratio come first; they stay in the middle of what the sheet allows. */
const MEASURED_COORDINATES = 3
const TARGETS: readonly [number, number] = [4, 25]

const outcomes = Array.from({ length: MISSES }, newRollOutcome)
const launches = Array.from({ length: MISSES }, scratchLaunch)
const misses = deliveryNodes(MISSES, samplesFrom('startingLine', MISSES))
const outcome = newRollOutcome()

/** Where a line without a miss lets the ball turn and where it enters, in the mean over some lanes. */
interface Meant {
  readonly aim: Aim
  readonly exitBoard: number
  readonly entryBoard: number
}

/**
 * The first ball a sensible bowler starts with who knows the sheet, or where nothing is posted the middle of what oil can be:
 * a benchmark ball (the middle of the bag by strength), let turn at about length less 31, the slide such that it meets the
 * pocket, and of such lines the one that brings the bowler's own misses nearest to it. Not the best there is: it prices
 * nothing, and no other ball is looked at. Kept with the setup.
 */
export const startingLine = keptWith(
  (posted: PostedSheet | null) => JSON.stringify(posted),
  (setup: BlockSetup, posted): Decision => {
    const ball = benchmarkOf(setup.bag)
    const exitBoard = (posted?.lengthFeet ?? UNPOSTED_LENGTH_FEET) - EXIT_RULE_FEET
    const shapes = shapesOf(posted)
    const [middle] = shapes
    const offBy = ({ exitBoard: exit, entryBoard }: Meant): number =>
      Math.abs(exit - exitBoard) + POCKET_WEIGHT * Math.abs(entryBoard - POCKET_BOARD)
    const isSound = ({ exitBoard: exit, entryBoard }: Meant): boolean =>
      Math.abs(exit - exitBoard) <= EXIT_WITHIN_BOARDS && Math.abs(entryBoard - POCKET_BOARD) <= POCKET_WITHIN_BOARDS
    const meant = aimsOf(setup).map((aim) => meantOn(setup, ball, [middle], aim))
    const nearest = least(meant, offBy)
    const tried = meant
      .filter(isSound)
      .map((one) => ({ one, scatter: scatterOf(setup, ball, [middle], one.aim) }))
      .sort((a, b) => a.scatter - b.scatter)
      .slice(0, TRIED_LINES)
      .map(({ one }) => meantOn(setup, ball, shapes, one.aim))
      .filter(isSound)
    const { aim } = tried.length > 0 ? least(tried, (one) => scatterOf(setup, ball, shapes, one.aim)) : nearest
    return { ballId: ball.id, aim, release: 'strike' }
  },
)

/** The first of those with the least of a figure. */
function least<T>(all: readonly T[], figureOf: (one: T) => number): T {
  const figures = all.map(figureOf)
  return all[figures.indexOf(Math.min(...figures))]
}

/** The middle of the bag by strength, balls for spares left out where there are others. */
export function benchmarkOf(bag: readonly BallSpecification[]): BallSpecification {
  const hooking = bag.filter(({ cover }) => cover !== 'plastic')
  const strongestFirst = [...(hooking.length > 0 ? hooking : bag)].sort((a, b) => strengthOf(b) - strengthOf(a))
  return strongestFirst[Math.floor(strongestFirst.length / 2)]
}

function aimsOf({ bowler }: BlockSetup): Aim[] {
  const slide = metresToBoards(bowler.slideToLaydownMetres)
  const aims: Aim[] = []
  for (let targetBoard = TARGETS[0]; targetBoard <= TARGETS[1]; targetBoard += 0.5) {
    const [least, most] = [targetBoard - OFFERED_SWING_BOARDS[1], targetBoard - OFFERED_SWING_BOARDS[0]]
    for (let feetBoard = Math.ceil((least + slide) * 2) / 2; feetBoard <= most + slide; feetBoard += 0.5)
      if (feetBoard - slide >= OFFERED_LAYDOWN_BOARDS[0] && feetBoard - slide <= OFFERED_LAYDOWN_BOARDS[1])
        aims.push({ feetBoard, targetBoard, speedStep: 0 })
  }
  return aims
}

function meantOn({ bowler }: BlockSetup, ball: BallSpecification, lanes: readonly FilmInPlay[], aim: Aim): Meant {
  const launch = intendedLaunch(bowler, aim, 'strike')
  let entryBoard = 0
  let exitBoard = 0
  for (const { film, steps } of lanes) {
    rollBall(film, steps, dynamicsOf(ball), launch, outcome)
    const isLost = outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
    entryBoard += isLost ? FAR_OFF : metresToBoard(outcome.lateralAtPinsMetres) / lanes.length
    exitBoard += metresToBoard(outcome.breakpointLateralMetres) / lanes.length
  }
  return { aim, exitBoard, entryBoard }
}

/** A board that no lane has. */
const FAR_OFF = 1000

/** Mean distance from the pocket, in boards, of the bowler's misses on some lanes; what is lost counts as LOST_BOARDS. */
function scatterOf({ bowler }: BlockSetup, ball: BallSpecification, lanes: readonly FilmInPlay[], aim: Aim): number {
  const thrown = meantThrow(bowler, aim, 'strike')
  launches.forEach((launch, at) => {
    deliverInto(launch, thrown, misses, at * ERROR_DIMENSIONS)
  })
  let sum = 0
  for (const { film, steps } of lanes) {
    rollBalls(film, steps, dynamicsOf(ball), launches, outcomes, MISSES)
    for (const { lateralAtPinsMetres, leftLaneMetres } of outcomes)
      sum +=
        leftLaneMetres < HEADPIN_DISTANCE_METRES
          ? LOST_BOARDS
          : Math.min(LOST_BOARDS, Math.abs(metresToBoard(lateralAtPinsMetres) - POCKET_BOARD))
  }
  return sum / (lanes.length * MISSES)
}

/** Lanes that the posted figures may stand for, the plainest first, from the bowler's own side. */
function shapesOf(posted: PostedSheet | null): FilmInPlay[] {
  const drawn = blankHypotheses(SHAPES, 0)
  drawCoordinates(drawn, stream({ seed: 'starting line', game: 0, frame: 0, ball: 0, purpose: 'solver' }))
  return Array.from({ length: SHAPES + 1 }, (_, shape) => {
    const z = new Float64Array(COORDINATES)
    if (shape > 0) {
      z.set(drawn.coordinates.subarray((shape - 1) * COORDINATES, shape * COORDINATES))
      z.fill(0, 0, MEASURED_COORDINATES)
    }
    const film = { microns: new Float64Array(FILM_CELLS) }
    layFamilyMember(z, rangesOf(posted), film.microns)
    return { film, steps: buildStepTable(film, EASY_STEPS) }
  })
}
