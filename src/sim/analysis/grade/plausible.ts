import { exponential } from '../../exact-math.js'
import type { BallSweep } from './line-sweep.js'

/** Lines that lose more than this against the best of their ball are nobody's choice. */
const WINDOW_PINS = 3

/**
 * Share of the choices somebody might sensibly make, 0 to 1, that lose as much as `lostPins` or more. Choices count the
 * more the better they are (by the exponential of their worth in pins), since most of all lines are silly.
 */
export function percentileAmongPlausible(sweeps: readonly BallSweep[], lostPins: number): number {
  const tops = sweeps.map(({ worth }) => worth.reduce((most, one) => Math.max(most, one), -Infinity))
  const top = tops.reduce((most, one) => Math.max(most, one), -Infinity)
  let all = 0
  let behind = 0
  sweeps.forEach(({ worth }, ball) => {
    for (const one of worth) {
      if (one < tops[ball] - WINDOW_PINS) continue
      const share = exponential(one - top)
      all += share
      if (top - one >= lostPins) behind += share
    }
  })
  return behind / all
}
