import {
  appendFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { hostname, tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { type BlockStore, blockStore, type StoreParts } from '../../../src/scenarios/store/block-store.js'
import type { OpenBlock } from '../../../src/scenarios/store/open-block.js'
import { readRecord } from '../../../src/scenarios/store/record.js'
import { replayRecord } from '../../../src/scenarios/store/replay.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { holdersDie } from './dead-process.js'
import { type Call, faultyFiles } from './faulty-files.js'
import { readJournal } from './read-journal.js'

let data: string
beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'dryboard-store-'))
})
afterEach(() => rmSync(data, { recursive: true, force: true }))

const scenario = await loadScenario('house-forty')
/** Nobody has said who plays. */
const RECORD_NAME = /^\d{4}-\d\d-\d\d-house-forty-[0-9a-f]{6}-\d+\.json$/
const inFolder = (name: string): string[] => (existsSync(join(data, name)) ? readdirSync(join(data, name)).sort() : [])
const journals = () => inFolder('unfinished').filter((name) => name.endsWith('.jsonl'))
const journal = () => join(data, 'unfinished', journals()[0]!)

/** The suggested throw; each is worked out once, however often it is thrown. */
function next(state: BlockState): BlockState {
  const known = worked.get(state)
  if (known) return known
  const after = advance(state, playerView(state)!.suggestion)
  worked.set(state, after)
  return after
}
const worked = new WeakMap<BlockState, BlockState>()
const beginnings = new Map<string, BlockState>()
const died = () => holdersDie(join(data, 'unfinished'))

function begun(store: BlockStore, seed = 'store', player?: string): OpenBlock {
  const state = beginnings.get(seed) ?? beginScenario(scenario, seed)
  beginnings.set(seed, state)
  return store.begin({ scenario, begun: state, player, cameToBe: 'played' })
}

/** Throws on, and returns where the block then stands. */
async function throwOn(open: OpenBlock, count: number, from = open.begun): Promise<BlockState> {
  let state = from
  for (let number = 0; number < count; number++) {
    state = next(state)
    await open.keep(state.throws.at(-1)!)
  }
  return state
}

const withFaults = (faultAt: Parameters<typeof faultyFiles>[0]) => {
  const faulty = faultyFiles(faultAt)
  return { ...faulty, store: blockStore(data, { files: faulty.files }) }
}

describe('a block in play', () => {
  it('is one block from its beginning to its record, with who threw what, when and how often it was opened', async () => {
    let clock = new Date(2026, 2, 8, 19, 4, 11)
    const parts: StoreParts = { now: () => clock }
    for (const before of [0, 1]) {
      const open = begun(blockStore(data, parts), 'origin', 'Ansa')
      const state = await throwOn(open, 2)
      const inPlay = await readJournal(journal())
      expect(inPlay.block).toBe(open.block)
      clock = new Date(2026, 2, 8, 19, 40, 52)
      const record = await readRecord(await open.file(state))
      expect(record).toMatchObject({ block: open.block, player: 'Ansa', program: expect.stringMatching(/^\d/) })
      expect(record.origin).toMatchObject({ cameToBe: 'played', openedBefore: before, copyOf: null })
      expect(record.origin.ended).toMatch(/^2026-03-08T19:40:52[+-]\d\d:\d\d$/)
      expect(record.decisions.map(({ by }) => by)).toEqual(['player', 'player'])
      expect(inFolder('unfinished')).toEqual([])
    }
  })

  it('keeps its number when it is stopped and gone on with, and in the hands of somebody else becomes another', async () => {
    const store = blockStore(data)
    const open = begun(store, 'same', 'Ansa')
    const path = await open.file(await throwOn(open, 2))
    const again = await store.resume(path, 'ansa ')
    const own = await readRecord(await again.open.file(await throwOn(again.open, 1)))
    expect([own.block, own.player, own.decisions.length]).toEqual([open.block, 'Ansa', 3])
    expect(own.decisions.map(({ by }) => by)).toEqual(['player', 'player', 'player'])
    const copied = await store.resume(path, 'Bo')
    const other = await readRecord(await copied.open.file(await throwOn(copied.open, 1)))
    expect(other.block).not.toBe(open.block)
    expect(other).toMatchObject({ player: 'Bo', origin: { copyOf: open.block, cameToBe: 'played', openedBefore: 1 } })
    expect(other.decisions.map(({ by }) => by)).toEqual(['given', 'given', 'player'])
  })

  it('stands as its own record where nothing is thrown since', async () => {
    const store = blockStore(data)
    const open = begun(store)
    const path = await open.file(await throwOn(open, 1))
    const { open: again, states } = await store.resume(path, undefined)
    expect(await again.file(states.at(-1)!)).toBe(path)
    expect(inFolder('records')).toHaveLength(1)
  })

  it('goes on where somebody cleared its folder, with all its throws', async () => {
    const open = begun(blockStore(data))
    const state = await throwOn(open, 2)
    rmSync(join(data, 'unfinished'), { recursive: true })
    await throwOn(open, 1, state)
    expect((await readJournal(journal())).decisions).toHaveLength(3)
    await open.leave()
  })
})

describe('blocks that were left', () => {
  it('are nobody else’s while they are played, though the number of the process is the same each time', async () => {
    const open = begun(blockStore(data))
    await throwOn(open, 2)
    expect(await blockStore(data).left()).toMatchObject({ blocks: [], played: ['house-forty-store-1'] })
    await expect(blockStore(data).resume(true, undefined)).rejects.toThrow(
      /somebody plays house-forty-store-1 just now/,
    )
    // A container begun anew: the same host, the same number, but not the same process.
    const lock = join(data, 'unfinished', 'house-forty-store-1.1.lock')
    const held = JSON.parse(readFileSync(lock, 'utf8'))
    expect(held).toMatchObject({ pid: process.pid, host: hostname() })
    writeFileSync(lock, JSON.stringify({ ...held, started: held.started - 1 }))
    expect((await blockStore(data).left()).blocks).toHaveLength(1)
    // Another process namespace, whose numbers mean nothing here: held as long as its time is kept fresh, and after that left.
    writeFileSync(lock, JSON.stringify({ ...held, machine: 'abcdefabcdef', pid: 2 ** 30 }))
    expect((await blockStore(data).left()).blocks).toEqual([])
    const longAgo = new Date(Date.now() - 600_000)
    utimesSync(lock, longAgo, longAgo)
    expect((await blockStore(data).left()).blocks).toHaveLength(1)
    await open.leave()
  })

  it('go on from their last whole line, whatever a dying program left after it', async () => {
    const open = begun(blockStore(data))
    await throwOn(open, 2)
    for (const torn of ['{"ball":"weak-pe', '{', '"', '\u0000\u0000']) {
      const before = (await readJournal(journal())).decisions.length
      appendFileSync(journal(), torn)
      died()
      const { open: again, states } = await blockStore(data).resume(true, undefined)
      await throwOn(again, 1, states.at(-1)!)
      const text = readFileSync(journal(), 'utf8')
      expect((await readJournal(journal())).decisions).toHaveLength(before + 1)
      expect(text.endsWith('}\n')).toBe(true)
    }
    await open.leave()
  })

  it('belong to who goes on with them: whoever played them until then gets no more results', async () => {
    const open = begun(blockStore(data))
    const state = await throwOn(open, 2)
    died()
    const again = await blockStore(data).resume('house-forty-store-1', undefined)
    await expect(throwOn(open, 1, state)).rejects.toThrow(/somebody else goes on with this block/)
    await throwOn(again.open, 2, again.states.at(-1)!)
    expect((await readJournal(journal())).decisions).toHaveLength(4)
    await open.leave()
    await again.open.leave()
  })

  it('are taken up by one of many who try at once', async () => {
    await throwOn(begun(blockStore(data)), 1)
    died()
    const left = (await blockStore(data).left()).blocks[0]!
    const tries = await Promise.allSettled(Array.from({ length: 8 }, () => blockStore(data).takeUp(left, undefined)))
    const won = tries.flatMap((one) => (one.status === 'fulfilled' ? [one.value] : []))
    expect(won).toHaveLength(1)
    expect(journals()).toHaveLength(1)
    await won[0]!.open.leave()
  })

  it('are passed over where they cannot be gone on with, which is said, and can each be named', async () => {
    for (const seed of ['a', 'b', 'c']) await throwOn(begun(blockStore(data), seed), 1)
    died()
    const path = (seed: string) => join(data, 'unfinished', `house-forty-${seed}-1.1.jsonl`)
    // One that does not come out the same, the latest; one that cannot be read; one that is sound.
    writeFileSync(path('c'), readFileSync(path('c'), 'utf8').replace(/"standing":\d+/, '"standing":1022'))
    writeFileSync(path('b'), 'spoiled\n')
    for (const [at, seed] of ['a', 'b', 'c'].entries()) utimesSync(path(seed), at + 1, at + 1)
    const store = blockStore(data)
    const { open, passedOver } = await store.resume(true, undefined)
    expect(open.begun.seed).toBe('a')
    expect(passedOver).toEqual([expect.stringContaining('house-forty-c-1.1.jsonl: decision 1 leaves')])
    await expect(store.resume('house-forty-b-1', undefined)).rejects.toThrow(/this line is not JSON/)
    await expect(store.resume('house-forty-a-1', undefined)).rejects.toThrow(/somebody plays this block just now/)
    expect(readFileSync(path('b'), 'utf8')).toBe('spoiled\n')
    await open.leave()
    const named = await store.resume(join(data, 'unfinished', 'house-forty-a-1.2.jsonl'), undefined)
    expect(named.open.begun.seed).toBe('a')
    await named.open.leave()
  })

  it('are not offered once they are filed, though the program died before the journal went', async () => {
    const open = begun(blockStore(data))
    const state = await throwOn(open, 2)
    await open.keepSaid('what was said')
    const before = readFileSync(journal(), 'utf8')
    const name = journals()[0]!
    const path = await open.file(state)
    writeFileSync(join(data, 'unfinished', name), `${before}{"filing":"${basename(path)}"}\n`)
    expect((await blockStore(data).left()).blocks).toEqual([])
    expect(inFolder('unfinished')).toEqual([])
    // Where the record of that name is another block's, this one is not filed.
    writeFileSync(
      join(data, 'unfinished', name),
      `${before.replace(/[0-9a-f]{24}/, 'a'.repeat(24))}{"filing":"${basename(path)}"}\n`,
    )
    expect((await blockStore(data).left()).blocks).toHaveLength(1)
    expect(existsSync(path)).toBe(true)
  })

  it('of one seed begun at once have each what was said of them and no other', async () => {
    const opened = Array.from({ length: 6 }, () => begun(blockStore(data)))
    const states = await Promise.all(opened.map((open) => throwOn(open, 1)))
    expect(new Set(journals()).size).toBe(6)
    await Promise.all(opened.map((open, at) => open.keepSaid(`said ${at}`)))
    const paths = await Promise.all(opened.map((open, at) => open.file(states[at]!)))
    expect(new Set(paths).size).toBe(6)
    for (const [at, path] of paths.entries()) {
      expect(readFileSync(join(data, 'notes', path.split('/').at(-1)!), 'utf8')).toBe(`said ${at}`)
    }
    // What a block of the same name said, long gone, is not said of a new one.
    mkdirSync(join(data, 'unfinished'), { recursive: true })
    writeFileSync(join(data, 'unfinished', 'house-forty-store-1.said.json'), 'stale')
    const open = begun(blockStore(data))
    const path = await open.file(await throwOn(open, 1))
    expect(existsSync(join(data, 'notes', path.split('/').at(-1)!))).toBe(false)
  })
})

describe('where the disk fails', () => {
  it('a throw that is not kept is not there, none before it is lost, and it can be thrown once there is room', async () => {
    let full = false
    const { store, open: handles } = withFaults((call) => (full && /write|append/.test(call) ? 'ENOSPC' : null))
    const open = begun(store)
    full = true
    // The first throw: no journal may be left of it, and no file open.
    for (let tries = 0; tries < 3; tries++) {
      await expect(throwOn(open, 1)).rejects.toMatchObject({ reason: 'the disk is full' })
      expect([inFolder('unfinished'), handles()]).toEqual([[], 0])
    }
    full = false
    const one = await throwOn(open, 1)
    full = true
    for (let tries = 0; tries < 3; tries++)
      await expect(throwOn(open, 1, one)).rejects.toThrow(/the disk is full, ENOSPC/)
    expect((await readJournal(journal())).decisions).toHaveLength(1)
    expect(readFileSync(journal(), 'utf8').endsWith('}\n')).toBe(true)
    full = false
    const three = await throwOn(open, 2, one)
    full = true
    await expect(open.file(three)).rejects.toThrow(/the disk is full/)
    expect(inFolder('records')).toEqual([])
    full = false
    const record = await readRecord(await open.file(three))
    expect(replayRecord(record, 'record').states.at(-1)!.throws).toHaveLength(3)
    expect([inFolder('unfinished'), handles()]).toEqual([[], 0])
  })

  it('files all the same without hard links, never over another, whichever it is that refuses them', async () => {
    for (const code of ['EPERM', 'ENOTSUP', 'ENOSYS']) {
      const { store } = withFaults((call) => (call === 'link' ? code : null))
      await store.tryOut()
      const opened = [begun(store), begun(store)]
      const states = await Promise.all(opened.map((open) => throwOn(open, 1)))
      await Promise.all(opened.map((open, at) => open.file(states[at]!)))
    }
    const names = inFolder('records')
    expect(names).toHaveLength(6)
    for (const name of names) expect(name).toMatch(RECORD_NAME)
    const blocks = await Promise.all(names.map(async (name) => (await readRecord(join(data, 'records', name))).block))
    expect(new Set(blocks).size).toBe(6)
  })

  it('says before play that nothing could be kept', async () => {
    const { store, open } = withFaults((call, _number, path) =>
      call === 'rename' && path.includes('records') ? 'EROFS' : null,
    )
    await expect(store.tryOut()).rejects.toThrow(/records: cannot be written \(it can only be read here, EROFS\)/)
    expect(open()).toBe(0)
  })

  /** One call after the other fails, or fails from there on: every throw that was told is kept, nothing comes twice, nothing is left lying about. */
  it.each([
    ['once', 'EIO', 2],
    ['for ever', 'ENOSPC', 9],
  ] as const)('%s by %s at any call, nothing told is lost and nothing is kept twice', async (how, code, step) => {
    const root = data
    const whole = await playedWith(() => null)
    expect(whole.failed).toBe(0)
    for (let at = 0; at < whole.calls.length; at += step) {
      data = join(root, `${at}`)
      const { told } = await playedWith((_call, number) =>
        number === at || (how !== 'once' && number > at) ? code : null,
      )
      if (existsSync(join(data, 'unfinished'))) died()
      // Somebody comes later, to a sound disk.
      const store = blockStore(data)
      await store.tryOut()
      for (const left of (await store.left()).blocks) {
        const { open, states } = await store.takeUp(left, undefined)
        await open.file(states.at(-1)!)
      }
      const records = await Promise.all(inFolder('records').map((name) => readRecord(join(data, 'records', name))))
      const context = `call ${at}, ${whole.calls[at]}`
      expect(Math.max(0, ...records.map(({ decisions }) => decisions.length)), context).toBeGreaterThanOrEqual(told)
      expect(records.length, context).toBeLessThanOrEqual(1)
      expect(
        [...inFolder('unfinished'), ...inFolder('records').filter((name) => !RECORD_NAME.test(name))],
        context,
      ).toEqual([])
      rmSync(data, { recursive: true, force: true })
    }
    data = root
  })
})

/** Three throws, filed; what fails is tried once more. Tells how many results could have been shown. */
async function playedWith(faultAt: (call: Call, number: number) => string | null) {
  const { store, calls, open: handles } = withFaults(faultAt)
  let failed = 0
  const twice = async <Result>(work: () => Promise<Result>): Promise<Result | null> => {
    for (let tries = 0; tries < 2; tries++) {
      try {
        return await work()
      } catch {
        failed++
      }
    }
    return null
  }
  const open = begun(store)
  let told = 0
  let state = open.begun
  for (let number = 0; number < 3; number++) {
    const after = next(state)
    if ((await twice(() => open.keep(after.throws.at(-1)!).then(() => true))) === null) break
    state = after
    told++
  }
  await twice(() => open.keepSaid('said'))
  if (told > 0) await twice(() => open.file(state))
  await open.leave()
  expect(handles()).toBe(0)
  return { told, failed, calls }
}
