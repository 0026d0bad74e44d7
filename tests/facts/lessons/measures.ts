import { wornByLine } from '../../../src/sim/analysis/explore/worn-lane.js'
import { knownSearch } from '../../../src/sim/analysis/oracle/known-choice.js'
import type { LineSearch, PricedLine } from '../../../src/sim/analysis/shots/best-line.js'
import { OFFERED_SWING_BOARDS } from '../../../src/sim/analysis/shots/line-grid.js'
import {
  boardToMetres,
  degreesToRadians,
  metresToBoard,
  metresToBoards,
  mphToMetresPerSecond,
  rpmToRadiansPerSecond,
} from '../../../src/sim/units.js'
import { dynamicsOf } from '../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../../src/sim/world/ball/step-table.js'
import type { BlockSetup } from '../../../src/sim/world/block/types.js'
import { type Level, levelProfile, type Style } from '../../../src/sim/world/bowler/levels.js'
import type { Aim } from '../../../src/sim/world/bowler/release.js'
import type { OilPattern } from '../../../src/sim/world/lane/pattern.js'
import type { LaneState } from '../../../src/sim/world/lane/wear.js'
import { hybrid, symmetricSolid, weakPearl } from '../../sim/world/ball/bag-for-tests.js'
import { aloneOn, freshOn, LENGTHS_FEET, madeToMeasure } from './lanes.js'
import { rolledAsMeant } from './rolls.js'

const FIRST_BALLS_A_GAME = 10
/** A line that loses this many pins a game counts for 1/e of the best. */
const NEAR_BEST_PINS_A_GAME = 1.5

/** How often a search of this run found another speed best; every search of the measures is counted. */
export const speeds = { searches: 0, offUsual: 0 }

export function search(setup: BlockSetup, lane: LaneState): LineSearch {
  const found = knownSearch(setup, lane)
  speeds.searches++
  if (found.best.aim.speedStep !== 0) speeds.offUsual++
  return found
}

export const pinsAGame = (worth: number): number => FIRST_BALLS_A_GAME * worth

export const bowlerOf = (level: Level) => levelProfile(level, level === 'elite' ? 'cranker' : 'tweener')

/**
 * Board at which near-best lines leave the oil, each counted by exp(−pins a game behind / 1.5): the single best is a near-tie
 * and jumps. Three balls of middling strength, made-to-measure 2.5:1 oil.
 */
function nearBestExit(lengthFeet: number, level: Level, style: Style = 'tweener'): number {
  const balls = [symmetricSolid, hybrid, weakPearl]
  const setup = aloneOn(madeToMeasure(lengthFeet), levelProfile(level, style), balls)
  const lane = freshOn(madeToMeasure(lengthFeet))
  const found = search(setup, lane)
  const slide = metresToBoards(setup.bowler.slideToLaydownMetres)
  let weights = 0
  let sum = 0
  for (const [ballIndex, ball] of balls.entries())
    for (let feetBoard = 11; feetBoard <= 41; feetBoard++)
      for (let swing = OFFERED_SWING_BOARDS[0]; swing <= OFFERED_SWING_BOARDS[1]; swing += 0.5) {
        const targetBoard = feetBoard - slide + swing
        if (targetBoard < 2) continue
        const aim: Aim = { feetBoard, targetBoard, speedStep: 0 }
        const weight = Math.exp(pinsAGame(found.worthOf(ballIndex, aim) - found.best.worth) / NEAR_BEST_PINS_A_GAME)
        if (weight < 1e-4) continue
        const rolled = rolledAsMeant(lane.film, ball, setup.bowler, aim)
        const exit = rolled.boardAt(lengthFeet)
        if (rolled.isInGutter || Number.isNaN(exit)) continue
        weights += weight
        sum += weight * exit
      }
  return sum / weights
}

/** Exits at every length with what a straight line through them says. */
export function exitsByLength(level: Level, style: Style = 'tweener') {
  const exits = LENGTHS_FEET.map((feet) => nearBestExit(feet, level, style))
  const meanLength = LENGTHS_FEET.reduce((sum, feet) => sum + feet, 0) / LENGTHS_FEET.length
  const meanExit = exits.reduce((sum, board) => sum + board, 0) / exits.length
  const covariance = LENGTHS_FEET.reduce((sum, feet, k) => sum + (feet - meanLength) * (exits[k]! - meanExit), 0)
  const variance = LENGTHS_FEET.reduce((sum, feet) => sum + (feet - meanLength) ** 2, 0)
  const misses = exits.map((board, k) => Math.abs(board - (LENGTHS_FEET[k]! - 31)))
  return {
    exits,
    slope: covariance / variance,
    meanMiss: misses.reduce((sum, miss) => sum + miss, 0) / misses.length,
    misses,
  }
}

/** Boards a ball hooks that is thrown straight up a board at 18 mph, 355 rpm, 50 degrees of rotation and 12 of tilt. */
export function straightUpHook(pattern: OilPattern, ball: BallSpecification, board: number): number {
  const film = freshOn(pattern).film
  const outcome = newRollOutcome()
  const rotation = degreesToRadians(50)
  const tilt = degreesToRadians(12)
  const launch = {
    startMetres: 0.45,
    lateralMetres: boardToMetres(board),
    directionX: 1,
    directionY: 0,
    speedMetresPerSecond: mphToMetresPerSecond(18),
    spinRadiansPerSecond: rpmToRadiansPerSecond(355),
    sineRotation: Math.sin(rotation),
    cosineRotation: Math.cos(rotation),
    sineTilt: Math.sin(tilt),
    cosineTilt: Math.cos(tilt),
  }
  rollBall(film, buildStepTable(film), dynamicsOf(ball), launch, outcome)
  return metresToBoard(outcome.lateralAtPinsMetres) - board
}

/** What the best line is worth on a fresh pattern, in pins a game against the bowler's average frame. */
export const bestPinsAGame = (pattern: OilPattern, level: Level): number =>
  pinsAGame(search(aloneOn(pattern, bowlerOf(level)), freshOn(pattern)).best.worth)

export interface RoomWanted {
  readonly entryBoards: readonly [number, number]
  readonly leastDegrees: number
}

const WHOLE_POCKET: RoomWanted = { entryBoards: [16, 19], leastDegrees: 3 }

/** Longest stretch of targets, in boards at the arrows, from which a line's ball meets the wanted entry. */
export function roomAtArrows(
  lane: LaneState,
  setup: BlockSetup,
  { ballIndex, aim }: PricedLine,
  wanted: RoomWanted = WHOLE_POCKET,
): number {
  const step = 0.1
  let longest = 0
  let run = 0
  for (let k = -60; k <= 60; k++) {
    const shifted = { ...aim, targetBoard: aim.targetBoard + k * step }
    const rolled = rolledAsMeant(lane.film, setup.bag[ballIndex]!, setup.bowler, shifted)
    const meets =
      !rolled.isInGutter &&
      rolled.entryBoard >= wanted.entryBoards[0] &&
      rolled.entryBoard <= wanted.entryBoards[1] &&
      rolled.entryDegrees >= wanted.leastDegrees
    run = meets ? run + step : 0
    longest = Math.max(longest, run)
  }
  return longest
}

/** The lane after throws of one line, its bowler's misses under the seed. */
export const wornBy = (setup: BlockSetup, lane: LaneState, line: PricedLine, seed: string, to: number, from = 1) =>
  wornByLine(setup, lane, { ball: setup.bag[line.ballIndex]!, aim: line.aim, release: 'strike' }, { seed, from, to })

const THROWS_A_MOVE = 12

/** The best line's gain in pins a game after the bowler's own throws, the line taken anew every twelve; for each of `at`. */
export function gainOfMoving(setup: BlockSetup, fresh: LaneState, seed: string, at: readonly number[]): number[] {
  let lane = fresh
  let line = search(setup, lane).best
  const start = line.worth
  let thrown = 0
  return at.map((throws) => {
    while (thrown < throws) {
      const to = Math.min(thrown + THROWS_A_MOVE, throws)
      lane = wornBy(setup, lane, line, seed, to, thrown + 1)
      thrown = to
      line = search(setup, lane).best
    }
    return pinsAGame(line.worth - start)
  })
}

/** What one who stays on the fresh best line gains after own throws, in pins a game; and how far its ball's entry has moved. */
export function gainOfStaying(setup: BlockSetup, fresh: LaneState, seed: string, throws: number) {
  const start = search(setup, fresh)
  const { best } = start
  const lane = wornBy(setup, fresh, best, seed, throws)
  const entry = (of: LaneState): number =>
    rolledAsMeant(of.film, setup.bag[best.ballIndex]!, setup.bowler, best.aim).entryBoard
  return {
    pins: pinsAGame(search(setup, lane).worthOf(best.ballIndex, best.aim) - start.worthOf(best.ballIndex, best.aim)),
    moved: entry(lane) - entry(fresh),
  }
}
