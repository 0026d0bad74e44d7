import { metresToBoards } from '../../units.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import { buildStepTable } from '../../world/ball/step-table.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, ARROWS_METRES, meantThrow } from '../../world/bowler/release.js'
import type { OilFilm } from '../../world/lane/film.js'
import type { Pricing } from '../value/pricing.js'
import { deliveryNodes, ERROR_DIMENSIONS } from './delivery-nodes.js'
import { deliverAll, type FilmInPlay, firstBallWorth, meanOf } from './direct-worth.js'
import {
  FIRST_LAYDOWN_BOARD,
  FIRST_SWING_BOARDS,
  OFFERED_LAYDOWN_BOARDS,
  OFFERED_SWING_BOARDS,
  OFFERED_TARGET_BOARDS,
  SWING_STEP_BOARDS,
} from './line-grid.js'
import { isNear, type LineSurface, newLineSurface, rollLines } from './line-surface.js'
import { expectedWorth, type LineValuing } from './line-value.js'

export const SPEED_STEPS = [-1, 0, 1] as const

/** A line with its worth in game pins against the baseline's average first ball. */
export interface PricedLine {
  readonly ballIndex: number
  readonly aim: Aim
  readonly worth: number
}

/** The best lines on one film. */
export interface LineSearch {
  readonly best: PricedLine
  /** The best line of each ball of the bag, in the bag's order. */
  readonly perBall: readonly PricedLine[]
  /** Worth of any line of the search's bowler as the surface has it: quick, but a few tenths of a pin off near an edge. */
  readonly worthOf: (ballIndex: number, aim: Aim) => number
}

/**
 * Lines of each ball that are rolled miss by miss, and misses each. The surface is a little off, few misses are noisy:
 * their mean chooses better than either.
 */
const ROLLED_LINES = 3
/** Lines further behind the best by the surface are left as they are, but for the best of each ball. */
const ROLLED_WITHIN_PINS = 0.8
const ROLLED_MISSES = deliveryNodes(192, 30_000)
const rolledWorths = new Float64Array(ROLLED_MISSES.length / ERROR_DIMENSIONS)

/**
 * Searches every ball, line and speed of a right-hander on one film: a surface of error-free paths per ball, over
 * which the bowler's misses are then summed; the few best are rolled miss by miss. Feet and target go by half boards.
 */
export function searchLines(
  film: OilFilm,
  bag: readonly BallDynamics[],
  profile: BowlerProfile,
  pricing: Pricing,
): LineSearch {
  const inPlay: FilmInPlay = { film, steps: buildStepTable(film) }
  const surfaces = bag.map((ball) => {
    const surface = newLineSurface()
    rollLines(film, inPlay.steps, ball, profile, surface, 'rolled')
    return surface
  })
  const valuings = SPEED_STEPS.map((_, step) => valuingFor(profile, pricing, step))
  const rolled = (line: PricedLine): PricedLine => {
    const worthOf = firstBallWorth(pricing, line.aim.speedStep)
    deliverAll(
      inPlay,
      bag[line.ballIndex],
      meantThrow(profile, line.aim, 'strike'),
      ROLLED_MISSES,
      worthOf,
      rolledWorths,
    )
    return { ...line, worth: 0.5 * (line.worth + meanOf(rolledWorths)) }
  }
  const found = surfaces.map((surface, ballIndex) => linesOfBall(surface, ballIndex, profile, valuings))
  const enough = bestOf(found.map(([first]) => first)).worth - ROLLED_WITHIN_PINS
  const perBall = found.map((lines) =>
    bestOf(
      lines
        .slice(0, ROLLED_LINES)
        .filter((line, place) => place === 0 || line.worth >= enough)
        .map(rolled),
    ),
  )
  return {
    perBall,
    best: bestOf(perBall),
    worthOf: (ballIndex, aim) => {
      const [laydown, swing] = gridPlace(aim, profile)
      return expectedWorth(surfaces[ballIndex], laydown, swing, aim.speedStep, valuings[aim.speedStep + 1])
    },
  }
}

function bestOf(lines: readonly PricedLine[]): PricedLine {
  return lines.reduce((best, line) => (line.worth > best.worth ? line : best))
}

/** How a bowler's lines are valued at one speed step (index into SPEED_STEPS). */
export function valuingFor(profile: BowlerProfile, pricing: Pricing, step: number): LineValuing {
  return {
    table: pricing.tables[step],
    gutterWorth: pricing.gutterWorth,
    error: profile.error,
    speedStepMetresPerSecond: profile.speedStepMetresPerSecond,
    offNormalErrorFactor: profile.offNormalErrorFactor,
    swingMetresPerRadian: ARROWS_METRES,
  }
}

/** Grid place of an aim: fractional laydown and swing index. */
export function gridPlace(aim: Aim, profile: BowlerProfile): [laydown: number, swing: number] {
  const laydownBoard = aim.feetBoard - metresToBoards(profile.slideToLaydownMetres)
  return [laydownBoard - FIRST_LAYDOWN_BOARD, (aim.targetBoard - laydownBoard - FIRST_SWING_BOARDS) / SWING_STEP_BOARDS]
}

/** Lines from which the half-board lines around are looked at. */
const REFINED_LINES = 6
const HALF_BOARDS = [-0.5, 0, 0.5] as const

/** The promising lines of a ball, best first: whole boards of feet are looked at first (of target too, off the usual speed), then the half boards around the best. */
function linesOfBall(
  surface: LineSurface,
  ballIndex: number,
  profile: BowlerProfile,
  valuings: readonly LineValuing[],
): PricedLine[] {
  const slideBoards = metresToBoards(profile.slideToLaydownMetres)
  const [firstLaydown, lastLaydown] = OFFERED_LAYDOWN_BOARDS
  const priced = (aim: Aim, isRough: boolean): PricedLine | null => {
    const laydownBoard = aim.feetBoard - slideBoards
    const { targetBoard, speedStep } = aim
    if (laydownBoard < firstLaydown || laydownBoard > lastLaydown) return null
    if (targetBoard < Math.max(OFFERED_TARGET_BOARDS[0], laydownBoard + OFFERED_SWING_BOARDS[0])) return null
    if (targetBoard > Math.min(OFFERED_TARGET_BOARDS[1], laydownBoard + OFFERED_SWING_BOARDS[1])) return null
    const [laydown, swing] = gridPlace(aim, profile)
    if (isRough && !isNear(surface, Math.round(laydown), Math.round(swing))) return null
    return { ballIndex, aim, worth: expectedWorth(surface, laydown, swing, speedStep, valuings[speedStep + 1]) }
  }
  const rough: PricedLine[] = []
  for (let feetBoard = Math.ceil(firstLaydown + slideBoards); feetBoard <= lastLaydown + slideBoards; feetBoard++) {
    const from = halfUp(feetBoard - slideBoards + OFFERED_SWING_BOARDS[0])
    for (let targetBoard = from; targetBoard <= from + SWING_REACH_BOARDS; targetBoard += 0.5)
      for (const speedStep of SPEED_STEPS) {
        if (speedStep !== 0 && !Number.isInteger(targetBoard)) continue
        const line = priced({ feetBoard, targetBoard, speedStep }, true)
        if (line) rough.push(line)
      }
  }
  const best = rough.sort(byWorth).slice(0, REFINED_LINES)
  const refined = new Map<string, PricedLine>()
  for (const { aim } of best)
    for (const feet of HALF_BOARDS)
      for (const target of HALF_BOARDS) {
        const near = { ...aim, feetBoard: aim.feetBoard + feet, targetBoard: aim.targetBoard + target }
        const key = `${near.feetBoard} ${near.targetBoard} ${near.speedStep}`
        if (refined.has(key)) continue
        const line = priced(near, false)
        if (line) refined.set(key, line)
      }
  if (refined.size === 0) throw new RangeError('No line of the ball comes near the pins.')
  return [...refined.values()].sort(byWorth)
}

const SWING_REACH_BOARDS = OFFERED_SWING_BOARDS[1] - OFFERED_SWING_BOARDS[0]
const byWorth = (a: PricedLine, b: PricedLine): number => b.worth - a.worth
const halfUp = (boards: number): number => Math.ceil(boards * 2) / 2
