import { execFile } from 'node:child_process'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import { promisify } from 'node:util'
import { describe, expect, it } from 'vitest'
import type { idleOnEveryScreen } from './every-screen.js'

const program = fileURLToPath(new URL('./idle-program.ts', import.meta.url))
const loader = createRequire(import.meta.url).resolve('tsx')

// In a process of its own: a test runner has timers that nothing would tell from ours.
describe('every screen left alone', () => {
  it('runs no timer and draws nothing', async () => {
    const { stdout } = await promisify(execFile)(process.execPath, ['--import', loader, program])
    const { idle, timersWhileRolling } = JSON.parse(stdout) as Awaited<ReturnType<typeof idleOnEveryScreen>>
    expect(timersWhileRolling).toBeGreaterThan(0)
    expect(idle.length).toBeGreaterThan(20)
    expect(idle.filter(({ timers, pictures }) => timers > 0 || pictures > 0)).toEqual([])
  }, 120_000)
})
