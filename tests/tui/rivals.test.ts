import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it, vi } from 'vitest'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { readRecord, recordText } from '../../src/scenarios/store/record.js'
import { realServices } from '../../src/tui/app/services-real.js'
import { startMatch } from '../../src/tui/state/rival.js'
import type { TrainerServices } from '../../src/tui/state/services.js'
import { startingState, stateAgainst } from '../../src/tui/state/starting-state.js'
import { runCommand } from '../cli/in-process.js'
import { madeUpThinker } from './fixtures.js'
import { mountTrainer } from './mounted.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-rivals-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const SEED = 'by-turns 7'
const FRAMES = 3
const file = join(folder, 'short.json')
writeFileSync(file, JSON.stringify({ ...builtInScenario('house-forty'), games: 1, practiceThrows: 0 }))

const environmentOf = (name: string) => ({ DRYBOARD_DATA: join(folder, name), DRYBOARD_CONFIG: join(folder, 'config') })
type Environment = ReturnType<typeof environmentOf>
const recordsIn = (environment: Environment): string[] => {
  const records = join(environment.DRYBOARD_DATA, 'records')
  return readdirSync(records).map((name) => join(records, name))
}

/** Keys before the Enter that throws, and what says the same in plain play. */
const MOVES = {
  Ansa: { keys: '[', line: '2 and 1 left' },
  Brono: { keys: ']', line: '2 and 1 right' },
} as const
type Name = keyof typeof MOVES

/** Real files and a real lane, made-up grades; looks at the clock come a second apart, so that no key counts as held. */
function servicesFor(environment: Environment, onKept: () => void): TrainerServices {
  let seconds = 0
  const real = realServices(environment, madeUpThinker, { player: 'Ansa', seed: SEED })
  return {
    ...real,
    now: () => 1000 * ++seconds,
    async keepThrow(...parts) {
      await real.keepThrow(...parts)
      onKept()
    },
  }
}

/** A record's text without what no two blocks have alike: number, times, whose it is and how often it was opened. */
async function alike(path: string): Promise<string> {
  const record = await readRecord(path)
  const { player: _player, ...rest } = record
  return recordText({
    ...rest,
    block: null,
    origin: { ...record.origin, begun: null, ended: null, openedBefore: null },
  })
}

/** The record of the same lines in plain play. */
async function plainRecord(name: string, lines: readonly string[]): Promise<string> {
  const environment = environmentOf(name)
  const script = join(folder, `${name}.txt`)
  writeFileSync(script, `${lines.join('\n')}\n`)
  const argv = ['play', file, '--seed', SEED, '--script', script, '--no-grade', '--data', environment.DRYBOARD_DATA]
  expect((await runCommand(argv, { environment })).exitCode).toBe(0)
  return recordsIn(environment)[0]!
}

it('keeps of two players by turns the records that each would have made alone', async () => {
  const environment = environmentOf('turns')
  let kept = 0
  const services = servicesFor(environment, () => kept++)
  const home = await startingState(undefined, services, [])
  const scenario = await services.loadScenario(file)
  const initial = startMatch(home, { scenario, seed: SEED, mode: 'block' }, ['Ansa', 'Brono'], services)
  const { type, until, press, close } = mountTrainer({ services, initial, noMotion: true })
  const lines: Record<Name, string[]> = { Ansa: [], Brono: [] }
  const turns: Name[] = []
  try {
    for (let turn = 0; turn < 2 * FRAMES; turn++) {
      const name = turn % 2 === 0 ? 'Ansa' : 'Brono'
      turns.push(name)
      let shown = await until(new RegExp(`${name} \\d+ so far[\\s\\S]*Enter throw`))
      while (/Enter throw/.test(shown)) {
        const thrown = kept
        const isSpare = /Spare: \d/.test(shown)
        if (!isSpare) type(MOVES[name].keys)
        lines[name].push(isSpare ? '' : MOVES[name].line)
        type('\r')
        await vi.waitFor(() => expect(kept).toBe(thrown + 1), { timeout: 8000, interval: 5 })
        shown = await press(' ', /Enter throw|turn is over/)
      }
      expect(shown).toContain(`${name}'s turn is over. Enter: ${name === 'Ansa' ? 'Brono' : 'Ansa'} bowls.`)
      type('\r')
    }
    await until(/Ansa \d+ so far[\s\S]*Enter throw/)
    await press('e', 'show the oil?')
    await press('\r', /Your account first|Findings/)
    await vi.waitFor(() => expect(recordsIn(environment)).toHaveLength(2), { timeout: 8000 })
    await press('\u001B', 'Findings')
    await press('g', /Your account first|Findings/)
  } finally {
    close()
    await services.leave()
  }
  expect(readdirSync(join(environment.DRYBOARD_DATA, 'unfinished'))).toEqual([])
  const byPlayer = new Map<string | undefined, string>()
  for (const path of recordsIn(environment)) byPlayer.set((await readRecord(path)).player, path)
  expect([...byPlayer.keys()].sort()).toEqual(['Ansa', 'Brono'])
  for (const name of ['Ansa', 'Brono'] as const) {
    expect(lines[name].length).toBeGreaterThanOrEqual(FRAMES)
    expect(await alike(byPlayer.get(name)!)).toBe(await alike(await plainRecord(name, lines[name])))
  }
})

it('keeps of a block against a record what it would have been without, and shows each throw after its own only', async () => {
  const before = await plainRecord('before', ['', '', '', '', '', ''])
  const theirs = await readRecord(before)
  const environment = environmentOf('against')
  let kept = 0
  const services = servicesFor(environment, () => kept++)
  const { type, until, press, close } = mountTrainer({
    services,
    initial: await stateAgainst(before, services),
    noMotion: true,
  })
  const lines: string[] = []
  try {
    let shown = await until(/each of its throws shows once you have made yours/)
    for (let ball = 0; ball < 4; ball++) {
      const isSpare = /Spare: \d/.test(shown)
      if (!isSpare) type(MOVES.Ansa.keys)
      lines.push(isSpare ? '' : MOVES.Ansa.line)
      type('\r')
      await vi.waitFor(() => expect(kept).toBe(lines.length), { timeout: 8000, interval: 5 })
      shown = await press(' ', /Enter throw/)
      expect(shown).toMatch(/Theirs \d+[bc]?: /)
    }
    await press('e', 'show the oil?')
    await press('\r', /Your account first|Findings/)
    await vi.waitFor(() => expect(recordsIn(environment)).toHaveLength(1), { timeout: 8000 })
  } finally {
    close()
    await services.leave()
  }
  const [path] = recordsIn(environment)
  const record = await readRecord(path!)
  expect(record.seed).toBe(theirs.seed)
  expect(record.scenarioHash).toBe(theirs.scenarioHash)
  expect(await alike(path!)).toBe(await alike(await plainRecord('alone', lines)))

  // Line by line it is the same again: their throws stand behind the player's own.
  const plain = environmentOf('against plain')
  const script = join(folder, 'alone.txt')
  const argv = ['play', '--against', before, '--script', script, '--no-grade', '--data', plain.DRYBOARD_DATA]
  const { out, exitCode } = await runCommand(argv, { environment: plain })
  expect(exitCode).toBe(0)
  expect(await alike(recordsIn(plain)[0]!)).toBe(await alike(path!))
  expect(out.indexOf('Theirs 1:')).toBeGreaterThan(out.indexOf('You throw:'))
})
