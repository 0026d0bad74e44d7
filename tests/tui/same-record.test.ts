import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, it, vi } from 'vitest'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { readNotes } from '../../src/scenarios/store/block-notes.js'
import { readRecord, recordText } from '../../src/scenarios/store/record.js'
import { realServices } from '../../src/tui/app/services-real.js'
import type { TrainerServices } from '../../src/tui/state/services.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { runCommand } from '../cli/in-process.js'
import { madeUpThinker } from './fixtures.js'
import { mountTrainer } from './mounted.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-same-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const SEED = 'one-block 4'
const file = join(folder, 'evening.json')
const environmentOf = (name: string) => ({ DRYBOARD_DATA: join(folder, name), DRYBOARD_CONFIG: join(folder, 'config') })
const UP = '\u001B[A'
const DOWN = '\u001B[B'
const RIGHT = '\u001B[C'
const LEFT = '\u001B[D'

/** One choice twice: the keys that make it on the screen, Enter for the throw left out, and the line that says it in plain play. */
interface Choice {
  readonly keys: readonly string[]
  readonly line: string
}

const CHOICES: readonly Choice[] = [
  { keys: ['[', ']', 'u'], line: '2 and 1 left' },
  { keys: ['b', 'TAKE 3'], line: 'ball 3' },
  { keys: ['t', '.'], line: '0 and 0.5 right' },
  { keys: ['f', UP, UP, 'u', 'u'], line: '' },
  { keys: ['s', UP], line: 'speed firmer' },
  { keys: ['f', LEFT, '4'], line: 'ball 4' },
  { keys: [']', '['], line: '' },
  { keys: ['t', DOWN, 'f', ','], line: '0.5 and 0 left, 0 and 1 right' },
  { keys: ['f', LEFT, '1', '3', 'u'], line: 'ball 1' },
]
const CALL: Choice = { keys: ['c', RIGHT, UP, '\r'], line: '' }
const SPARE_BY_STRIKE_RELEASE: Choice = { keys: ['r', UP], line: 'release strike' }

/** A pair of lanes of drawn oil, one game: shorter than the built-in block, else the same. */
function writeScenario(): void {
  writeFileSync(file, JSON.stringify({ ...builtInScenario('unseen-draw'), games: 1, practiceThrows: 1 }))
}

/** Plays the block on the screen by keys and returns the lines that say the same. */
async function playOnScreen(environment: Record<string, string>): Promise<string[]> {
  let kept = 0
  // Every look at the clock comes a second after the last, so that no key counts as held or as pressed too soon.
  let secondsGone = 0
  const real = realServices(environment, madeUpThinker, { seed: SEED })
  const services: TrainerServices = {
    ...real,
    now: () => 1000 * ++secondsGone,
    async keepThrow(...parts) {
      await real.keepThrow(...parts)
      kept++
    },
  }
  const { type, screen, until, press, close } = mountTrainer({
    services,
    initial: await startingState(file, services),
    noMotion: true,
  })
  const choose = async (key: string) => {
    if (!key.startsWith('TAKE ')) return type(key)
    await until('The bag')
    const place = Number(key.slice('TAKE '.length))
    for (let tries = 0; tries < 9 && !new RegExp(`▸ ${place} `).test(await screen()); tries++) {
      type(DOWN)
      await new Promise((drawn) => setTimeout(drawn, 20))
    }
    await press('\r', 'Enter throw')
  }

  const lines: string[] = []
  try {
    for (let shown = await until('Enter throw'); !shown.includes('The block is over'); ) {
      const { keys, line } = choiceFor(lines.length, /Spare: \d/.test(shown))
      for (const key of keys) await choose(key)
      lines.push(line)
      type('\r')
      await vi.waitFor(() => expect(kept).toBe(lines.length), { timeout: 8000, interval: 5 })
      shown = await press(' ', /Enter throw|The block is over/)
    }
    await vi.waitFor(() => expect(readdirSync(join(environment.DRYBOARD_DATA!, 'records'))).toHaveLength(1))
  } finally {
    close()
    await services.leave()
  }
  return lines
}

function choiceFor(throwIndex: number, isSpare: boolean): Choice {
  if (isSpare && throwIndex % 2 === 0) return SPARE_BY_STRIKE_RELEASE
  if (!isSpare && throwIndex % 5 === 4) return CALL
  return CHOICES[throwIndex % CHOICES.length]!
}

/** A record's text without what no two blocks have alike. */
async function alike(path: string): Promise<string> {
  const record = await readRecord(path)
  return recordText({ ...record, block: null, origin: { ...record.origin, begun: null, ended: null } })
}

it('keeps the same record, but for its number and time, of the same choices on the screen and in plain play', async () => {
  writeScenario()
  const screen = environmentOf('screen')
  const plain = environmentOf('plain')
  const lines = await playOnScreen(screen)
  const script = join(folder, 'script.txt')
  writeFileSync(script, `${lines.join('\n')}\n`)
  const argv = ['play', file, '--seed', SEED, '--script', script, '--no-grade', '--data', plain.DRYBOARD_DATA]
  const played = await runCommand(argv, { environment: plain })
  expect(played.exitCode).toBe(0)

  const namesOf = (environment: Record<string, string>) => readdirSync(join(environment.DRYBOARD_DATA!, 'records'))
  const names = namesOf(screen)
  // Named alike but for the block's own number.
  const told = (name: string | undefined) => name?.replace(/-[0-9a-f]{6}-1\.json$/, '')
  expect(namesOf(plain).map(told)).toEqual(names.map(told))
  const pathIn = (environment: Record<string, string>) =>
    join(environment.DRYBOARD_DATA!, 'records', namesOf(environment)[0]!)
  expect(await alike(pathIn(screen))).toBe(await alike(pathIn(plain)))
  for (const one of [screen, plain]) expect(readdirSync(join(one.DRYBOARD_DATA!, 'unfinished'))).toEqual([])

  // The block had in it what could tell the two apart: a whole game on both lanes, spares, changes of ball and speed.
  const { decisions, scenario } = await readRecord(pathIn(screen))
  expect(scenario.lanes).toHaveLength(2)
  expect(decisions).toHaveLength(lines.length)
  expect(decisions.length).toBeGreaterThan(13)
  expect(new Set(decisions.map(({ ball }) => ball)).size).toBeGreaterThan(2)
  expect(new Set(decisions.map(({ speed }) => speed))).toContain('firmer')
  expect(lines).toContain(SPARE_BY_STRIKE_RELEASE.line)
  const notes = readFileSync(join(screen.DRYBOARD_DATA, 'notes', names[0]!), 'utf8')
  expect(readNotes(notes)?.calls.filter((call) => call !== null).length).toBeGreaterThan(0)
}, 60_000)
