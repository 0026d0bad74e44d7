import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Worker } from 'node:worker_threads'
import { build, type Options } from 'tsup'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import type { Thinker } from '../../../src/tui/worker/thinker.js'
import { answer, type Question } from '../../../src/tui/worker/thoughts.js'
import { workerThinker } from '../../../src/tui/worker/worker-thinker.js'
import config from '../../../tsup.config.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-worker-'))
let thinker: Thinker
let block: BlockState

/** The worker is bundled as the program's is, into a folder of the test's own, so that it is the source under test. */
beforeAll(async () => {
  await build({
    ...(config as Options),
    config: false,
    outDir: folder,
    entry: { thinker: 'src/tui/worker/worker.ts' },
  })
  thinker = workerThinker(new Worker(join(folder, 'thinker.js')))
  const { setup } = await loadScenario('house-forty')
  const begun = beginBlock({ ...setup, practiceThrows: 0 }, 'built')
  block = advance(begun, playerView(begun)!.suggestion)
}, 60_000)
afterAll(() => {
  thinker.close()
  rmSync(folder, { recursive: true, force: true })
})

/** The same question answered in this thread from source. */
function answerHere(question: Question): unknown {
  const { done, value } = answer(block, question).next()
  if (!done) throw new Error('A grade comes in one step.')
  return value
}

describe('the worker as it is built', () => {
  it('comes to the same grade as the source, to the last bit', async () => {
    const { suggestion } = playerView(block)!
    const decision = { ...suggestion, aim: { ...suggestion.aim, targetBoard: suggestion.aim.targetBoard + 1 } }
    const question = { kind: 'grade', decision } as const
    const there = await thinker.ask(block, question).answer
    // Had the worker broken, the answer would have been worked out here.
    expect(thinker.isApart).toBe(true)
    expect(there).not.toBeNull()
    // toStrictEqual compares numbers as Object.is does: bit for bit.
    expect(there).toStrictEqual(answerHere(question))
  }, 60_000)

  it('comes to the same figures of what a choice leads to', async () => {
    const question = { kind: 'what-if', decision: playerView(block)!.suggestion } as const
    expect(await thinker.ask(block, question).answer).toStrictEqual(answerHere(question))
    expect(thinker.isApart).toBe(true)
  }, 60_000)
})
