import { beforeAll, describe, expect, it } from 'vitest'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { whatIf } from '../../../../src/sim/analysis/explore/what-if.js'
import { gradeKnown } from '../../../../src/sim/analysis/oracle/grade.js'
import { playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import type { BlockState } from '../../../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'

let first: BlockState
let spare: BlockState
beforeAll(async () => {
  const { setup } = await loadScenario('house-forty')
  first = beginBlock({ ...setup, practiceThrows: 0 }, 'what-if')
  spare = first
  for (let i = 0; i < 8 && spare.standing === FULL_RACK; i++) spare = advance(spare, playerView(spare)!.suggestion)
})

const total = (shares: readonly { readonly share: number }[]) => shares.reduce((sum, { share }) => sum + share, 0)

describe('what a choice comes to over many deliveries', () => {
  it('accounts for every ball, likeliest first', () => {
    const result = whatIf(first, playerView(first)!.suggestion)
    expect(total(result.contacts)).toBeCloseTo(1, 9)
    expect(total(result.leaves)).toBeCloseTo(1, 9)
    expect(result.leaves.map(({ share }) => share)).toEqual(
      result.leaves.map(({ share }) => share).toSorted((a, b) => b - a),
    )
    const [low, middle, high] = result.entryBoards!
    expect(low).toBeLessThan(middle)
    expect(middle).toBeLessThan(high)
  })

  // The grader's own sampling of the same choice on the same oil, by other nodes.
  it('is worth what the grader says it is, within sampling error', () => {
    const decision = playerView(first)!.suggestion
    const result = whatIf(first, decision)
    expect(Math.abs(result.worthPins - gradeKnown(first, decision).choiceWorth)).toBeLessThan(
      4 * result.standardErrorPins,
    )
  })

  it('throws at what stands, and at nothing else', () => {
    expect(spare.standing).not.toBe(FULL_RACK)
    const result = whatIf(spare, playerView(spare)!.suggestion)
    expect(total(result.leaves)).toBeCloseTo(1, 9)
    for (const { mask } of result.leaves) expect(mask & ~spare.standing).toBe(0)
    expect(result.leaves.some(({ mask }) => mask === 0)).toBe(true)
  })

  it('puts a ball aimed off the lane into the gutter', () => {
    const decision = playerView(first)!.suggestion
    const off = { ...decision, aim: { ...decision.aim, feetBoard: 30, targetBoard: 2 } }
    const [likeliest] = whatIf(first, off).contacts
    expect(likeliest?.contact).toBe('gutter')
  })
})
