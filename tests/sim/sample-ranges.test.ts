import { describe, expect, it } from 'vitest'
import { SAMPLE_RANGES, type SampleUse, samplesFrom } from '../../src/sim/sample-ranges.js'

/** Uses that are never asked at one throw: a full rack's readings, and the choice of a spare. */
const NEVER_TOGETHER: readonly string[] = ['readings spareRacksToChoose']

describe('the stretches of the delivery sequence', () => {
  const uses = Object.keys(SAMPLE_RANGES) as SampleUse[]

  it('do not overlap', () => {
    const overlapping = uses.flatMap((one, index) =>
      uses.slice(index + 1).flatMap((other) => {
        const [a, b] = [SAMPLE_RANGES[one], SAMPLE_RANGES[other]]
        return a.start < b.start + b.room && b.start < a.start + a.room ? [`${one} ${other}`] : []
      }),
    )
    expect(overlapping).toEqual(NEVER_TOGETHER)
  })

  it('are not run over', () => {
    const { start, room } = SAMPLE_RANGES.ledger
    expect(samplesFrom('ledger', room)).toBe(start)
    expect(() => samplesFrom('ledger', room + 1)).toThrow(RangeError)
  })
})
