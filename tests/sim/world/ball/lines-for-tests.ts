import { drawNormal, stream } from '../../../../src/sim/random.js'
import { metresToBoard, metresToFeet, radiansToDegrees } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, type RollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { rollBall } from '../../../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../../../src/sim/world/ball/specification.js'
import { buildStepTable, type StepTable } from '../../../../src/sim/world/ball/step-table.js'
import type { OilFilm } from '../../../../src/sim/world/lane/film.js'
import { layPattern, measurePattern, type OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { type ThrowFigures, throwOf } from './throws-for-tests.js'

/** A good club bowler's scatter (chosen; the sources give only the spread at the arrows). */
const LAYDOWN_BOARDS = 0.35
const ANGLE_DEGREES = 0.25
const SPEED_MPH = 0.35
const SPIN_RPM = 14
const SCATTERED_THROWS = 256
/** Boards at the arrows per degree of launch. */
const TARGET_BOARDS_PER_DEGREE = 2.95

export interface OiledLane {
  readonly name: string
  readonly film: OilFilm
  readonly steps: StepTable
  readonly lengthFeet: number
}

export interface PricedLine {
  readonly laydown: number
  readonly target: number
  readonly value: number
  readonly pocketShare: number
}

export function oiledLane(pattern: OilPattern): OiledLane {
  const film = layPattern(pattern)
  return {
    name: pattern.name,
    film,
    steps: buildStepTable(film),
    lengthFeet: Math.round(metresToFeet(measurePattern(film).lengthMetres)),
  }
}

const normals = (() => {
  const random = stream({ seed: 'scatter', game: 0, frame: 0, ball: 0, purpose: 'study' })
  return Array.from({ length: SCATTERED_THROWS }, () => Array.from({ length: 4 }, () => drawNormal(random)))
})()

const outcome = newRollOutcome()

/** Rolls a ball; the outcome is overwritten by the next roll. */
export function rollOn(
  lane: OiledLane,
  ball: BallSpecification,
  figures: ThrowFigures,
  path?: Float64Array,
): Readonly<RollOutcome> {
  rollBall(lane.film, lane.steps, dynamicsOf(ball), throwOf(figures), outcome, path)
  return outcome
}

export const entryBoard = (roll: Readonly<RollOutcome>): number => metresToBoard(roll.lateralAtPinsMetres)
export const entryDegrees = (roll: Readonly<RollOutcome>): number => radiansToDegrees(Math.atan(roll.tangentAtPins))
export const inGutter = (roll: Readonly<RollOutcome>): boolean => roll.leftLaneMetres < Number.POSITIVE_INFINITY

/**
 * A rough price of a ball at the pins, in pins of game: a pocket that widens with the angle, a poor nose, nothing in the gutter.
 * Only good enough to rank lines here.
 */
function priceOf(roll: Readonly<RollOutcome>): number {
  if (inGutter(roll)) return 0
  const board = entryBoard(roll)
  const angle = entryDegrees(roll)
  const wide = 0.42 + 0.065 * Math.max(0, angle)
  const strike = Math.max(0, 0.93 - 0.02 * (angle - 6) ** 2) * Math.exp(-(((board - 17.55) / wide) ** 2) / 2)
  const others = board < 13.8 || board > 26.2 ? 8.2 : 13.6 - 4.2 * Math.exp(-(((board - 19.8) / 0.7) ** 2) / 2)
  return 20 * strike + (1 - strike) * others
}

function price(lane: OiledLane, ball: BallSpecification, laydown: number, target: number): PricedLine {
  let value = 0
  let pocket = 0
  for (const [a, b, c, d] of normals as [number, number, number, number][]) {
    const across = LAYDOWN_BOARDS * a
    const roll = rollOn(lane, ball, {
      laydown: laydown + across,
      target: target + across + ANGLE_DEGREES * TARGET_BOARDS_PER_DEGREE * b,
      mph: 17.5 + SPEED_MPH * c,
      rpm: 350 + SPIN_RPM * d,
    })
    value += priceOf(roll)
    if (Math.abs(entryBoard(roll) - 17.5) < 1.2) pocket++
  }
  return { laydown, target, value: value / SCATTERED_THROWS, pocketShare: pocket / SCATTERED_THROWS }
}

/** Every line whose errorless ball comes near the pocket, best first. */
export function pricedLines(lane: OiledLane, ball: BallSpecification): readonly PricedLine[] {
  const lines: PricedLine[] = []
  for (let laydown = 6; laydown <= 36; laydown++) {
    for (let target = 4; target <= laydown + 2; target += 0.5) {
      if (Math.abs(entryBoard(rollOn(lane, ball, { laydown, target })) - 17.6) < 0.8) {
        lines.push(price(lane, ball, laydown, target))
      }
    }
  }
  return lines.sort((a, b) => b.value - a.value)
}

/** Board on which the path of a line leaves the oil. */
export function exitBoard(lane: OiledLane, ball: BallSpecification, line: ThrowFigures): number {
  const path = new Float64Array(lane.film.microns.length / 39)
  rollOn(lane, ball, line, path)
  return metresToBoard(path[Math.round(lane.lengthFeet * 2)]!)
}
