import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { beginPair } from '../../../../src/sim/analysis/belief/belief-pair.js'
import { laneImaginer } from '../../../../src/sim/analysis/belief/imagined-lanes.js'
import { RESPONSE_ROLLS } from '../../../../src/sim/analysis/shots/delivery-response.js'
import {
  directJudging,
  directWorthOnEachLane,
  type JudgedThrow,
  judgingBy,
  worthOnEachLane,
} from '../../../../src/sim/analysis/shots/worth-matrix.js'
import { dynamicsOfBag, pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'

const LANES = 8
const MISSES = 4000
const line = (feetBoard: number, targetBoard: number): JudgedThrow => ({
  ballIndex: 0,
  aim: { feetBoard, targetBoard, speedStep: 0 },
})
const rms = (errors: readonly number[]): number =>
  Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / errors.length)

describe('worth by the response of a line to its misses', () => {
  it.each([
    ['house-forty', '160'],
    ['house-forty', 'elite'],
    ['flat-forty-four', '200'],
  ] as const)('is what thousands of misses rolled one by one give, lane by lane (%s, %s)', async (name, level) => {
    // outside check: plain Monte Carlo with misses of its own
    const { setup } = await loadScenario(name)
    const played = { ...setup, bowler: levelProfile(level) }
    const bench = { bag: dynamicsOfBag(played.bag), profile: played.bowler, pricing: pricingOf(played) }
    const lanes = laneImaginer(beginPair(played, 0, 'response').toChooseBy, 0, 'right')(LANES, 50)
    const lines = [line(24, 12), line(22, 11.5), line(27, 14)]
    const exact = lines.map((one) => directWorthOnEachLane(directJudging(bench, lanes, MISSES, 3_000_000), one))
    const fitted = lines.map((one) => worthOnEachLane(judgingBy(bench, lanes), one))
    const rolled = lines.map((one) =>
      directWorthOnEachLane(directJudging(bench, lanes, RESPONSE_ROLLS, 4_000_000), one),
    )
    const errors = (worths: readonly Float64Array[]): number[] =>
      worths.flatMap((own, at) => Array.from(own, (worth, lane) => worth - exact[at]![lane]!))
    expect(rms(errors(fitted))).toBeLessThan(0.4)
    expect(Math.abs(errors(fitted).reduce((sum, error) => sum + error, 0)) / (LANES * lines.length)).toBeLessThan(0.2)
    // as many throws, averaged, are several times further off
    expect(rms(errors(rolled))).toBeGreaterThan(2 * rms(errors(fitted)))
  })
})
