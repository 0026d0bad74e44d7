import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sharedOut } from '../../../../../src/sim/analysis/debrief/findings/shared-out.js'
import type { Claim } from '../../../../../src/sim/analysis/debrief/findings/tag.js'
import { CHOICE_PARTS, partShares } from '../../../../../src/sim/analysis/debrief/reading/part-shares.js'
import type { Decision } from '../../../../../src/sim/world/block/types.js'
import { firstBall, line } from '../readings-for-tests.js'

const from: Decision = { ballId: 'old', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' }
const to: Decision = { ballId: 'new', aim: { feetBoard: 26, targetBoard: 13, speedStep: 1 }, release: 'strike' }

/** Which parts of a mixed choice were put right. */
const righted = ({ ballId, aim }: Decision): boolean[] => [
  ballId === 'new',
  aim.feetBoard === 26,
  aim.targetBoard === 13,
  aim.speedStep === 1,
]

describe('shares of the parts of a choice', () => {
  // The glove game of textbooks on the Shapley value (Shapley 1953): one left glove and two right ones, a pair is worth 1;
  // the shares are 2/3, 1/6, 1/6. The fourth part is a player who adds nothing.
  it('are those of the glove game', () => {
    const shares = partShares(from, to, 1, (mixed) => {
      const [ball, slide, target] = righted(mixed)
      return ball && (slide || target) ? 0 : 1
    })
    expect(shares.ball).toBeCloseTo(2 / 3, 12)
    expect(shares.target).toBeCloseTo(1 / 6, 12)
    expect(shares.slide).toBeCloseTo(1 / 6, 12)
    expect(shares.speed).toBe(0)
  })

  // Axioms of the Shapley value: efficiency, and additive games give each part its own worth.
  it('sum to the whole charge for any prices of the mixtures, none below 0 and none larger than the whole', () => {
    const sixteen = fc.array(fc.double({ min: 0, max: 20, noNaN: true }), { minLength: 16, maxLength: 16 })
    fc.assert(
      fc.property(sixteen, fc.double({ min: 0.1, max: 20, noNaN: true }), (prices, charged) => {
        const at = (mixed: Decision): number =>
          prices[righted(mixed).reduce((place, right, k) => place + (right ? 1 << k : 0), 0)]
        const shares = partShares(from, to, charged, at)
        const sum = CHOICE_PARTS.reduce((total, part) => total + shares[part], 0)
        expect(Math.abs(sum - charged)).toBeLessThan(1e-9)
        for (const part of CHOICE_PARTS) {
          expect(shares[part]).toBeGreaterThanOrEqual(0)
          expect(shares[part]).toBeLessThanOrEqual(charged + 1e-9)
        }
      }),
    )
  })

  it('are the parts’ own savings when these add up', () => {
    const own = { ball: 1.5, slide: 0.25, target: 3, speed: 0.5 }
    const charged = 5.25
    const shares = partShares(from, to, charged, (mixed) =>
      righted(mixed).reduce((price, right, k) => price - (right ? own[CHOICE_PARTS[k]] : 0), charged),
    )
    for (const part of CHOICE_PARTS) expect(shares[part]).toBeCloseTo(own[part], 12)
  })

  it('give nothing to a part that is the same in both', () => {
    const shares = partShares(from, { ...to, ballId: 'old' }, 2, ({ aim: { feetBoard, targetBoard, speedStep } }) => {
      if (feetBoard !== 26) return 2
      return targetBoard === 13 && speedStep === 1 ? 0 : 0.4
    })
    expect(shares.ball).toBe(0)
    expect(shares.slide).toBeGreaterThan(1)
  })
})

const claim = (kind: Claim['kind'], explains: Claim['explains']): Claim => ({
  kind,
  reading: firstBall(1, line(24, 12), {}),
  group: kind,
  explains,
})

describe('shares of the kinds of finding', () => {
  const pinsOf = (priced: ReturnType<typeof sharedOut>, kind: Claim['kind']): number =>
    priced.find((one) => one.claim.kind === kind)?.pins ?? 0

  // worked by hand: two that explain the same part have half of it each (Shapley value of a game of two alike)
  it('divide a part evenly among the kinds that explain it', () => {
    const [early, small] = [claim('moved-too-early', { slide: 1, ball: 1 }), claim('move-too-small', { slide: 1 })]
    const priced = sharedOut({ slide: 2, ball: 1 }, [early, small], [])
    expect(pinsOf(priced, 'moved-too-early')).toBeCloseTo(2, 12)
    expect(pinsOf(priced, 'move-too-small')).toBeCloseTo(1, 12)
  })

  it('leave to what was wrong only what nothing gives a reason for', () => {
    const early = claim('moved-too-early', { slide: 0.75 })
    const wrong = claim('wrong-feet', { slide: 1, target: 1 })
    const priced = sharedOut({ slide: 2, target: 1 }, [early], [wrong])
    expect(pinsOf(priced, 'moved-too-early')).toBeCloseTo(1.5, 12)
    expect(pinsOf(priced, 'wrong-feet')).toBeCloseTo(1.5, 12)
  })
})
