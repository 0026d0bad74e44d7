import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { keptLaneFigures } from '../../../src/scenarios/reports/html/kept-lane-figures.js'
import { laneFigures } from '../../../src/scenarios/reports/html/lane-figures.js'
import { LANE_FIGURES_REVISION } from '../../../src/scenarios/reports/html/lane-figures-revision.js'
import { type BlockRecord, readRecord } from '../../../src/scenarios/store/record.js'
import { type Replay, replayRecord } from '../../../src/scenarios/store/replay.js'
import { FILM_BOARDS, FILM_ROWS } from '../../../src/sim/world/lane/film.js'
import { FULL_RACK } from '../../../src/sim/world/pins/leaves.js'
import { oneBallLane, playedRecord } from '../../cli/played-record.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-lanes-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

let record: BlockRecord
let figures: string
beforeAll(async () => {
  const path = await playedRecord(
    [oneBallLane(folder), '--seed', 'lanes', '--data', join(folder, 'data')],
    ['', '', ''],
  )
  record = await readRecord(path)
  figures = laneFigures(replayRecord(record, path))
})

/** A block of made-up oil and paths, which no law of the lane has a part in. */
function madeUp(): Replay {
  const film = { microns: Float64Array.from({ length: FILM_ROWS * FILM_BOARDS }, (_, at) => (at % 97) / 20) }
  const thrown = [1, 2, 3].map((frame) => ({
    spot: { phase: 'game', lane: 0, game: 1, frame, ball: 1 },
    standingBefore: FULL_RACK,
    standingAfter: frame === 2 ? 0 : 6,
    truth: { path: Float64Array.from({ length: FILM_ROWS }, (_, row) => 0.3 + frame / 20 + row / 500) },
  }))
  const state = (throws: unknown[]) => ({ lanes: [{ film }], throws })
  const setup = { bowler: { hand: 'right' }, lanes: [{ name: 'lane 1' }] }
  return { scenario: { setup }, states: [state([]), state(thrown)] } as unknown as Replay
}

it('names how lanes are drawn, so that pictures drawn otherwise are not taken for today’s', () => {
  const digest = createHash('sha256').update(laneFigures(madeUp())).digest('hex').slice(0, 16)
  expect(digest, 'Lanes are drawn otherwise: write this as LANE_FIGURES_REVISION.').toBe(LANE_FIGURES_REVISION)
})

it('draws a block once and takes it from where it is kept from then on, unless that was changed', async () => {
  const kept = join(folder, 'kept')
  const block = { path: 'a record', record }
  const told: string[] = []
  const draw = () => keptLaneFigures([block], kept, (done, of) => told.push(`${done} of ${of}`))
  expect(await draw()).toEqual([figures])
  const [name] = readdirSync(kept)
  expect(name).toContain(`${LANE_FIGURES_REVISION}.lanes.json`)
  expect(await draw()).toEqual([figures])
  writeFileSync(join(kept, name!), '{"format":"dryboard-lanes","version":1,"digest":"00","kept":"<p>"}\n')
  expect(await draw()).toEqual([figures])
  expect(told).toEqual(['1 of 1', '1 of 1', '1 of 1'])
})

it('numbers the first balls of a game on their paths, no two at the same feet', () => {
  const places = [
    ...laneFigures(madeUp()).matchAll(/<text x="([\d.]+)" y="[\d.]+" class="number" text-anchor="middle">(\d+)</g),
  ]
  expect(places.map(([, , frame]) => frame)).toEqual(['1', '2', '3'])
  expect(new Set(places.map(([, x]) => x)).size).toBe(places.length)
})
