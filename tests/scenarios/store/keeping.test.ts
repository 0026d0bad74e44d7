import { copyFile, mkdtemp, readdir, readFile, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { type BlockNotes, noNotes } from '../../../src/scenarios/store/block-notes.js'
import type { Keeper } from '../../../src/scenarios/store/keeper.js'
import { fileKeeper } from '../../../src/scenarios/store/keeping.js'
import { EMPTY_KIT } from '../../../src/scenarios/store/own-kit.js'
import { type BlockRecord, readRecord, recordOf } from '../../../src/scenarios/store/record.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { playedOn } from '../../../src/tui/state/play-state.js'
import { runCommand } from '../../cli/in-process.js'
import { keptPath } from '../../cli/played-record.js'
import { fixtureServices, madeUpAccount } from '../../tui/fixtures.js'
import { holdersDie } from './dead-process.js'
import { readJournal } from './read-journal.js'

let folder: string
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'dryboard-keeping-'))
})
const keepers: Keeper[] = []
afterEach(async () => {
  for (const kept of keepers.splice(0)) await kept.leave()
  await rm(folder, { recursive: true, force: true })
})

const services = fixtureServices()
function keeper(): Keeper {
  const kept = fileKeeper({ DRYBOARD_DATA: folder })
  keepers.push(kept)
  return kept
}
const inFolder = async (name: string) => (await readdir(join(folder, name)).catch(() => [])).sort()
const journals = async () => (await inFolder('unfinished')).filter((name) => name.endsWith('.jsonl'))

const thrownOn = (block: BlockState) => services.advance(block, services.view(block)!.suggestion)

async function thrown(count: number, seed = 'keeping') {
  const scenario = await loadScenario('house-forty')
  const states = [services.begin(scenario, seed)]
  for (let i = 0; i < count; i++) states.push(thrownOn(states.at(-1)!))
  return { scenario, states, block: states.at(-1)! }
}

type Thrown = Awaited<ReturnType<typeof thrown>>

async function keepAll(kept: Keeper, { scenario, states }: Thrown): Promise<void> {
  for (let i = 1; i < states.length; i++) await kept.keepThrow(scenario, states[i - 1]!, states[i]!)
}

/** The journals as they lie once the program that plays them has died. */
const died = (): void => holdersDie(join(folder, 'unfinished'))

/** What records and journals hold of the same throws whoever made them, and whenever. */
const thrownIn = ({ decisions }: BlockRecord) => decisions.map(({ by: _by, ...decision }) => decision)

const seen = ({ throws }: BlockState) => throws.map((record) => record.observation)

describe('a block being played', () => {
  it('is in its journal throw by throw, and is taken up again as it was', async () => {
    const played = await thrown(3)
    await keepAll(keeper(), played)
    const [name] = await journals()
    const journal = await readJournal(join(folder, 'unfinished', name!))
    expect(thrownIn(journal)).toEqual(thrownIn(recordOf(played.scenario, played.block)))
    expect(journal.decisions.map(({ by }) => by)).toEqual(['player', 'player', 'player'])
    // Whoever plays it is alive, so nobody else may take it up.
    expect(await keeper().leftBlocks()).toEqual({ blocks: [], problems: [] })
    died()
    const { blocks } = await keeper().leftBlocks()
    expect(blocks.map(({ throws }) => throws)).toEqual([3])
    const again = await blocks[0]!.takeUp()
    expect(again.states).toHaveLength(4)
    expect(seen(again.states.at(-1)!)).toEqual(seen(played.block))
    // Once taken up it is nobody else's.
    await expect(blocks[0]!.takeUp()).rejects.toThrow()
  })

  it('grows on in the journal it was taken up from, and keeps what was said of it', async () => {
    const played = await thrown(4)
    const said: BlockNotes = {
      ...noNotes('test'),
      calls: [null, { contact: 'light', confidencePercent: 80 }],
    }
    const first = keeper()
    await keepAll(first, { ...played, states: played.states.slice(0, 3) })
    await first.keepSaid(played.states[2]!, said)
    died()
    const second = keeper()
    const { states, scenario, notes } = await (await second.leftBlocks()).blocks[0]!.takeUp()
    expect(notes).toEqual(said)
    const next = thrownOn(states.at(-1)!)
    await second.keepThrow(scenario, states.at(-1)!, next)
    expect(await journals()).toHaveLength(1)
    const path = await second.file(scenario, next, said)
    expect(thrownIn(await readRecord(path))).toEqual(thrownIn(recordOf(played.scenario, played.states[3]!)))
    expect((await second.openPast(path)).notes).toEqual(said)
    expect(await inFolder('unfinished')).toEqual([])
  })

  it('holds all its throws however fast they come', async () => {
    const played = await thrown(4)
    const kept = keeper()
    await Promise.all(
      played.states.slice(1).map((state, index) => kept.keepThrow(played.scenario, played.states[index]!, state)),
    )
    const [name] = await journals()
    expect((await readJournal(join(folder, 'unfinished', name!))).decisions).toHaveLength(4)
  })

  it('is made anew with all its throws after one that could not be written', async () => {
    const played = await thrown(3)
    const kept = keeper()
    // A file where the folder should be: nothing can be written.
    await writeFile(join(folder, 'unfinished'), '')
    await expect(kept.keepThrow(played.scenario, played.states[0]!, played.states[1]!)).rejects.toThrow(
      /cannot be written/,
    )
    await rm(join(folder, 'unfinished'))
    await kept.keepThrow(played.scenario, played.states[1]!, played.states[2]!)
    await kept.keepThrow(played.scenario, played.states[2]!, played.states[3]!)
    const [name, ...others] = await journals()
    expect(others).toEqual([])
    expect((await readJournal(join(folder, 'unfinished', name!))).decisions).toHaveLength(3)
  })
})

describe('blocks that were left', () => {
  it('are offered the latest first, under names of their own though their seed is one', async () => {
    await keepAll(keeper(), await thrown(2))
    died()
    await new Promise((later) => setTimeout(later, 20))
    await keepAll(keeper(), await thrown(1))
    died()
    const { blocks } = await keeper().leftBlocks()
    expect(blocks.map(({ throws }) => throws)).toEqual([1, 2])
    await blocks[1]!.takeUp()
    expect(await journals()).toHaveLength(2)
  })

  it('are named where they cannot be read, and left as they are', async () => {
    expect(await keeper().leftBlocks()).toEqual({ blocks: [], problems: [] })
    await keepAll(keeper(), await thrown(1))
    died()
    const path = join(folder, 'unfinished', (await journals())[0]!)
    const newer = (await readFile(path, 'utf8')).replace('"version":2', '"version":3')
    await writeFile(path, newer)
    const { blocks, problems } = await keeper().leftBlocks()
    expect(blocks).toEqual([])
    expect(problems).toEqual([expect.stringContaining('of a newer Dryboard')])
    expect(await readFile(path, 'utf8')).toBe(newer)
  })
})

describe('screen and plain play', () => {
  it('go on with blocks of the screen in plain play, and keep what was said of them', async () => {
    const played = await thrown(3)
    const kept = keeper()
    await keepAll(kept, played)
    const said: BlockNotes = { ...noNotes('drill'), calls: [{ contact: 'pocket', confidencePercent: 70 }] }
    await kept.keepSaid(played.block, said)
    died()
    const plain = await runCommand(['play', '--resume', '--no-grade', '--data', folder], { typed: [''] })
    expect(plain.exitCode).toBe(0)
    expect(plain.out).toContain('It goes on after 3 throws.')
    const path = keptPath(plain)
    const thrown4 = thrownIn(await readRecord(path))
    expect(thrown4.slice(0, 3)).toEqual(thrownIn(recordOf(played.scenario, played.block)))
    expect(thrown4).toHaveLength(4)
    expect((await keeper().openPast(path)).notes).toEqual(said)
    expect(await inFolder('unfinished')).toEqual([])
  })

  it('go on on the screen with a block that plain play stopped, under the name of who began it', async () => {
    const plain = ['play', 'house-forty', '--no-grade', '--seed', 'plain', '--player', 'Ines', '--data', folder]
    await runCommand(plain, { typed: ['', ''] })
    const [stopped] = await inFolder('records')
    const kept = keeper()
    const { scenario, states } = await kept.resume(join(folder, 'records', stopped!))
    expect(states).toHaveLength(3)
    const next = thrownOn(states.at(-1)!)
    await kept.keepThrow(scenario, states.at(-1)!, next)
    died()
    const again = keeper()
    const resumed = await again.resume(true)
    expect(resumed.states).toHaveLength(4)
    const { decisions, player } = await readRecord(await again.file(scenario, resumed.states.at(-1)!, noNotes('drill')))
    expect([decisions.length, player]).toEqual([3, 'Ines'])
  })

  it('take up what was said of a record that is gone on with, and of no other that is called the same', async () => {
    const played = await thrown(3)
    const said: BlockNotes = { ...noNotes('test'), calls: [null, { contact: 'high', confidencePercent: 60 }] }
    const path = await keeper().file(played.scenario, played.block, said)
    const elsewhere = join(folder, basename(path))
    await copyFile(path, elsewhere)
    expect((await keeper().resume(path)).notes).toEqual(said)
    expect((await keeper().resume(elsewhere)).notes).toEqual(noNotes('block'))
    for (const typed of [[], ['']]) {
      const plain = await runCommand(['play', '--resume', path, '--no-grade', '--data', folder], { typed })
      expect((await keeper().openPast(keptPath(plain))).notes).toEqual(said)
    }
    expect(await inFolder('unfinished')).toEqual([])
    expect((await keeper().openPast(path)).notes).toEqual(said)
  })

  it('mean the same block by the one left last, whatever it is called, and pass over one that cannot be read', async () => {
    await keepAll(keeper(), await thrown(2, 'z'))
    await keepAll(keeper(), await thrown(1, 'a'))
    died()
    const [a, z] = await journals()
    const left = (name: string) => join(folder, 'unfinished', name)
    const torn = left('house-forty-torn-1.1.jsonl')
    await writeFile(torn, '{"format"')
    const [earlier, later, last] = [new Date(1e12), new Date(2e12), new Date(3e12)]
    await utimes(left(z!), earlier, earlier)
    await utimes(left(a!), later, later)
    await utimes(torn, last, last)
    // Only the latest is meant by --resume without a record.
    const offered = await runCommand(['play', '--no-grade', '--data', folder])
    expect(offered.err.split('\n')).toEqual([
      'A block on house-forty was left after 1 throws. To go on with it: dryboard play --resume',
      'An earlier one on house-forty was left after 2 throws. To go on with it: dryboard play --resume house-forty-z-1',
      expect.stringContaining('ends before its first line does'),
    ])
    const screen = keeper()
    expect((await screen.resume(true)).states).toHaveLength(2)
    await screen.leave()
    died()
    await utimes(left((await journals())[0]!), later, later)
    const plain = await runCommand(['play', '--resume', '--no-grade', '--data', folder])
    expect(plain.out).toContain('It goes on after 1 throws.')
    expect((await keeper().resume(true)).states).toHaveLength(3)
    // With nothing else left, why this one cannot be gone on with is said.
    await expect(keeper().resume(true)).rejects.toThrow(/ends before its first line does/)
    expect((await runCommand(['play', '--resume', '--data', folder])).err).toMatch(/ends before its first line does/)
  })

  it('go on with blocks of plain play on the screen', async () => {
    // Lines that stop coming with an error leave a block as a kill does: in its journal.
    const typed: string[] = ['', 'feet 24 target 12', '']
    const stopping = Object.assign(typed, {
      *[Symbol.iterator]() {
        yield* typed.slice(0, 3)
        throw new Error('the wire is cut')
      },
    })
    await runCommand(['play', 'house-forty', '--no-grade', '--seed', 'plain', '--data', folder], { typed: stopping })
    died()
    const { blocks } = await keeper().leftBlocks()
    expect(blocks.map(({ throws }) => throws)).toEqual([3])
    const { states } = await blocks[0]!.takeUp()
    expect(states.at(-1)!.throws[1]!.decision.aim).toMatchObject({ feetBoard: 24, targetBoard: 12 })
  })
})

describe('what was worked out of a block', () => {
  it('comes with it when it is opened again', async () => {
    const played = await thrown(12)
    const kept = keeper()
    await keepAll(kept, played)
    const account = madeUpAccount(played.block)
    const grades = account.throws.map(({ graded }) => graded?.grade ?? null)
    await kept.keepWorked(played.scenario, played.block, { grades, account })
    const path = await kept.file(played.scenario, played.block, noNotes('drill'))
    const { worked, states } = await kept.openPast(path)
    expect(states).toHaveLength(13)
    expect(worked).toEqual({ grades, account })
    const opened = playedOn(await kept.openPast(path))
    expect(opened.account).toEqual(account)
    expect(opened.grades).toEqual(grades)
  })

  it('is left out where it is not of this block, and the block opens all the same', async () => {
    const played = await thrown(2)
    const other = await thrown(2, 'other')
    const kept = keeper()
    await kept.keepWorked(other.scenario, other.block, { grades: [null, null], account: null })
    const path = await kept.file(played.scenario, played.block, noNotes('drill'))
    const opened = await kept.openPast(path)
    expect(opened.worked).toBeUndefined()
    expect(playedOn(opened).grades).toEqual([undefined, undefined])
  })
})

describe('the kit', () => {
  it('that cannot be read is left as it is, said so, and kept aside when a new one is written', async () => {
    const path = join(folder, 'kit.json')
    const spoiled = '{ "format": "dryboard-kit", "version": 1, "bag": 3 }'
    await writeFile(path, spoiled)
    const kept = keeper()
    const { kit, problem } = await kept.findKit()
    expect(kit).toEqual(EMPTY_KIT)
    expect(problem).toMatch(/^Your bag and bowler are not used, for kit\.json .*: found 3; .*\.$/)
    expect(await readFile(path, 'utf8')).toBe(spoiled)
    expect(await kept.keepKit(EMPTY_KIT)).toBe(`${path}.unreadable-1`)
    expect(await readFile(`${path}.unreadable-1`, 'utf8')).toBe(spoiled)
    expect(await kept.keepKit(EMPTY_KIT)).toBeNull()
    expect(await kept.findKit()).toEqual({ kit: EMPTY_KIT, problem: '' })
  })
})
