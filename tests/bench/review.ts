import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readRecord, recordText } from '../../src/scenarios/store/record.js'
import { runCommand } from '../cli/in-process.js'
import { oneBallLane, playedRecord } from '../cli/played-record.js'
import { type BenchRow, startWatch, type Taken, timesOf } from './measure.js'

const PLAYERS = 20
const DAYS = [1, 9]
const RUNS = 5
const LINES = Array.from({ length: 24 }, (_, at) => (at % 7 === 4 ? 'feet 24 target 15' : ''))
const FAULTY = 3

/** A group of twenty with two whole games each and three files that are no records, reviewed again when all is priced. */
export async function benchReview(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-bench-review-'))
  try {
    const data = join(folder, 'data')
    const inbox = join(folder, 'inbox')
    const record = await playedRecord(
      [oneBallLane(folder), '--seed', 'group', '--player', 'Ansa', '--data', data],
      LINES,
    )
    await fill(inbox, record)
    const review = async (...form: string[]): Promise<Taken> => {
      const stop = startWatch()
      const { exitCode, out, err } = await runCommand(['review', inbox, ...form], {
        environment: { DRYBOARD_DATA: data },
      })
      const taken = stop()
      if (exitCode !== 1) throw new Error(`A review with files that are no records ends with ${exitCode}: ${err}`)
      const told = form.includes('--json') ? JSON.parse(out) : null
      if (told && (told.players.length !== PLAYERS || told.faults.length !== FAULTY))
        throw new Error(`The review tells of ${told.players.length} players and ${told.faults.length} faulty files.`)
      return taken
    }
    await review('--json')
    const [asJson, asPage]: [Taken[], Taken[]] = [[], []]
    for (let run = 0; run < RUNS; run++) {
      asJson.push(await review('--json'))
      asPage.push(await review('--html', join(folder, 'group.html')))
    }
    const goal = { most: 3, of: 'median' } as const
    const name = `group of ${PLAYERS}, ${FAULTY} faulty files, priced before`
    return [
      { name, unit: 's', measured: timesOf(asJson, 1 / 1000), goal },
      { name: '… as a page', unit: 's', measured: timesOf(asPage, 1 / 1000), goal },
    ]
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

async function fill(inbox: string, path: string): Promise<void> {
  const from = await readRecord(path)
  for (let player = 1; player <= PLAYERS; player++) {
    const own = join(inbox, `p${player}`)
    mkdirSync(own, { recursive: true })
    for (const day of DAYS) {
      const begun = `2026-03-0${day}T19:00:00+01:00`
      const copy = {
        ...from,
        block: `${player}a${day}`.padEnd(24, '0'),
        player: `Player ${player}`,
        origin: { ...from.origin, begun, ended: begun },
      }
      writeFileSync(join(own, `${day}.json`), recordText(copy))
    }
  }
  const sound = recordText({ ...from, player: 'Nobody' })
  writeFileSync(join(inbox, 'p1', 'spoiled.json'), '{ "format": "dryboard-record", ')
  writeFileSync(join(inbox, 'p2', 'tampered.json'), sound.replace('Nobody', 'Somebody'))
  writeFileSync(join(inbox, 'p3', 'stranger.json'), '{}')
}
