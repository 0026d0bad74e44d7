import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CHOICE_PARTS, partShares } from '../../../../../src/sim/analysis/debrief/reading/part-shares.js'
import type { Decision } from '../../../../../src/sim/world/block/types.js'

const from: Decision = { ballId: 'old', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' }
const to: Decision = { ballId: 'new', aim: { feetBoard: 26, targetBoard: 13, speedStep: 1 }, release: 'strike' }

/** Which parts of a mixed choice were put right. */
const righted = ({ ballId, aim }: Decision): boolean[] => [
  ballId === 'new',
  aim.targetBoard === 13,
  aim.feetBoard === 26,
  aim.speedStep === 1,
]

describe('shares of the parts of a choice', () => {
  // The glove game of textbooks on the Shapley value (Shapley 1953): one left glove and two right ones, a pair is worth 1;
  // the shares are 2/3, 1/6, 1/6. The fourth part is a player who adds nothing.
  it('are those of the glove game', () => {
    const shares = partShares(from, to, (mixed) => {
      const [ball, target, feet] = righted(mixed)
      return ball && (target || feet) ? 1 : 0
    })
    expect(shares.ball).toBeCloseTo(2 / 3, 12)
    expect(shares.target).toBeCloseTo(1 / 6, 12)
    expect(shares.feet).toBeCloseTo(1 / 6, 12)
    expect(shares.speed).toBe(0)
  })

  // Axioms of the Shapley value: efficiency, and additive games give each part its own worth.
  it('sum to the whole gain for any worths of the sixteen mixtures', () => {
    const sixteen = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 16, maxLength: 16 })
    fc.assert(
      fc.property(sixteen, (worth) => {
        const at = (mixed: Decision): number =>
          worth[righted(mixed).reduce((place, right, k) => place + (right ? 1 << k : 0), 0)]
        const shares = partShares(from, to, at)
        const sum = CHOICE_PARTS.reduce((total, part) => total + shares[part], 0)
        expect(Math.abs(sum - (worth[15] - worth[0]))).toBeLessThan(1e-9)
      }),
    )
  })

  it('are the parts’ own worths when these add up', () => {
    const own = { ball: 1.5, target: -0.25, feet: 3, speed: 0.5 }
    const shares = partShares(from, to, (mixed) =>
      righted(mixed).reduce((sum, right, k) => sum + (right ? own[CHOICE_PARTS[k]] : 0), 0),
    )
    for (const part of CHOICE_PARTS) expect(shares[part]).toBeCloseTo(own[part], 12)
  })
})
