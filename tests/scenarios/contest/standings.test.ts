import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { checkAcrossEntries } from '../../../src/scenarios/contest/standings/across.js'
import { type CheckedEntry, checkEntry } from '../../../src/scenarios/contest/standings/check-entry.js'
import { errorOfDifference, handicapPins, placesOf } from '../../../src/scenarios/contest/standings/rank.js'
import { seasonOf } from '../../../src/scenarios/contest/standings/season.js'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { readRecord } from '../../../src/scenarios/store/record.js'
import { replayRecord } from '../../../src/scenarios/store/replay.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { movedBy, oneBall, playEntry, RULES, SEED, sealed, suggested } from './contest-for-tests.js'
import { answersToTampered } from './tampered-entries.js'

const { opened } = sealed()
const good = await playEntry(opened, 'Ansa')
const other = await playEntry(opened, 'Brono', movedBy(1))
const quick = { luck: false, accounts: null }

it('believes an entry as it was played, tells its code and gives back its luck', async () => {
  const entry = await checkEntry(good.path, opened, { luck: true, accounts: null })
  expect(entry).toMatchObject({ status: 'ranked', reasons: [], marks: [], player: 'Ansa', code: good.code })
  expect(entry.figures!.frames).toHaveLength(10)
  expect(entry.figures!.frames.reduce((sum, { score }) => sum + score, 0)).toBe(entry.figures!.score)
  expect(entry.figures!.frames.every(({ luck }) => luck !== null && Math.abs(luck) < 40)).toBe(true)
})

it('refuses or keeps out whatever was tampered with, with a reason, and never tells what an edited choice leaves', async () => {
  const answers = await answersToTampered({ opened, good, other }, 13)
  expect(answers.filter(({ entry }) => entry.status === 'ranked')).toEqual([])
  expect(answers.filter(({ entry }) => entry.reasons.length === 0)).toEqual([])
  const edited = answers.filter(({ tampering }) => tampering === 'a decision, own key')
  for (const { entry } of edited) {
    const words = entry.reasons.join(' ')
    expect(words).not.toMatch(/leaves (nothing|the )|\bpin\b/)
    expect(words).toMatch(
      /game 1, frame \d+, ball \d: decisions \d+ > standing: found other pins|another state|other state/,
    )
  }
})

it('gives the same choices the same bits, and other choices the same luck later on', () => {
  const scenario = oneBall()
  const [one, two] = [beginScenario(scenario, SEED), beginScenario(scenario, SEED)]
  const left = movedBy(2)
  const [first, moved] = [advance(one, suggested(one)), advance(two, left(two))]
  expect(advance(two, suggested(two)).throws[0]).toEqual(first.throws[0])
  expect(moved.throws[0]!.truth.normals).toEqual(first.throws[0]!.truth.normals)
  const byPlace = new Map(good.state.throws.map(({ spot, truth }) => [`${spot.frame} ${spot.ball}`, truth.normals]))
  const shared = other.state.throws.filter(({ spot }) => byPlace.has(`${spot.frame} ${spot.ball}`))
  expect(shared.length).toBeGreaterThanOrEqual(10)
  for (const { spot, truth } of shared) expect(truth.normals).toEqual(byPlace.get(`${spot.frame} ${spot.ball}`))
})

it('never shares luck between two contests', async () => {
  const second = beginScenario(oneBall(), 'cd'.repeat(32))
  const first = beginScenario(oneBall(), SEED)
  expect(advance(second, suggested(second)).throws[0]!.truth.normals).not.toEqual(
    advance(first, suggested(first)).throws[0]!.truth.normals,
  )
})

it('marks an entry that was gone on with, and one begun anew', async () => {
  const half = await playEntry(opened, 'Cille', suggested, { throws: 3 })
  const stopped = await checkEntry(half.path, opened, quick)
  expect([stopped.status, stopped.reasons]).toEqual(['unfinished', ['it is not finished']])
  const [kept] = checkAcrossEntries([stopped], { tries: 1, entrants: null })
  expect(kept!.status).toBe('unfinished')
})

it('is a record like any other to those who only want to play it again', async () => {
  const record = await readRecord(good.path)
  const { states } = replayRecord(record, good.path)
  expect(states.at(-1)!.throws.map(({ standingAfter }) => standingAfter)).toEqual(
    record.decisions.map(({ standing }) => standing),
  )
  expect(record.origin.cameToBe).toBe('contest')
  expect(readFileSync(good.path, 'utf8')).toContain('"entry"')
})

const entryOf = (
  player: string,
  scores: readonly number[],
  lucks: readonly number[] = scores.map(() => 0),
): CheckedEntry => ({
  file: `${player}.json`,
  status: 'ranked',
  reasons: [],
  marks: [],
  digest: player,
  player,
  entry: player,
  block: player,
  code: player,
  begun: '2026-03-08T19:00:00+01:00',
  ended: '2026-03-08T20:00:00+01:00',
  throws: 10,
  thrown: [player],
  figures: {
    games: [scores.reduce((sum, one) => sum + one, 0)],
    score: scores.reduce((sum, one) => sum + one, 0),
    strikes: 0,
    frames: scores.map((score, at) => ({ game: 1, frame: at + 1, score, luck: lucks[at]!, cost: null })),
    choices: null,
  },
})
const even = (each: number): number[] => new Array<number>(10).fill(each)

// League practice (from memory): 90 % of 220 less the average, fractions dropped: average 165 → 49 pins a game.
it('reckons a handicap as leagues do', () => {
  const handicap = { base: 220, percent: 90 }
  expect([165, 180.6, 220, 230].map((average) => handicapPins({ handicap }, average))).toEqual([49, 35, 0, 0])
  expect(handicapPins({ handicap }, undefined)).toBe(0)
  expect(handicapPins({}, 165)).toBe(0)
  const rules = { ...RULES, ranking: 'score' as const, handicap }
  const places = placesOf([entryOf('A', even(19)), entryOf('B', even(15))], rules, [{ name: 'b', average: 165 }])
  expect(places.map(({ entry, figure }) => [entry.player, figure])).toEqual([
    ['B', 199],
    ['A', 190],
  ])
})

it('ranks by the score without luck, and shares places that frames cannot tell apart', () => {
  const lucky = entryOf('Lucky', even(20), even(-5))
  const sound = entryOf('Sound', even(18), even(0))
  const rules = { ...RULES }
  expect(placesOf([lucky, sound], rules, []).map(({ entry, place, shared }) => [entry.player, place, shared])).toEqual([
    ['Sound', 1, false],
    ['Lucky', 2, false],
  ])
  // Differences of +9 and −8 in turn: mean 0.5 a frame, far less than its error.
  const near = entryOf(
    'Near',
    even(18).map((one, at) => one + (at % 2 === 0 ? 9 : -8)),
  )
  const tied = placesOf([sound, near], rules, [])
  expect(tied.map(({ entry, place, shared, aheadBy }) => [entry.player, place, shared, aheadBy])).toEqual([
    ['Near', 1, true, 'score'],
    ['Sound', 1, true, null],
  ])
  const again = entryOf('Again', even(18))
  const same = placesOf([sound, again], rules, [])
  expect(same.map(({ place, shared, aheadBy }) => [place, shared, aheadBy])).toEqual([
    [1, true, null],
    [1, true, null],
  ])
})

// The paired standard error of a sum: √n times the sample deviation of the differences; here 1 and −1 in turn, n = 10.
it('has the textbook error of a paired difference', () => {
  expect(
    errorOfDifference(
      even(1).map((one, at) => (at % 2 === 0 ? one : -one)),
      even(0),
    ),
  ).toBeCloseTo(Math.sqrt(10 * (10 / 9)), 12)
  expect(errorOfDifference([1], [0])).toBe(Number.POSITIVE_INFINITY)
})

it('finds copies, earlier states, further tries and strangers among all entries', () => {
  const a = entryOf('A', even(18))
  const longer = { ...a, file: 'A-2.json', digest: 'A2', throws: 12 }
  const second = {
    ...entryOf('A', even(20)),
    file: 'A-3.json',
    digest: 'A3',
    entry: 'A3',
    block: 'A3',
    ended: '2026-03-08T21:00:00+01:00',
  }
  const told = (entries: readonly CheckedEntry[]) =>
    checkAcrossEntries(entries, { tries: 1, entrants: [{ name: 'A', code: 'A' }] })
  expect(told([a, { ...a, file: 'copy.json' }])[1]!.reasons).toEqual(['it is a copy of A.json'])
  expect(told([a, longer])[0]!.reasons).toEqual(['it is an earlier or other state of A-2.json'])
  expect(told([a, { ...second, code: 'A' }])[1]!.reasons).toEqual(['A has one try, and this is number 2'])
  expect(told([entryOf('Z', even(18))])[0]!.reasons).toEqual(['Z is not listed'])
  expect(told([{ ...a, code: 'other' }])[0]!.reasons).toEqual(['its code other is not the one listed for A'])
})

// Worked by hand: three in the first contest, two of them sharing first; two in the second.
it('adds a season up', () => {
  const contest = (number: string, places: readonly (readonly [number, string])[]) => ({
    format: 'dryboard-contest-standings' as const,
    version: 1 as const,
    title: number,
    contest: number,
    deadline: `2026-0${number}-01T20:00:00+01:00`,
    places: places.map(([place, player]) => ({ place, player, figure: 0, score: 100 })),
  })
  const season = seasonOf([
    contest('2', [
      [1, 'C'],
      [2, 'a'],
    ]),
    contest('1', [
      [1, 'A'],
      [1, 'B'],
      [3, 'C'],
    ]),
  ])
  expect(season.rows.map(({ place, player, points, each }) => [place, player, points, each])).toEqual([
    [1, 'A', 3.5, [2.5, 1]],
    [2, 'C', 3, [1, 2]],
    [3, 'B', 2.5, [2.5, null]],
  ])
  expect(() => seasonOf([contest('1', []), contest('1', [])])).toThrow(/there twice/)
})
