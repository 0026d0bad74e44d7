import { describe, expect, it } from 'vitest'
import { leaveName } from '../../../../src/sim/world/pins/leaves.js'
import { manyThrows, rackNumber, strikeShare, tallied, throwOf } from './rack-numbers.js'
import { throwAtRapierRack } from './rapier-rack.js'

/**
 * The rack against a general rigid-body library (rapier3d, its deterministic build) with its own solver and its own
 * skin of the pin. The judge throws fewer racks because it takes some twenty times as long.
 */
const JUDGE_THROWS = 60
const OWN_THROWS = 300
/** Beside sampling, as the two engines step and shape pins differently. */
const ALLOWED = 0.08

const GRID = [
  [18.5, 2],
  [17.5, 2],
  [16.5, 2],
  [18.5, 5],
  [17.5, 5],
  [16.5, 5],
] as const

describe('judged by a general rigid-body library', () => {
  for (const [board, angle] of GRID) {
    it(`strikes as often from board ${board} at ${angle} degrees`, () => {
      const rackThrow = throwOf(board, angle)
      const study = `judge ${board} ${angle}`
      const judged = Array.from({ length: JUDGE_THROWS }, (_, k) => throwAtRapierRack(rackThrow, rackNumber(study, k)))
      const own = manyThrows(rackThrow, study, OWN_THROWS)
      const judgedShare = judged.filter((standing) => standing === 0).length / JUDGE_THROWS
      const ownShare = strikeShare(own)
      // Two standard errors of the difference of two binomial shares.
      const pooled = (judgedShare * JUDGE_THROWS + ownShare * OWN_THROWS) / (JUDGE_THROWS + OWN_THROWS)
      const sampling = 2 * Math.sqrt(pooled * (1 - pooled) * (1 / JUDGE_THROWS + 1 / OWN_THROWS))
      const commonest = (leaves: readonly number[]): string =>
        tallied(leaves.filter((standing) => standing !== 0))
          .slice(0, 3)
          .map(([mask, share]) => `${leaveName(mask)} ${(100 * share).toFixed(0)} %`)
          .join(', ')
      console.log(
        `${board} at ${angle}: strikes ${(100 * ownShare).toFixed(0)} %, judge ${(100 * judgedShare).toFixed(0)} %;`,
        `leaves ${commonest(own.map(({ standing }) => standing))}; judge ${commonest(judged)}`,
      )
      expect(Math.abs(judgedShare - ownShare)).toBeLessThan(ALLOWED + sampling)
    })
  }

  it("leaves the judge's commonest pin among its own three commonest, light and high", () => {
    // Known gap: high at 18.5 the judge leaves the 4 more often than the 7, here the two come about equally.
    for (const [board, angle] of [
      [16.5, 5],
      [18.5, 5],
    ] as const) {
      const rackThrow = throwOf(board, angle)
      const judged = Array.from({ length: 30 }, (_, k) => throwAtRapierRack(rackThrow, rackNumber('order', k)))
      const own = manyThrows(rackThrow, 'order', 200).map(({ standing }) => standing)
      const felled = (leaves: readonly number[]): (readonly [number, number])[] =>
        tallied(leaves.filter((standing) => standing !== 0))
      const first = felled(judged)[0]![0]
      const place = felled(own).findIndex(([mask]) => mask === first)
      console.log(`board ${board}: judge leaves ${leaveName(first)} most; here it is number ${place + 1}`)
      expect(place).toBeGreaterThanOrEqual(0)
      expect(place).toBeLessThan(3)
    }
  })
})
