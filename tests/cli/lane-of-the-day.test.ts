import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it } from 'vitest'
import { laneOfToday } from '../../src/scenarios/store/today.js'
import { runCommand } from './in-process.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-today-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

it('plays the lane of the day line by line, and says where lane and seed come from', async () => {
  const script = join(folder, 'nothing.txt')
  writeFileSync(script, 'quit\n')
  const { out, exitCode } = await runCommand(['play', '--today', '--script', script, '--data', folder])
  const { date, seed, title } = laneOfToday()
  expect(exitCode).toBe(0)
  expect(out).toContain(`Lane of the day ${date}.`)
  expect(out).toContain('the date and the version of the lane rules alone')
  expect(out).toContain(seed)
  expect(out).toContain(title)
})
