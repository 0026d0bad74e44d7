import { dynamicsOf } from '../../src/sim/ball/dynamics.js'
import { newRollOutcome, type RollOutcome } from '../../src/sim/ball/launch.js'
import { rollBall } from '../../src/sim/ball/motion.js'
import type { BallSpecification } from '../../src/sim/ball/specification.js'
import { buildStepTable, type StepTable } from '../../src/sim/ball/step-table.js'
import { FILM_ROWS, type OilFilm } from '../../src/sim/lane/film.js'
import { layPattern, measurePattern } from '../../src/sim/lane/pattern.js'
import { drawNormal, stream } from '../../src/sim/random.js'
import { metresPerSecondToMph, metresToBoard, metresToFeet, radiansToDegrees } from '../../src/sim/units.js'
import { bag } from '../sim/ball/bag-for-tests.js'
import { type ThrowFigures, throwOf } from '../sim/ball/throws-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/lane/patterns-for-tests.js'

/** A good club bowler's scatter (chosen; the sources give only the spread at the arrows). */
const LAYDOWN_BOARDS = 0.35
const ANGLE_DEGREES = 0.25
const SPEED_MPH = 0.35
const SPIN_RPM = 14
const SCATTERED_THROWS = 256
/** Boards at the arrows per degree of launch. */
const TARGET_BOARDS_PER_DEGREE = 2.95

interface Lane {
  readonly name: string
  readonly film: OilFilm
  readonly steps: StepTable
  readonly lengthFeet: number
}

interface Line {
  readonly laydown: number
  readonly target: number
}

interface PricedLine extends Line {
  readonly value: number
  readonly pocketShare: number
}

const normals = (() => {
  const random = stream({ seed: 'scatter', game: 0, frame: 0, ball: 0, purpose: 'study' })
  return Array.from({ length: SCATTERED_THROWS }, () => Array.from({ length: 4 }, () => drawNormal(random)))
})()

const outcome = newRollOutcome()

function rollOn(lane: Lane, ball: BallSpecification, figures: ThrowFigures, path?: Float64Array): RollOutcome {
  rollBall(lane.film, lane.steps, dynamicsOf(ball), throwOf(figures), outcome, path)
  return outcome
}

const entryBoard = (): number => metresToBoard(outcome.lateralAtPinsMetres)
const entryDegrees = (): number => radiansToDegrees(Math.atan(outcome.tangentAtPins))

/**
 * A rough price of a ball at the pins, in pins of game: a pocket that widens with the angle, a poor nose, nothing in the gutter.
 * Only good enough to rank lines in this study.
 */
function priceOfEntry(): number {
  if (outcome.leftLaneMetres < 18.2) return 0
  const board = entryBoard()
  const angle = entryDegrees()
  const wide = 0.42 + 0.065 * Math.max(0, angle)
  const strike = Math.max(0, 0.93 - 0.02 * (angle - 6) ** 2) * Math.exp(-(((board - 17.55) / wide) ** 2) / 2)
  const others = board < 13.8 || board > 26.2 ? 8.2 : 13.6 - 4.2 * Math.exp(-(((board - 19.8) / 0.7) ** 2) / 2)
  return 20 * strike + (1 - strike) * others
}

function price(lane: Lane, ball: BallSpecification, line: Line): PricedLine {
  let value = 0
  let pocket = 0
  for (const [a, b, c, d] of normals as [number, number, number, number][]) {
    const across = LAYDOWN_BOARDS * a
    rollOn(lane, ball, {
      laydown: line.laydown + across,
      target: line.target + across + ANGLE_DEGREES * TARGET_BOARDS_PER_DEGREE * b,
      mph: 17.5 + SPEED_MPH * c,
      rpm: 350 + SPIN_RPM * d,
    })
    value += priceOfEntry()
    if (entryBoard() > 16.3 && entryBoard() < 18.7) pocket++
  }
  return { ...line, value: value / SCATTERED_THROWS, pocketShare: pocket / SCATTERED_THROWS }
}

/** Every line whose errorless ball comes near the pocket, best first. */
function pricedLines(lane: Lane, ball: BallSpecification): PricedLine[] {
  const lines: PricedLine[] = []
  for (let laydown = 6; laydown <= 36; laydown++) {
    for (let target = 4; target <= laydown + 2; target += 0.5) {
      rollOn(lane, ball, { laydown, target })
      if (Math.abs(entryBoard() - 17.6) < 0.8) lines.push(price(lane, ball, { laydown, target }))
    }
  }
  return lines.sort((a, b) => b.value - a.value)
}

function describeLine(lane: Lane, ball: BallSpecification, line: PricedLine): string {
  const path = new Float64Array(FILM_ROWS)
  rollOn(lane, ball, line, path)
  const exit = metresToBoard(path[Math.round(lane.lengthFeet * 2)]!)
  const figures = [
    `lay ${line.laydown} over ${line.target}`.padEnd(17),
    `value ${line.value.toFixed(2)} pocket ${(100 * line.pocketShare).toFixed(0).padStart(2)} %`,
    `entry ${entryBoard().toFixed(1)} at ${entryDegrees().toFixed(1)}°`,
    `break ${metresToBoard(outcome.breakpointLateralMetres).toFixed(1)} at ${metresToFeet(outcome.breakpointMetres).toFixed(0)} ft`,
    `exit ${exit.toFixed(1)} (rule ${(lane.lengthFeet - 31).toFixed(0)})`,
    `hook ${metresToFeet(outcome.hookStartMetres).toFixed(0)} roll ${metresToFeet(outcome.rollStartMetres).toFixed(0)}`,
    `loss ${(17.5 - metresPerSecondToMph(outcome.speedAtPinsMetresPerSecond)).toFixed(1)} mph ${outcome.timeToPinsSeconds.toFixed(2)} s`,
  ]
  const misses = [-2, -1, 0, 1, 2].map((miss) => {
    rollOn(lane, ball, { ...line, target: line.target + miss })
    return outcome.leftLaneMetres < 18.2 ? 'gutter' : entryBoard().toFixed(1)
  })
  return `${figures.join('  ')}  | target -2..+2: ${misses.join(' ')}`
}

/** The best value that each third laydown allows, to see how flat the choice is. */
function byLaydown(lines: readonly PricedLine[]): string {
  const laydowns = Array.from({ length: 10 }, (_, index) => 6 + 3 * index)
  return laydowns
    .map((laydown) => {
      const best = lines.find((line) => line.laydown === laydown)
      return best === undefined ? `${laydown}: -` : `${laydown}/${best.target}: ${best.value.toFixed(2)}`
    })
    .join('  ')
}

/** Reactions of the bag on four lanes, to be held against what the trade knows. */
export function run(): void {
  for (const pattern of [houseForty, flatFortyFive, flatForty, shortThirtyFive]) {
    const film = layPattern(pattern)
    const measured = measurePattern(film)
    const lane = {
      name: pattern.name,
      film,
      steps: buildStepTable(film),
      lengthFeet: Math.round(metresToFeet(measured.lengthMetres)),
    }
    console.log(
      `\n${lane.name}: ${lane.lengthFeet} ft, ${(measured.volumeMicrolitres / 1000).toFixed(1)} mL, ${measured.ratio.toFixed(1)}:1`,
    )
    for (const ball of bag) {
      const lines = pricedLines(lane, ball)
      const [best] = lines
      if (best === undefined) {
        console.log(`  ${ball.name.padEnd(20)} finds no line`)
        continue
      }
      console.log(`  ${ball.name.padEnd(20)} ${describeLine(lane, ball, best)}`)
      console.log(`  ${''.padEnd(20)} best value by laydown: ${byLaydown(lines)}`)
    }
    console.log('  same throws: lay 15 over 10.5 | lay 20 over 13')
    for (const ball of bag) {
      const at = [
        { laydown: 15, target: 10.5 },
        { laydown: 20, target: 13 },
      ].map((line) => {
        rollOn(lane, ball, line)
        return `${entryBoard().toFixed(1)} at ${entryDegrees().toFixed(1)}°, roll ${metresToFeet(outcome.rollStartMetres).toFixed(0)} ft`
      })
      console.log(`  ${ball.name.padEnd(20)} ${at.join(' | ')}`)
    }
  }
}
