import { expect, it } from 'vitest'
import { killAt } from './kill-moments.js'

/** Results told and milliseconds after: from before the first throw on. Hundreds of others: `npm run study faults`. */
const MOMENTS = [
  [0, 700],
  [1, 0],
  [2, 1],
  [3, 23],
  [6, 0],
] as const

it.each(MOMENTS)(
  'after %d results and %d ms, killed outright: nothing told is lost, no file is broken, play goes on',
  async (throws, ms) => {
    const { told, kept, after, broken } = await killAt(throws, ms)
    expect(broken).toEqual([])
    // One throw may be on the disk whose result never reached the reader.
    expect(kept).toBeGreaterThanOrEqual(told)
    expect(kept).toBeLessThanOrEqual(told + 1)
    if (kept > 0) expect(after).toBeGreaterThanOrEqual(kept)
  },
)
