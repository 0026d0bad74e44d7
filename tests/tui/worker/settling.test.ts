import { expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { accountOf } from '../../../src/sim/analysis/debrief/account.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { answer, type Question } from '../../../src/tui/worker/thoughts.js'

/** Everything an answer says on its way, null for breath, and last the answer. */
function heard(block: BlockState, question: Question): unknown[] {
  const steps = answer(block, question)
  const all: unknown[] = []
  for (;;) {
    const { done, value } = steps.next()
    all.push(value)
    if (done) return all
  }
}

it('settles throws while play goes on, so that the account has nothing left to work out and is the same', async () => {
  const { setup } = await loadScenario('short-thirty-five')
  const bag = setup.bag.slice(0, 2)
  let block = beginBlock({ ...setup, bag, practiceThrows: 0 }, 'settled')
  const grades: (ReturnType<typeof heard>[number] | null)[] = []
  for (let thrown = 0; thrown < 3; thrown++) {
    const decision = playerView(block)!.suggestion
    grades.push(heard(block, { kind: 'grade', decision }).at(-1))
    block = advance(block, decision)
    const settled = heard(block, { kind: 'settle', grades: grades as never })
    expect(settled.length).toBeGreaterThan(3)
    expect(settled.every((said) => said === null)).toBe(true)
  }
  const account = heard(block, { kind: 'account', grades: grades as never })
  expect(account).toHaveLength(1)
  expect(account[0]).toEqual(accountOf(block, { grades: grades as never }))
  // Another block is not taken for it.
  const other = advance(beginBlock({ ...setup, bag, practiceThrows: 0 }, 'other'), block.throws[0]!.decision)
  expect(heard(other, { kind: 'settle', grades: [] }).length).toBeGreaterThan(3)
})
