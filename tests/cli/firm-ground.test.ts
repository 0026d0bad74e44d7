import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { writePage } from '../../src/scenarios/files/text/report-file.js'
import { debriefOf } from '../../src/scenarios/reports/debrief/debrief.js'
import { debriefReport } from '../../src/scenarios/reports/debrief/debrief-report.js'
import { reviewCsv } from '../../src/scenarios/reports/review/csv.js'
import { reviewReport } from '../../src/scenarios/reports/review/review-report.js'
import { standingBlocks } from '../../src/scenarios/reports/review/standing-blocks.js'
import { addNote, readNotes } from '../../src/scenarios/store/coach-notes.js'
import { configFolder } from '../../src/scenarios/store/config-folder.js'
import { dataFolder } from '../../src/scenarios/store/data-folder.js'
import { fileKeeper } from '../../src/scenarios/store/keeping.js'
import { ownThrows, readRecord } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { readSettings } from '../../src/tui/settings/settings-file.js'
import { runCommand } from './in-process.js'
import { oneBallLane, playedRecord } from './played-record.js'
import { soundRecord } from './spoiled-sources.js'
import { answersToTampered } from './tampered-records.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-firm-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const data = join(folder, 'data')
const environment = { DRYBOARD_DATA: data }
const run = (argv: readonly string[], typed: readonly string[] = []) => runCommand(argv, { typed, environment })

let lane: string
let record: string
beforeAll(async () => {
  lane = oneBallLane(folder)
  record = await playedRecord([lane, '--seed', 'firm', '--player', 'Ansa', '--data', data], ['', ''])
}, 120_000)

describe('a page', () => {
  it('is never written over what it is made from, a record, a text, a link or a folder', async () => {
    const other = join(folder, 'other.json')
    writeFileSync(other, readFileSync(record))
    const text = join(folder, 'text.txt')
    writeFileSync(text, 'mine')
    const link = join(folder, 'link.html')
    symlinkSync(record, link)
    const before = readFileSync(record, 'utf8')
    for (const target of [record, other, text, link, folder, '/dev/null', lane]) {
      for (const argv of [
        ['review', record, '--html', target],
        ['debrief', record, '--html', target],
      ]) {
        const { exitCode, err } = await run(argv)
        expect([exitCode, err], argv.join(' ')).toEqual([73, expect.stringMatching(/cannot be written \(.*page/)])
      }
    }
    expect(readFileSync(record, 'utf8')).toBe(before)
    expect([readFileSync(other, 'utf8'), readFileSync(text, 'utf8')]).toEqual([before, 'mine'])
  })

  it('takes the place of an earlier page, and who may read it stays', async () => {
    const page = join(folder, 'page.html')
    await writePage(page, '<!doctype html>\none', [record])
    expect(statSync(page).mode & 0o777).toBe(0o644 & ~process.umask())
    chmodSync(page, 0o664)
    await writePage(page, '<!doctype html>\ntwo', [record])
    expect([statSync(page).mode & 0o777, readFileSync(page, 'utf8')]).toEqual([0o664, '<!doctype html>\ntwo'])
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([])
  })
})

describe('verify', () => {
  it('refuses or tells every change, whatever was made anew to hide it', async () => {
    const answers = await answersToTampered(await soundRecord(), 90, 3)
    expect(answers.length).toBeGreaterThan(60)
    expect(answers.filter(({ answer }) => answer === 'silent')).toEqual([])
    const bare = answers.filter(({ forgery }) => forgery !== 'every digest')
    expect(bare.filter(({ answer }) => answer !== 'refused')).toEqual([])
  })

  it('looks at every file, and tells player, seed, scenario, version and origin', async () => {
    const { exitCode, out, err } = await run(['verify', join(folder, 'nowhere.json'), record])
    expect(exitCode).toBe(66)
    expect(err).toMatch(/nowhere\.json: there is no such file/)
    expect(out).toMatch(/the same, 2 throws, unfinished, so far/)
    expect(out).toMatch(/player Ansa; .*\(one-ball [0-9a-f]{16}\), seed firm/)
    expect(out).toMatch(/played, 2.* to 2.*, program \d.*, not opened before, choices: 2 the player's own/)
    const [, sound] = JSON.parse((await run(['verify', join(folder, 'nowhere.json'), record, '--json'])).out).verified
    expect(sound).toMatchObject({
      same: true,
      finished: false,
      differences: [],
      told: { player: 'Ansa', seed: 'firm' },
    })
  })
})

describe('whose choice it was', () => {
  it('only the player’s own count in debrief and review', async () => {
    // Dear throws that are given, and one of the player's own.
    const drill = join(folder, 'drill.json')
    const wild = { ball: (await readRecord(record)).decisions[0]!.ball, feet: 39, target: 30 }
    const position = { scenario: 'one-ball.yaml', seed: 'firm', decisions: [wild], throws: 1, lookFor: 'x' }
    writeFileSync(drill, JSON.stringify({ version: 1, title: 'One', positions: [position] }))
    const own = join(folder, 'own')
    const played = await runCommand(['drill', drill, '--player', 'Bo', '--data', own], { typed: [''] })
    expect(played.exitCode).toBe(0)
    const path = /kept: (.*)$/m.exec(played.err)![1]!
    const filed = await readRecord(path)
    expect(filed.origin).toMatchObject({ cameToBe: 'drill', openedBefore: 0 })
    expect(filed.decisions.map(({ by }) => by)).toEqual(['given', 'player'])
    expect(ownThrows(filed)).toEqual([false, true])
    const debrief = debriefOf(replayRecord(filed, path), { alternatives: false, own: ownThrows(filed) })
    const report = debriefReport(filed, debrief)
    const [given, chosen] = report.throws.map(({ fair }) => fair?.givenAwayPins)
    expect(given).toBeUndefined()
    expect(report.givenAway.total).toBeCloseTo(chosen!, 2)
    expect(report.ledger.frames.reduce((sum, { chargedPins }) => sum + chargedPins, 0)).toBeCloseTo(chosen!, 2)
    expect(report.tags.flatMap(({ throws }) => throws)).not.toContain(0)
    const block = { path, player: 'Bo', record: filed, report, notes: [] }
    const [bo] = reviewReport([block]).players
    expect(bo!.blocks[0]).toMatchObject({ ownChoices: 1, choices: 2, origin: { cameToBe: 'drill' } })
    expect(bo!.dearest.length).toBe(chosen! > 0 ? 1 : 0)
    expect(reviewCsv([block])).toHaveLength(2)
    // Gone on with, it is the same block, counted once; and so it is named.
    const later = {
      ...block,
      path: 'later.json',
      record: { ...filed, decisions: [...filed.decisions, filed.decisions[1]!] },
    }
    const { standing, superseded } = standingBlocks([block, later])
    expect(standing.map((one) => one.path)).toEqual(['later.json'])
    expect(superseded).toEqual([{ record: path, by: 'later.json' }])
  })
})

describe('what cannot be read again', () => {
  it('is said before play', async () => {
    const hidden = join(folder, '.yaml')
    const long = join(folder, `${'n'.repeat(201)}.yaml`)
    const control = join(folder, 'bell\u0007.yaml')
    for (const path of [hidden, long, control]) {
      writeFileSync(path, readFileSync(lane))
      const { exitCode, err } = await run(['play', path, '--plain', '--no-grade'], [''])
      expect([exitCode, err], path).toEqual([
        65,
        expect.stringMatching(/called as its file is, .* 1 to 200 characters/),
      ])
    }
    // Eighty characters that take two places each in a record.
    expect((await run(['play', lane, '--seed', '🎳'.repeat(80)])).exitCode).toBe(64)
  })

  it('keeps nobody from playing where it is only the profile, and is told', async () => {
    const config = join(folder, 'config')
    mkdirSync(config)
    writeFileSync(join(config, 'profile.json'), '{')
    const played = await runCommand(['play', lane, '--no-grade', '--data', join(folder, 'nameless')], {
      typed: [''],
      environment: { DRYBOARD_CONFIG: config },
    })
    expect([played.exitCode, played.err]).toEqual([0, expect.stringContaining('not JSON')])
    expect(played.err).toContain('The block will carry no name.')
    expect((await runCommand(['player'], { environment: { DRYBOARD_CONFIG: config } })).exitCode).toBe(65)
  })

  it('is told in one sentence where folders are files, files are folders and links lead nowhere', async () => {
    const odd = join(folder, 'odd')
    mkdirSync(join(odd, 'settings.json'), { recursive: true })
    mkdirSync(join(odd, 'kit.json'))
    writeFileSync(join(odd, 'records'), '')
    expect((await readSettings({ DRYBOARD_CONFIG: odd })).problem).toMatch(/settings\.json cannot be read \(EISDIR\)/)
    expect((await fileKeeper({ DRYBOARD_DATA: odd }).findKit()).problem).toMatch(/kit\.json cannot be read \(EISDIR\)/)
    await expect(fileKeeper({ DRYBOARD_DATA: odd }).listPast()).rejects.toThrow(
      /this folder cannot be read \(ENOTDIR\)/,
    )
    expect(await fileKeeper({ DRYBOARD_DATA: odd }).hasPast()).toBe(false)
    const played = await runCommand(['play', lane, '--no-grade', '--data', odd], { typed: [''] })
    expect([played.exitCode, played.out]).toEqual([73, ''])
    symlinkSync(join(folder, 'nowhere'), join(data, 'records', 'dangling.json'))
    expect((await fileKeeper(environment).listPast()).length).toBeGreaterThan(0)
  })
})

describe('files that several programs write', () => {
  it('notes: twenty at once are all kept', async () => {
    const texts = Array.from({ length: 20 }, (_, at) => `note ${at}`)
    await Promise.all(texts.map((text) => addNote(record, { game: 1, frame: 1, text })))
    expect((await readNotes(record)).map(({ text }) => text).sort()).toEqual(texts.sort())
    expect(readdirSync(join(data, 'records')).filter((name) => name.includes('.lock'))).toEqual([])
  })

  it('debriefs kept before are believed only as they were written', async () => {
    const own = join(folder, 'cache')
    const review = async () => (await runCommand(['review', record, '--json', '--data', own])).out
    const first = await review()
    const [name] = readdirSync(join(own, 'debriefs'))
    const path = join(own, 'debriefs', name!)
    const text = readFileSync(path, 'utf8')
    for (const spoiled of ['{}', text.replace(/"total":\d+(\.\d+)?/, '"total":99')]) {
      writeFileSync(path, spoiled)
      expect(await review()).toBe(first)
    }
  })
})

describe('folders', () => {
  it('are not guessed where an empty name is given', async () => {
    expect((await run(['play', lane, '--data', ''])).exitCode).toBe(64)
    vi.stubEnv('HOME', '')
    try {
      expect(dataFolder(undefined, {})).toMatch(/^\/.*\.local\/share\/dryboard$/)
      expect(configFolder({})).toMatch(/^\/.*\.config\/dryboard$/)
    } finally {
      vi.unstubAllEnvs()
    }
    expect(existsSync('.local')).toBe(false)
  })
})
