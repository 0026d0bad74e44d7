import { describe, expect, it } from 'vitest'
import { aheadOf, lessonBetween, mostTeaching } from '../../../../src/sim/analysis/grade/lookahead.js'
import type { Lesson, Probe } from '../../../../src/sim/analysis/grade/probing.js'

const lesson = (pins: number): Lesson => ({
  pins,
  onEachLane: Float64Array.of(pins - 0.1, pins + 0.1),
  shares: Float64Array.of(0.5, 0.5),
})
const probe = (ballIndex: number, worth: number, pins: number): Probe => ({
  ballIndex,
  aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 },
  worth,
  lesson: lesson(pins),
})

/** Two kinds of oil, equally likely: a safe line that tells nothing, and one half a pin worse that tells 0.3 pin a throw. */
const safe = probe(0, 1, 0)
const telling = probe(1, 0.5, 0.3)
const probing = {
  probes: [safe, telling],
  lessonOf: ({ ballIndex }: { ballIndex: number }): Lesson => (ballIndex === 0 ? safe.lesson : telling.lesson),
}

// worked by hand: nine throws to come make the lesson worth 2.7 for 0.5 now; one throw only 0.3
describe('looking ahead', () => {
  it('throws the telling line while its lesson lasts, the safe one after', () => {
    expect(aheadOf(probing, 9)).toBe(telling)
    expect(aheadOf(probing, 2)).toBe(telling)
    expect(aheadOf(probing, 1)).toBe(safe)
    expect(aheadOf(probing, 0)).toBe(safe)
    expect(mostTeaching(probing)).toBe(telling)
  })

  it('charges not asking no more than asking a throw later', () => {
    const lost = (throwsToCome: number): number =>
      lessonBetween({ probing, best: telling, chosen: safe, throwsToCome, lostByBestNowPins: 0.5 }).pins
    // half a pin now was not paid, but is still to be paid; the lesson is missing on one throw: 0.5 + 0.3
    expect(lost(9)).toBeCloseTo(0.8, 12)
    // never asking costs two lessons, which is less
    expect(lost(2)).toBeCloseTo(0.6, 12)
    expect(lost(0)).toBe(0)
  })

  it('charges nothing for the same lesson', () => {
    const same = lessonBetween({ probing, best: telling, chosen: telling, throwsToCome: 9, lostByBestNowPins: 0.5 })
    expect(same).toEqual({ pins: 0, standardErrorPins: 0 })
  })
})
