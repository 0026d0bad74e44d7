import type { BallDynamics } from '../ball/dynamics.js'
import { buildStepTable } from '../ball/step-table.js'
import type { BowlerProfile } from '../bowler/profile.js'
import { type Aim, ARROWS_METRES } from '../bowler/release.js'
import type { OilFilm } from '../lane/film.js'
import { metresToBoards } from '../units.js'
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
import type { Pricing } from './pricing.js'

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
  /** Worth of any line of the search's bowler, by the same surface. */
  readonly worthOf: (ballIndex: number, aim: Aim) => number
}

/**
 * Searches every ball, line and speed of a right-hander on one film: a surface of error-free paths per ball, over
 * which the bowler's misses are then summed. Feet and target go by half boards.
 */
export function searchLines(
  film: OilFilm,
  bag: readonly BallDynamics[],
  profile: BowlerProfile,
  pricing: Pricing,
): LineSearch {
  const steps = buildStepTable(film)
  const surfaces = bag.map((ball) => {
    const surface = newLineSurface()
    rollLines(film, steps, ball, profile, surface)
    return surface
  })
  const valuings = SPEED_STEPS.map((_, step) => valuingFor(profile, pricing, step))
  const perBall = surfaces.map((surface, ballIndex) => bestOfBall(surface, ballIndex, profile, valuings))
  return {
    perBall,
    best: perBall.reduce((best, line) => (line.worth > best.worth ? line : best)),
    worthOf: (ballIndex, aim) => {
      const [laydown, swing] = gridPlace(aim, profile)
      return expectedWorth(surfaces[ballIndex], laydown, swing, aim.speedStep, valuings[aim.speedStep + 1])
    },
  }
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

function bestOfBall(
  surface: LineSurface,
  ballIndex: number,
  profile: BowlerProfile,
  valuings: readonly LineValuing[],
): PricedLine {
  const slideBoards = metresToBoards(profile.slideToLaydownMetres)
  let best: PricedLine = { ballIndex, aim: { feetBoard: 0, targetBoard: 0, speedStep: 0 }, worth: -Infinity }
  const [firstLaydown, lastLaydown] = OFFERED_LAYDOWN_BOARDS
  const lastFeet = lastLaydown + slideBoards
  for (let feetBoard = halfUp(firstLaydown + slideBoards); feetBoard <= lastFeet; feetBoard += 0.5) {
    const laydownBoard = feetBoard - slideBoards
    const laydown = laydownBoard - FIRST_LAYDOWN_BOARD
    const from = Math.max(OFFERED_TARGET_BOARDS[0], halfUp(laydownBoard + OFFERED_SWING_BOARDS[0]))
    const to = Math.min(OFFERED_TARGET_BOARDS[1], laydownBoard + OFFERED_SWING_BOARDS[1])
    for (let targetBoard = from; targetBoard <= to; targetBoard += 0.5) {
      const swing = (targetBoard - laydownBoard - FIRST_SWING_BOARDS) / SWING_STEP_BOARDS
      if (!isNear(surface, Math.round(laydown), Math.round(swing))) continue
      for (const speedStep of SPEED_STEPS) {
        const worth = expectedWorth(surface, laydown, swing, speedStep, valuings[speedStep + 1])
        if (worth > best.worth) best = { ballIndex, aim: { feetBoard, targetBoard, speedStep }, worth }
      }
    }
  }
  return best
}

const halfUp = (boards: number): number => Math.ceil(boards * 2) / 2
