import { EventEmitter } from 'node:events'
import { Worker } from 'node:worker_threads'
import { afterEach, beforeAll, describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import type { ToWorker } from '../../../src/tui/worker/messages.js'
import { retelling } from '../../../src/tui/worker/retelling.js'
import { inlineThinker, type Thinker } from '../../../src/tui/worker/thinker.js'
import { workerThinker } from '../../../src/tui/worker/worker-thinker.js'

let states: BlockState[]
beforeAll(async () => {
  const { setup } = await loadScenario('house-forty')
  states = [beginBlock({ ...setup, practiceThrows: 0 }, 'thinker')]
  for (let i = 0; i < 3; i++) states.push(advance(states.at(-1)!, playerView(states.at(-1)!)!.suggestion))
})

const told = (block: BlockState, setupNumber = 1) => ({
  setupNumber,
  setup: structuredClone(block.setup),
  seed: block.seed,
  decisions: structuredClone(block.throws.map(({ decision }) => decision)),
})

describe('a block told to another thread', () => {
  it('comes out the same to the last digit, forwards, back and along another road', () => {
    const retell = retelling()
    for (const block of [states[0]!, states[3]!, states[1]!, states[2]!]) {
      expect(JSON.stringify(retell(told(block)))).toBe(JSON.stringify(block))
    }
    const { suggestion } = playerView(states[1]!)!
    const other = { ...suggestion, aim: { ...suggestion.aim, feetBoard: suggestion.aim.feetBoard + 1 } }
    const elsewhere = advance(states[1]!, other)
    expect(JSON.stringify(retell(told(elsewhere)))).toBe(JSON.stringify(elsewhere))
  })

  it('is held by nobody once play has gone on, whatever was worked out for it', () => {
    const retell = retelling()
    const once = retell(told(states[1]!))
    retell(told(states[2]!))
    const again = retell(told(states[1]!))
    expect(again).not.toBe(once)
    expect(again).toEqual(once)
  })

  it('throws only what is new', () => {
    const retell = retelling()
    const once = retell(told(states[2]!))
    expect(retell(told(states[3]!)).throws[0]).toBe(once.throws[0])
  })
})

/** A worker that says only what a test lets it say. */
function silentWorker() {
  const said: ToWorker[] = []
  const worker = Object.assign(new EventEmitter(), {
    unref() {},
    terminate: async () => 0,
    postMessage: (message: ToWorker) => void said.push(message),
  })
  return { worker, said, thinker: workerThinker(worker as unknown as Worker) }
}

describe('a thinker in a worker', () => {
  it('gives each answer to whom it belongs, whatever the order, and none to one who gave up', async () => {
    const { worker, said, thinker } = silentWorker()
    const asked = [0, 1, 2].map((index) => thinker.ask(states[index]!, { kind: 'prepare' }))
    asked[1]!.giveUp()
    const answers: number[] = []
    asked.forEach(({ answer }, index) => void answer.then(() => answers.push(index)))
    for (const id of [3, 2, 1]) worker.emit('message', { kind: 'answer', id, answer: null })
    await new Promise((turn) => setImmediate(turn))
    expect(answers).toEqual([2, 0])
    expect(said.at(-1)).toEqual({ kind: 'give-up', id: 2 })
  })

  it('passes a fault on as one', async () => {
    const { worker, thinker } = silentWorker()
    const { answer } = thinker.ask(states[0]!, { kind: 'prepare' })
    worker.emit('message', { kind: 'fault', id: 1, sentence: 'no oil' })
    await expect(answer).rejects.toThrow('no oil')
  })

  it('thinks on in the screen when the worker breaks', async () => {
    const { worker, thinker } = silentWorker()
    const decision = states[0]!.throws[0]?.decision ?? playerView(states[0]!)!.suggestion
    const { answer } = thinker.ask(states[0]!, { kind: 'what-if', decision })
    expect(thinker.isApart).toBe(true)
    worker.emit('error', new Error('out of memory'))
    expect((await answer).decision).toEqual(decision)
    expect(thinker.isApart).toBe(false)
  })
})

describe('thinking apart and thinking here', () => {
  const open: Thinker[] = []
  afterEach(() => {
    for (const thinker of open.splice(0)) thinker.close()
  })

  it('come to the same answer', async () => {
    const worker = new Worker(new URL('../../../src/tui/worker/worker.ts', import.meta.url), {
      execArgv: ['--import', 'tsx'],
    })
    const apart = workerThinker(worker)
    open.push(apart)
    const question = { kind: 'what-if', decision: playerView(states[2]!)!.suggestion } as const
    const [there, here] = await Promise.all([
      apart.ask(states[2]!, question).answer,
      inlineThinker().ask(states[2]!, question).answer,
    ])
    expect(there).toEqual(here)
  }, 30_000)
})
