import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { stream } from '../../../../src/sim/random.js'
import { feetToMetres, metresToFeet } from '../../../../src/sim/units.js'
import {
  drawLaidOff,
  LENGTH_OFF_FEET,
  layAsOff,
  RATIO_OFF_SHARE,
  VOLUME_OFF_SHARE,
} from '../../../../src/sim/world/lane/as-laid.js'
import { layPattern, measurePattern } from '../../../../src/sim/world/lane/pattern.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from './patterns-for-tests.js'

const PATTERNS = [houseForty, flatForty, flatFortyFive, shortThirtyFive]

// By construction: what is measured is what the machine was off by.
describe('oil as it is laid', () => {
  it('is off its sheet by just what the machine was off by', () => {
    const off = fc.record({
      pattern: fc.constantFrom(...PATTERNS),
      steps: fc.integer({ min: -2, max: 2 }),
      volume: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
      ratio: fc.double({ min: 0.9, max: 1.1, noNaN: true }),
    })
    fc.assert(
      fc.property(off, ({ pattern, steps, volume, ratio }) => {
        const sheet = measurePattern(layPattern(pattern))
        const lengthMetres = feetToMetres(steps / 2)
        const laid = measurePattern(layAsOff(pattern, { lengthMetres, volume, ratio }))
        expect(metresToFeet(laid.lengthMetres - sheet.lengthMetres)).toBeCloseTo(steps / 2, 6)
        expect(laid.volumeMicrolitres / sheet.volumeMicrolitres).toBeCloseTo(volume, 9)
        // the sheet's own readings are taken where its oil ends, a little elsewhere
        expect(Math.abs(laid.ratio / sheet.ratio / ratio - 1)).toBeLessThan(0.06)
      }),
      { numRuns: 40 },
    )
  })

  it('is drawn evenly within a foot and a tenth either way', () => {
    const drawn = Array.from({ length: 2000 }, (_, frame) =>
      drawLaidOff(stream({ seed: 'laid', game: 0, frame, ball: 0, purpose: 'study' })),
    )
    const feet = drawn.map(({ lengthMetres }) => metresToFeet(lengthMetres))
    for (const one of [-1, -0.5, 0, 0.5, 1])
      expect(feet.filter((each) => Math.abs(each - one) < 1e-9).length / 2000).toBeCloseTo(0.2, 1)
    expect(Math.max(...feet.map(Math.abs))).toBeCloseTo(LENGTH_OFF_FEET, 9)
    for (const [share, values] of [
      [VOLUME_OFF_SHARE, drawn.map(({ volume }) => volume - 1)],
      [RATIO_OFF_SHARE, drawn.map(({ ratio }) => ratio - 1)],
    ] as const) {
      expect(Math.max(...values.map(Math.abs))).toBeLessThanOrEqual(share)
      // an even number between -a and a has standard deviation a/√3
      const spread = Math.sqrt(values.reduce((sum, one) => sum + one * one, 0) / values.length)
      expect(spread).toBeCloseTo(share / Math.sqrt(3), 2)
    }
  })
})
