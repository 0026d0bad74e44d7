import { describe, expect, it } from 'vitest'
import { hasWorker, inThreads } from '../../../src/scenarios/threads/in-threads.js'

/** A thread that doubles numbers, the larger ones sooner, and breaks at those below zero. */
const DOUBLER = new URL(
  `data:text/javascript,${encodeURIComponent(`
    import { parentPort, workerData } from 'node:worker_threads'
    parentPort.on('message', ({ number, task }) => {
      if (task < 0) return parentPort.postMessage({ number, fault: 'below zero' })
      parentPort.postMessage({ number, share: 0.5 })
      setTimeout(() => parentPort.postMessage({ number, result: workerData * task }), 40 / task)
    })
  `)}`,
)

describe('work spread over threads', () => {
  it('comes back in the order of the tasks, and is told of as it goes', async () => {
    const told: number[] = []
    const results = await inThreads<number, number>(DOUBLER, [1, 9, 4, 8, 2], {
      threads: 2,
      data: 2,
      reached: (done) => told.push(done),
    })
    expect(results).toEqual([2, 18, 8, 16, 4])
    expect(told).toEqual([...told].sort((a, b) => a - b))
    expect(told.at(-1)).toBe(5)
    expect(told).toHaveLength(10)
  })

  it('needs no thread for no task, and fails where a thread does', async () => {
    const reached = () => {}
    expect(await inThreads(DOUBLER, [], { threads: 2, reached })).toEqual([])
    await expect(inThreads(DOUBLER, [3, -1], { threads: 2, data: 2, reached })).rejects.toThrow('below zero')
  })

  it('knows where no worker lies beside the program', () => {
    expect(hasWorker(new URL('./no-such-worker.js', import.meta.url))).toBe(false)
  })
})
