import fc from 'fast-check'
import { mean, rootMeanSquare } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { blendOutcomes, forEachBetween } from '../../../../src/sim/analysis/belief/between-throws.js'
import { BLUR } from '../../../../src/sim/analysis/belief/credit.js'
import { deliveriesOf } from '../../../../src/sim/analysis/belief/deliveries.js'
import { knownLineNodes, unseenLineNodes } from '../../../../src/sim/analysis/belief/delivery-nodes.js'
import { leaveChances } from '../../../../src/sim/analysis/belief/leave-chances.js'
import { chanceOfSeen } from '../../../../src/sim/analysis/belief/observation-model.js'
import { type Cell, seenCells } from '../../../../src/sim/analysis/belief/seen-cells.js'
import type { ShownThrow } from '../../../../src/sim/analysis/belief/shown.js'
import { drawNormal, stream } from '../../../../src/sim/random.js'
import { metresPerSecondToMph, metresToBoard, metresToFeet } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, type RollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { callContact, observe } from '../../../../src/sim/world/block/seen.js'
import type { Contact, Observation, Truth } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { deliveredLaunch, straightToArrows } from '../../../../src/sim/world/bowler/release.js'
import { layPattern } from '../../../../src/sim/world/lane/pattern.js'
import { FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'
import { hybrid } from '../../world/ball/bag-for-tests.js'
import { houseForty } from '../../world/lane/patterns-for-tests.js'
import { eyesight } from './block-for-tests.js'

const CONTACTS: readonly Contact[] = ['gutter', 'missed', 'light', 'pocket', 'high', 'nose', 'crossover', 'past']
const profile = levelProfile('200')
const aim = { feetBoard: 27, targetBoard: 14, speedStep: 0 } as const
const film = layPattern(houseForty)
const steps = buildStepTable(film)
const ball = dynamicsOf(hybrid)

const someObservation: Observation = {
  arrowsBoard: 14,
  breakpointBoard: 9,
  breakpointFeet: 40,
  contact: 'pocket',
  speedMph: 15.6,
  standing: 0,
}

const range = (from: number, to: number, step: number): number[] =>
  Array.from({ length: (to - from) / step + 1 }, (_, k) => from + k * step)

const inCell = (cell: Cell, value: number): boolean => value >= cell.from - 1e-9 && value <= cell.to + 1e-9

const shownAs = (observation: Observation): ShownThrow => ({
  lane: 0,
  bowler: profile,
  ball: hybrid,
  line: { aim, release: 'strike' },
  standingBefore: FULL_RACK,
  observation,
})

/** What really happened in one keyed delivery, as the block would note it. */
function deliver(index: number): { truth: Truth; arrowsBoard: number } {
  const random = stream({ seed: 'seen', game: 0, frame: 0, ball: 0, purpose: 'study', index })
  const normals = [0, 1, 2, 3, 4].map(() => drawNormal(random))
  const out = newRollOutcome()
  const path = new Float64Array(120)
  rollBall(film, steps, ball, deliveredLaunch(profile, aim, 'strike', normals), out, path)
  return { truth: truthOf(out, path), arrowsBoard: metresToBoard((path[29] + path[30]) / 2) }
}

function truthOf(out: RollOutcome, path: Float64Array): Truth {
  return {
    path,
    entryBoard: metresToBoard(out.lateralAtPinsMetres),
    entryAngleRadians: out.tangentAtPins,
    entrySpeedMetresPerSecond: out.speedAtPinsMetresPerSecond,
    breakpointBoard: metresToBoard(out.breakpointLateralMetres),
    breakpointFeet: metresToFeet(out.breakpointMetres),
    hookStartFeet: 0,
    rollStartFeet: 0,
    leftLaneFeet: metresToFeet(out.leftLaneMetres),
    touched: 0,
    laneBefore: { film, laidMicrolitres: 0, wipedMicrolitres: 0 },
    normals: [],
  }
}

describe('what may lie behind an observation', () => {
  it('always holds the value that was observed', () => {
    const value = (min: number, max: number) => fc.double({ min, max, noNaN: true })
    const step = fc.constantFrom(0.5, 1, 2)
    fc.assert(
      fc.property(
        value(-2, 42),
        value(-2, 42),
        value(2, 60),
        value(4, 9),
        value(-5, 45),
        step,
        step,
        (arrows, breakpointBoard, breakpointFeet, speed, entryBoard, boards, feet) => {
          const out = { ...newRollOutcome(), leftLaneMetres: Number.POSITIVE_INFINITY }
          const truth: Truth = {
            ...truthOf(out, new Float64Array(0)),
            breakpointBoard,
            breakpointFeet,
            entryBoard,
            entrySpeedMetresPerSecond: speed,
          }
          const rules = { ...eyesight, arrowsBoardStep: boards, breakpointBoardStep: boards, breakpointFeetStep: feet }
          const cells = seenCells(observe(truth, arrows, 0, rules), rules)
          expect(inCell(cells.arrowsBoard, arrows)).toBe(true)
          expect(inCell(cells.breakpointBoard, breakpointBoard)).toBe(true)
          expect(inCell(cells.breakpointFeet, breakpointFeet)).toBe(true)
          expect(inCell(cells.speedMetresPerSecond, speed)).toBe(true)
          expect(cells.entryBoard !== null && inCell(cells.entryBoard, entryBoard)).toBe(true)
        },
      ),
      { numRuns: 60, seed: 7 },
    )
  })
})

describe('the chance of what was seen', () => {
  it('sums to 1 over all breakpoints and calls, for a ball on the lane and for one at its edge', () => {
    const cellsOf = (part: Partial<Observation>) => seenCells({ ...someObservation, ...part }, eyesight)
    const entries = CONTACTS.map((contact) => cellsOf({ contact }).entryBoard)
    const boards = range(-3, 20, 1).map((breakpointBoard) => cellsOf({ breakpointBoard }))
    const feet = range(20, 60, 2).map((breakpointFeet) => cellsOf({ breakpointFeet }).breakpointFeet)
    for (const index of [1, 2, 3]) {
      const { truth } = deliver(index)
      const out = {
        ...newRollOutcome(),
        lateralAtPinsMetres: 0.5,
        tangentAtPins: 0.08,
        breakpointLateralMetres: index === 3 ? 0.001 : 0.2,
        breakpointMetres: truth.breakpointFeet * 0.3048,
      }
      let total = 0
      for (const entryBoard of entries)
        for (const seen of boards)
          for (const breakpointFeet of feet)
            total += chanceOfSeen({ ...seen, breakpointFeet, entryBoard }, null, out, BLUR)
      expect(total).toBeCloseTo(1, 3)
    }
  })

  it('sums to 1 over all arrows boards and speeds', () => {
    let total = 0
    for (let arrowsBoard = 5; arrowsBoard <= 24; arrowsBoard++)
      for (let tenths = 120; tenths <= 190; tenths++) {
        const observation = { ...someObservation, arrowsBoard, speedMph: tenths / 10 }
        total += deliveriesOf(shownAs(observation), seenCells(observation, eyesight)).chanceOf(0.01, 1.2)
      }
    expect(total).toBeCloseTo(1, 6)
  })

  it('sums to 1 over all leaves', () => {
    const totals = [0, 0, 0]
    const places = [
      [17.5, 0.08],
      [21, 0.03],
      [9.2, 0.1],
    ] as const
    for (let mask = 0; mask <= FULL_RACK; mask++) {
      const { at } = leaveChances(mask, 7)
      places.forEach(([board, tangent], i) => {
        totals[i] += at(board, tangent)
      })
    }
    for (const total of totals) expect(total).toBeCloseTo(1, 9)
  })
})

describe('deliveries that agree with what was seen', () => {
  it('spread as the misses do: the points judged between rolled ones have mean 0 and variance 1', () => {
    for (const { nodes, between } of [knownLineNodes, unseenLineNodes])
      for (const miss of ['acrossArrows', 'spin', 'rotation'] as const) {
        const judged: number[] = []
        forEachBetween(nodes.length, between, (k, next, share) => {
          judged.push(nodes[k][miss] + share * (nodes[next][miss] - nodes[k][miss]))
        })
        expect(judged).toHaveLength((nodes.length - 1) * between + 1)
        expect(rootMeanSquare(judged)).toBeCloseTo(1, 12)
        expect(mean(judged)).toBeCloseTo(0, 12)
      }
  })

  // Known gap: loss is measured once a film, not once a delivery; spin, rotation and place leave up to 0.3 mph of it.
  it('cross the arrows where seen and arrive within 0.3 mph of the speed seen, one in twenty within 0.35', () => {
    for (let index = 10; index < 20; index++) {
      const { truth, arrowsBoard } = deliver(index)
      const observation = observe(truth, arrowsBoard, 0, eyesight)
      const cells = seenCells(observation, eyesight)
      const deliveries = deliveriesOf(shownAs(observation), cells)
      const out = newRollOutcome()
      const path = new Float64Array(120)
      rollBall(film, steps, ball, deliveries.probe, out, path)
      const drift = (path[29] + path[30]) / 2 - straightToArrows(deliveries.probe)
      const loss = deliveries.probe.speedMetresPerSecond - out.speedAtPinsMetresPerSecond
      const rolled = deliveries.nodesFor(drift, loss).map((launch) => {
        rollBall(film, steps, ball, launch, out, path)
        return {
          board: metresToBoard((path[29] + path[30]) / 2),
          mph: metresPerSecondToMph(out.speedAtPinsMetresPerSecond),
        }
      })
      const off: number[] = []
      forEachBetween(rolled.length, deliveries.between, (k, next, share) => {
        const [from, to] = [rolled[k], rolled[next]]
        expect(Math.abs(from.board + share * (to.board - from.board) - observation.arrowsBoard)).toBeLessThan(
          0.5 + 0.06,
        )
        off.push(Math.abs(from.mph + share * (to.mph - from.mph) - observation.speedMph))
      })
      expect(off.filter((mph) => mph < 0.05 + 0.3).length).toBeGreaterThan(0.95 * off.length)
      expect(Math.max(...off)).toBeLessThan(0.05 + 0.35)
    }
  })

  it('are called at the pins as 6,000 simulated throws are that looked the same at the arrows, but for 15 % of them', () => {
    const seen = new Map<string, { observation: Observation; calls: Map<Contact, number>; count: number }>()
    for (let index = 0; index < 6000; index++) {
      const { truth, arrowsBoard } = deliver(index)
      const observation = observe(truth, arrowsBoard, 0, { ...eyesight, speedMphStep: 0.5 })
      const key = `${observation.arrowsBoard} ${observation.speedMph}`
      const group = seen.get(key) ?? { observation, calls: new Map(), count: 0 }
      group.calls.set(callContact(truth.entryBoard), (group.calls.get(callContact(truth.entryBoard)) ?? 0) + 1)
      group.count++
      seen.set(key, group)
    }
    const common = [...seen.values()].sort((a, b) => b.count - a.count).slice(0, 3)
    for (const { observation, calls, count } of common) {
      const predicted = predictedCalls(observation)
      const apart = CONTACTS.reduce(
        (sum, contact) => sum + Math.abs((calls.get(contact) ?? 0) / count - (predicted.get(contact) ?? 0)) / 2,
        0,
      )
      expect(apart).toBeLessThan(0.15)
    }
  })
})

/** The model's chances of each call, given arrows board and speed; the breakpoint left open. */
function predictedCalls(observation: Observation): Map<Contact, number> {
  const cells = seenCells(observation, eyesight)
  const anywhere: Cell = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }
  const deliveries = deliveriesOf(shownAs(observation), cells)
  const out = newRollOutcome()
  const path = new Float64Array(120)
  rollBall(film, steps, ball, deliveries.probe, out, path)
  const drift = (path[29] + path[30]) / 2 - straightToArrows(deliveries.probe)
  const nodes = deliveries.nodesFor(drift, deliveries.probe.speedMetresPerSecond - out.speedAtPinsMetresPerSecond)
  const rolled = nodes.map((launch) => {
    const outcome = newRollOutcome()
    rollBall(film, steps, ball, launch, outcome)
    return outcome
  })
  const chances = new Map<Contact, number>()
  for (const contact of CONTACTS) {
    const { entryBoard } = seenCells({ ...observation, contact }, eyesight)
    const seen = { ...cells, breakpointBoard: anywhere, breakpointFeet: anywhere, entryBoard }
    const each: number[] = []
    forEachBetween(rolled.length, deliveries.between, (k, next, share) => {
      blendOutcomes(rolled[k], rolled[next], share, out)
      each.push(chanceOfSeen(seen, null, out, BLUR))
    })
    chances.set(contact, each.reduce((sum, chance) => sum + chance, 0) / each.length)
  }
  return chances
}
