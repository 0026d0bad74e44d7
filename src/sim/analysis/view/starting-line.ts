import { keptWith } from '../../kept-with.js'
import { stream } from '../../random.js'
import { metresToBoard, metresToBoards } from '../../units.js'
import { dynamicsOf } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import { type BallSpecification, strengthOf } from '../../world/ball/specification.js'
import { buildStepTable, EASY_STEPS } from '../../world/ball/step-table.js'
import type { BlockSetup, Decision, PostedSheet } from '../../world/block/types.js'
import { type Aim, intendedLaunch } from '../../world/bowler/release.js'
import { FILM_CELLS } from '../../world/lane/film.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { blankHypotheses, COORDINATES, drawCoordinates } from '../belief/hypotheses.js'
import { layFamilyMember } from '../belief/pattern-family.js'
import { rangesOf } from '../belief/pattern-ranges.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import { OFFERED_LAYDOWN_BOARDS, OFFERED_SWING_BOARDS } from '../shots/line-grid.js'

/** Where a good ball enters, and how far off that a starting line may be (common practice, no source). */
const POCKET_BOARD = 17.5
const POCKET_WITHIN_BOARDS = 1
/** The rule of thumb for where to let the ball turn: length less 31 (common practice, no source). */
const EXIT_RULE_FEET = 31
const UNPOSTED_LENGTH_FEET = 40
/** A board off the pocket weighs as much as this many off the exit board. */
const POCKET_WEIGHT = 2
/** Sheets of the same figures differ in shape: lines are found on the middle one, and the best of them tried on some others. */
const SHAPES = 8
const TRIED_LINES = 24
/** Coordinates of length, volume and ratio come first; they stay in the middle of what the sheet allows. */
const MEASURED_COORDINATES = 3
const TARGETS: readonly [number, number] = [4, 25]

const outcome = newRollOutcome()

interface Candidate {
  readonly aim: Aim
  readonly off: number
}

/**
 * The first ball a sensible bowler starts with who knows the sheet, or where nothing is posted the middle of what oil can be:
 * a benchmark ball (the middle of the bag by strength), let turn at about length less 31, the slide such that it meets the
 * pocket. Not the best there is. Kept with the setup.
 */
export const startingLine = keptWith(
  (posted: PostedSheet | null) => JSON.stringify(posted),
  (setup: BlockSetup, posted): Decision => {
    const ball = benchmarkOf(setup.bag)
    const exitBoard = (posted?.lengthFeet ?? UNPOSTED_LENGTH_FEET) - EXIT_RULE_FEET
    const [middle, ...others] = shapesOf(posted)
    const promising = aimsOf(setup)
      .map((aim): Candidate => ({ aim, off: missOf(setup, ball, [middle], aim, exitBoard) }))
      .sort((a, b) => a.off - b.off)
      .slice(0, TRIED_LINES)
    const [best] = promising
      .map(({ aim }): Candidate => ({ aim, off: missOf(setup, ball, [middle, ...others], aim, exitBoard) }))
      .sort((a, b) => a.off - b.off)
    return { ballId: ball.id, aim: best.aim, release: 'strike' }
  },
)

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

/** How far a line is, without a miss and in the mean over some lanes, from meeting the pocket by way of the exit board. */
function missOf(
  { bowler }: BlockSetup,
  ball: BallSpecification,
  lanes: readonly FilmInPlay[],
  aim: Aim,
  exitBoard: number,
): number {
  const launch = intendedLaunch(bowler, aim, 'strike')
  let entry = 0
  let exit = 0
  for (const { film, steps } of lanes) {
    rollBall(film, steps, dynamicsOf(ball), launch, outcome)
    if (outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES) return Number.POSITIVE_INFINITY
    entry += metresToBoard(outcome.lateralAtPinsMetres) / lanes.length
    exit += metresToBoard(outcome.breakpointLateralMetres) / lanes.length
  }
  const offPocket = Math.abs(entry - POCKET_BOARD)
  const beyond = Math.max(0, offPocket - POCKET_WITHIN_BOARDS)
  return Math.abs(exit - exitBoard) + POCKET_WEIGHT * offPocket + FAR_OFF * beyond
}

/** Per board beyond what is allowed: no exit board makes up for missing the pocket. */
const FAR_OFF = 100

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
