import { mean, median } from 'simple-statistics'
import { beforeAll, describe, expect, it } from 'vitest'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { knownSearch } from '../../src/sim/analysis/oracle/known-choice.js'
import { drawNormal, stream } from '../../src/sim/random.js'
import { feetToMetres, metresToBoard } from '../../src/sim/units.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../src/sim/world/ball/motion.js'
import type { BallSpecification } from '../../src/sim/world/ball/specification.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import { callContact } from '../../src/sim/world/block/seen.js'
import type { BlockSetup } from '../../src/sim/world/block/types.js'
import { LEVELS, levelProfile, STYLES } from '../../src/sim/world/bowler/levels.js'
import { type Aim, deliveredLaunch } from '../../src/sim/world/bowler/release.js'
import type { LaneState } from '../../src/sim/world/lane/wear.js'
import { isWashout } from '../../src/sim/world/pins/leaves.js'
import { flatFortyFive } from '../sim/world/lane/patterns-for-tests.js'
import { bestAim, bowl, movedAim, openUp, SEEDS } from './opened-up.js'

// Facts of the trade about an unfamiliar flat 45 ft, 26 mL, 2.5:1 lane, beside a house lane: common practice, no
// source. Each is looked at over 20 seeds.

const SHOTS = 30
/** Opening a lane up takes many searches. */
const OPENED_SEEDS = SEEDS.slice(0, 3)
let flat: BlockSetup
let house: BlockSetup
let flatLane: LaneState
let houseLane: LaneState
let strong: readonly BallSpecification[]
let sanded: BallSpecification
let weakPearl: BallSpecification

const ballNamed = (setup: BlockSetup, id: string): BallSpecification => {
  const ball = setup.bag.find((one) => one.id === id)
  if (!ball) throw new Error(`no ball ${id}`)
  return ball
}

beforeAll(async () => {
  const lanes = [{ name: 'lane 1', oil: { kind: 'pattern', pattern: flatFortyFive } }] as const
  // nothing posted: the oil lies as it is written
  flat = { ...(await loadScenario('flat-forty-four')).setup, lanes, field: [], posted: 'nothing' }
  house = { ...(await loadScenario('house-forty')).setup, field: [], bowler: flat.bowler, posted: 'nothing' }
  flatLane = beginBlock(flat, 'facts').lanes[0]
  houseLane = beginBlock(house, 'facts').lanes[0]
  sanded = ballNamed(flat, 'sanded-asymmetric')
  weakPearl = ballNamed(flat, 'weak-pearl')
  strong = [sanded, ballNamed(flat, 'symmetric-solid'), ballNamed(flat, 'asymmetric-hybrid')]
})

const outcome = newRollOutcome()

/** Board at the headpin's row of one delivery, and the board its straight line off the hand would have reached. */
function rolled(lane: LaneState, ball: BallSpecification, aim: Aim, seed: string | null) {
  const source = stream({ seed: seed ?? 'none', game: 0, frame: 1, ball: 1, purpose: 'study' })
  const normals = Array.from({ length: 5 }, () => (seed === null ? 0 : drawNormal(source)))
  const launch = deliveredLaunch(flat.bowler, aim, 'strike', normals)
  rollBall(lane.film, buildStepTable(lane.film), dynamicsOf(ball), launch, outcome)
  const straight =
    launch.lateralMetres + (launch.directionY / launch.directionX) * (feetToMetres(60) - launch.startMetres)
  return { entryBoard: metresToBoard(outcome.lateralAtPinsMetres), straightBoard: metresToBoard(straight) }
}

const shifted = (aim: Aim, targetBoards: number): Aim => ({ ...aim, targetBoard: aim.targetBoard + targetBoards })

describe('a flat 45 ft, 26 mL, 2.5:1 lane (common practice, no source)', () => {
  it('straightens strong sanded asymmetric balls that hook on house oil, same release', () => {
    const aim: Aim = { feetBoard: 24, targetBoard: 12, speedStep: 0 }
    for (const seed of SEEDS) {
      const onFlat = rolled(flatLane, sanded, aim, seed)
      const onHouse = rolled(houseLane, sanded, aim, seed)
      expect(onFlat.entryBoard - onFlat.straightBoard).toBeLessThan(onHouse.entryBoard - onHouse.straightBoard)
    }
  })

  it('punishes two boards right on fresh oil: the headpin is missed or a washout left most times', () => {
    const right = shifted(bestAim(flat, flatLane, sanded), -2)
    const punished = SEEDS.filter((seed) => {
      const thrown = bowl(flat, flatLane, sanded, right, seed, 1)
      return callContact(thrown.truth.entryBoard) === 'missed' || isWashout(thrown.standing)
    })
    expect(punished.length).toBeGreaterThan(SEEDS.length / 2)
  })

  it('lets the weak pearl skid past: it enters right of the strong solid, same release', () => {
    const aim = bestAim(flat, flatLane, sanded)
    for (const seed of SEEDS)
      expect(rolled(flatLane, weakPearl, aim, seed).entryBoard).toBeLessThan(
        rolled(flatLane, sanded, aim, seed).entryBoard,
      )
  })

  describe(`after ${SHOTS} shots of three strong balls in the zone`, () => {
    let opened: ReturnType<typeof openUp>[]
    let fresh: Aim
    beforeAll(() => {
      fresh = bestAim(flat, flatLane, sanded)
      opened = OPENED_SEEDS.map((seed) => openUp(flat, flatLane, strong, seed, SHOTS))
    }, 120_000)

    // A bowler of 200 spreads over eight boards at the pins of flat oil, so that the drift of a board or two costs less than a tenth of
    // a pin a throw: the old line stays as good as the best (moves of 0 to 0.5 boards), and there is nothing to follow in steps.
    it.fails("known gap: has moved the same ball's best line left by 1 to 5 boards (0 to 0.5)", () => {
      const moves = opened.map(({ lane }) => movedAim(flat, lane, sanded, fresh).feetBoard - fresh.feetBoard)
      expect(median(moves)).toBeGreaterThanOrEqual(1)
      expect(median(moves)).toBeLessThanOrEqual(5)
      expect(moves.filter((move) => move >= 1 && move <= 5).length).toBeGreaterThan(OPENED_SEEDS.length / 2)
      expect(moves.every((move) => move > 0)).toBe(true)
    })

    it.fails('known gap: brings a one-board right miss back that fresh oil did not', () => {
      const offPocket = (lane: LaneState, aim: Aim): number =>
        Math.abs(rolled(lane, sanded, shifted(aim, -1), null).entryBoard - 17.5)
      const freshMiss = offPocket(flatLane, fresh)
      const wornMisses = opened.map(({ lane }) => offPocket(lane, movedAim(flat, lane, sanded, fresh)))
      expect(mean(wornMisses)).toBeLessThan(freshMiss)
      expect(wornMisses.filter((boards) => boards < 1).length).toBeGreaterThanOrEqual(0.75 * OPENED_SEEDS.length)
    })

    it.fails('known gap: is followed best in steps of half a board to a board, not in leaps', () => {
      const steps = opened.flatMap(({ feetMoves }) => feetMoves)
      expect(median(steps)).toBeGreaterThanOrEqual(0.5)
      expect(median(steps)).toBeLessThanOrEqual(1)
      expect(steps.filter((step) => Math.abs(step) <= 1).length).toBeGreaterThan(steps.length / 2)
      expect(steps.filter((step) => Math.abs(step) <= 2).length).toBeGreaterThan(0.9 * steps.length)
    })
  })
})

describe('the same strong ball on house oil (common practice, no source)', () => {
  // With its room of more than two boards it is the best ball of half of them, by a pin a game or less.
  it.fails('known gap: hooks too soon to be the best choice, whoever bowls (the best of 10 in 20)', () => {
    const bowlers = LEVELS.flatMap((level) => STYLES.map((style) => levelProfile(level, style))).slice(0, 20)
    const best = bowlers.map((bowler) => knownSearch({ ...house, bowler }, houseLane).best)
    expect(best.filter((line) => house.bag[line.ballIndex].id === 'sanded-asymmetric').length).toBeLessThanOrEqual(1)
  })

  it('hooks sooner and more than the weak pearl, same release', () => {
    const aim: Aim = { feetBoard: 24, targetBoard: 12, speedStep: 0 }
    for (const seed of SEEDS)
      expect(rolled(houseLane, sanded, aim, seed).entryBoard).toBeGreaterThan(
        rolled(houseLane, weakPearl, aim, seed).entryBoard,
      )
  })
})
