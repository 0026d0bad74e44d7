import { describe, expect, it } from 'vitest'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { lostOnTrueOil } from '../../../../src/sim/analysis/debrief/ledger/throw-worths.js'
import { blockBy, type Comparison, sameLuckScores } from '../../../../src/sim/analysis/explore/same-luck.js'
import { choose } from '../../../../src/sim/analysis/policies/policies.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import type { BlockState } from '../../../../src/sim/world/block/types.js'

const STRIKE = [10]
const NINE = [9, 0]
const NINE_SPARE = [9, 1]
const game = (frame: readonly number[], last: readonly number[]) => [...Array.from({ length: 9 }, () => frame), last]

describe('what others score on the same luck', () => {
  it('is what they score who meet it: the same deliveries, pins and oil', async () => {
    const { setup } = await loadScenario('house-forty')
    // One ball keeps the search for the best with the oil seen short.
    const begun = beginBlock({ ...setup, bag: setup.bag.slice(1, 2), practiceThrows: 0 }, 'same luck')
    let state: BlockState = begun
    let lostPins = 0
    while (state.spot) {
      const decision = choose('thumb', state)
      lostPins += lostOnTrueOil(state, decision)
      state = advance(state, decision)
    }
    const shares: number[] = []
    const steps = blockBy('thumb', begun)
    let step = steps.next()
    for (; !step.done; step = steps.next()) shares.push(step.value.share)
    expect(step.value.games).toEqual(state.balls)
    expect(step.value.lostPins).toBeCloseTo(lostPins, 9)
    expect(shares).toHaveLength(state.throws.length)
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
    expect(shares.at(-1)).toBeCloseTo(1 / 3, 12)
  })

  it('is scored by the rules, over as many frames as the player has finished', async () => {
    const { setup } = await loadScenario('house-forty')
    const begun = beginBlock({ ...setup, practiceThrows: 0, games: 1 }, 'scores')
    // A game of strikes is 300, one of nines and misses 90, one of nines and spares 190: worked examples of the rule books, from memory.
    const comparison: Comparison = {
      thumb: { games: [game(NINE, NINE)], lostPins: 30 },
      fair: { games: [game(NINE_SPARE, [9, 1, 9])], lostPins: 10 },
      known: { games: [game(STRIKE, [10, 10, 10])], lostPins: 0 },
    }
    const whole = sameLuckScores({ ...begun, balls: [game(STRIKE, [10, 10, 10])] }, comparison)
    expect(whole).toEqual({ you: 300, others: { thumb: 90, fair: 190, known: 300 }, frames: 10, isWhole: true })
    const part = sameLuckScores({ ...begun, balls: [[NINE, NINE, [9]]] }, comparison)
    // Two frames are finished; pins felled later than that count for nobody.
    expect(part).toMatchObject({ frames: 2, isWhole: false, others: { thumb: 18 } })
    expect(part!.others.known).toBe(30)
    expect(sameLuckScores({ ...begun, balls: [[[9]]] }, comparison)).toBeNull()
  })
})
