import { describe, expect, it } from 'vitest'
import { beginPair } from '../../../../src/sim/analysis/belief/belief-pair.js'
import { laneImaginer } from '../../../../src/sim/analysis/belief/imagined-lanes.js'
import { type RaceRound, race } from '../../../../src/sim/analysis/grade/race.js'
import type { PricedLine } from '../../../../src/sim/analysis/shots/best-line.js'
import { meanOf } from '../../../../src/sim/analysis/shots/direct-worth.js'
import { type Bench, directJudging, directWorthOnEachLane } from '../../../../src/sim/analysis/shots/worth-matrix.js'
import { dynamicsOfBag, pricingOf } from '../../../../src/sim/analysis/value/bowler-pricing.js'
import { setup } from './block-for-tests.js'

const bench: Bench = { bag: dynamicsOfBag(setup.bag), profile: setup.bowler, pricing: pricingOf(setup) }
const imagine = laneImaginer(beginPair(setup, 0, 'race').toChooseBy, 0, setup.bowler.hand)
/** Parallel lines of every ball from far outside to far inside. */
const entrants: readonly PricedLine[] = setup.bag.flatMap((_, ballIndex) =>
  [10, 14, 18, 22, 26, 30, 34].map((feetBoard) => ({
    ballIndex,
    aim: { feetBoard, targetBoard: Math.round(feetBoard * 0.5), speedStep: 0 as const },
    worth: 0,
  })),
)
const rounds: readonly RaceRound[] = [
  { lines: entrants.length, lanes: 8 },
  { lines: 8, lanes: 16 },
  { lines: 3, lanes: 32 },
]
const finish = race(bench, imagine, entrants, rounds)

describe('a race of lines', () => {
  it('is won by a line as good as any, by thousands of misses on every lane imagined', () => {
    // outside check: plain Monte Carlo, all lines on all lanes; a fifth of a pin is the goal for one choice
    const judging = directJudging(bench, imagine(200, 40), 48, 1_600_000)
    const worthOf = (line: PricedLine): number => meanOf(directWorthOnEachLane(judging, line))
    const most = entrants.map(worthOf).reduce((best, worth) => Math.max(best, worth), -Infinity)
    expect(most - worthOf(finish[0]!)).toBeLessThan(0.2)
    // over all its lanes the winner looks about as good as it is
    expect(Math.abs(finish[0]!.worth - worthOf(finish[0]!))).toBeLessThan(0.5)
  })

  it('has the lines of its last round first, best first, and the best of every ball somewhere', () => {
    const leading = finish.slice(0, 3).map(({ worth }) => worth)
    expect(leading).toEqual([...leading].sort((a, b) => b - a))
    expect(new Set(finish.map(({ ballIndex }) => ballIndex))).toEqual(new Set(setup.bag.keys()))
    expect(finish.length).toBeLessThanOrEqual(8 + setup.bag.length)
  })

  it('does not depend on the order its lines come in', () => {
    expect(race(bench, imagine, [...entrants].reverse(), rounds)).toEqual(finish)
  })

  it('counts every lane of a line alike', () => {
    // worked backward by hand: after a long first round or a short one, the same second round is left over
    const worthAfter = (...run: RaceRound[]): number => race(bench, imagine, entrants.slice(0, 1), run)[0]!.worth
    const second = { lines: 1, lanes: 6 }
    const leftOver = [4, 16].map((lanes) => {
      const first = { lines: 1, lanes }
      return (worthAfter(first, second) * (lanes + 6) - worthAfter(first) * lanes) / 6
    })
    expect(leftOver[0]).toBeCloseTo(leftOver[1]!, 9)
  })
})
