import { describe, expect, it } from 'vitest'
import { whileWaiting } from '../../../src/scenarios/plain/while-waiting.js'

async function* typed(lines: readonly string[], pause: () => Promise<unknown>): AsyncIterable<string> {
  for (const line of lines) {
    await pause()
    yield line
  }
}

async function all(lines: AsyncIterable<string>): Promise<string[]> {
  const heard: string[] = []
  for await (const line of lines) heard.push(line)
  return heard
}

describe('lines with work behind them', () => {
  it('are the same lines, and the work is done while they are waited for', async () => {
    let left = 5
    const step = (): boolean => --left > 0
    const slowly = () => new Promise((turn) => setTimeout(turn, 30))
    expect(await all(whileWaiting(typed(['a', 'b'], slowly), step))).toEqual(['a', 'b'])
    expect(left).toBeLessThanOrEqual(0)
  })

  it('come at once where they are there, however much there is to do', async () => {
    let steps = 0
    const step = (): boolean => ++steps < 1e9
    const at = (): Promise<unknown> => Promise.resolve()
    expect(await all(whileWaiting(typed(['a', 'b', 'c'], at), step))).toEqual(['a', 'b', 'c'])
    expect(steps).toBeLessThan(10)
  })

  it('let their source go when they are left early', async () => {
    let isOpen = true
    async function* source(): AsyncIterable<string> {
      try {
        yield 'a'
        yield 'b'
      } finally {
        isOpen = false
      }
    }
    for await (const line of whileWaiting(source(), () => false)) {
      expect(line).toBe('a')
      break
    }
    expect(isOpen).toBe(false)
  })
})
