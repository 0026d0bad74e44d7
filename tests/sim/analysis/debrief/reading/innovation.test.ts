import { describe, expect, it } from 'vitest'
import { beginBelief, updateBelief } from '../../../../../src/sim/analysis/belief/belief.js'
import { shownThrows } from '../../../../../src/sim/analysis/belief/shown.js'
import { innovationOf, meanWithin } from '../../../../../src/sim/analysis/debrief/reading/innovation.js'
import type { BlockState } from '../../../../../src/sim/world/block/types.js'
import { houseSetup, thumbStates } from '../block-for-tests.js'

describe('the mean of a normal number known to lie in an interval', () => {
  // Closed form of the truncated normal: mean of the upper half is √(2/π) (Johnson, Kotz & Balakrishnan, from memory).
  it('is √(2/π) standard deviations above the middle in the upper half', () => {
    expect(meanWithin(0, 1, 0, Number.POSITIVE_INFINITY)).toBeCloseTo(Math.sqrt(2 / Math.PI), 9)
    expect(meanWithin(3, 2, 3, Number.POSITIVE_INFINITY)).toBeCloseTo(3 + 2 * Math.sqrt(2 / Math.PI), 8)
  })

  it('is what summing the density over the interval gives', () => {
    const [mean, spread, from, to] = [17.2, 2.4, 18.4, 19.5]
    let weight = 0
    let sum = 0
    for (let k = 0; k < 4000; k++) {
      const x = from + ((to - from) * (k + 0.5)) / 4000
      const density = Math.exp(-(((x - mean) / spread) ** 2) / 2)
      weight += density
      sum += density * x
    }
    expect(meanWithin(mean, spread, from, to)).toBeCloseTo(sum / weight, 6)
  })

  it('is the nearest end where the interval is out of reach', () => {
    expect(meanWithin(0, 1, 30, 31)).toBe(30)
  })
})

describe('a surprise divided between hand and lane', () => {
  const surprise = (state: BlockState, index: number, size?: number) => {
    let belief = beginBelief(houseSetup, 0, state.seed, size)
    const shown = shownThrows(state, [0])
    for (const one of shown.slice(0, index)) belief = updateBelief(belief, one)
    return innovationOf(houseSetup, belief, updateBelief(belief, shown[index]), state.throws[index])
  }
  const played = thumbStates(houseSetup, 'surprise', 8)
  const state = played[played.length - 1]

  it('adds up, and leaves nothing to a lane of which nothing can be learnt', () => {
    for (const [index, record] of state.throws.entries()) {
      if (record.observation.contact === 'gutter') continue
      const alone = surprise(state, index, 1)!
      expect(alone.laneBoards).toBe(0)
      expect(alone.deliveryBoards).toBeCloseTo(alone.shownBoard - alone.predictedBoard, 9)
      const all = surprise(state, index, 60)!
      expect(all.laneBoards + all.deliveryBoards).toBeCloseTo(all.shownBoard - all.predictedBoard, 9)
      expect(all.deliveryShare).toBeGreaterThanOrEqual(0)
      expect(all.deliveryShare).toBeLessThanOrEqual(1)
    }
  })

  it('goes to the hand when the ball is shown to cross the arrows far off its target', () => {
    const [record] = state.throws
    const pulled = {
      ...record.observation,
      arrowsBoard: record.decision.aim.targetBoard + 4,
      breakpointBoard: record.observation.breakpointBoard + 6,
      contact: 'past' as const,
    }
    const shown = { ...shownThrows(state, [0])[0], observation: pulled }
    const belief = beginBelief(houseSetup, 0, state.seed, 100)
    const told = innovationOf(houseSetup, belief, updateBelief(belief, shown), { ...record, observation: pulled })!
    expect(told.deliveryBoards).toBeGreaterThan(4)
    expect(told.deliveryShare).toBeGreaterThan(0.7)
  })
})
