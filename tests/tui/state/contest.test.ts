import { beforeAll, expect, it } from 'vitest'
import type { Scenario } from '../../../src/scenarios/files/scenario/scenario.js'
import { noNotes } from '../../../src/scenarios/store/block-notes.js'
import { playScreenRows } from '../../../src/tui/screens/play/play-screen.js'
import { type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { blockOf, type PlayState } from '../../../src/tui/state/play-state.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { goOnWith } from '../../../src/tui/state/start.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { bare, fixtureServices, PLAIN, shortScenario } from '../fixtures.js'

const services = fixtureServices()
const reduce = reducer(services)
let home: AppState
let scenario: Scenario

beforeAll(async () => {
  home = await startingState(undefined, services)
  scenario = await shortScenario()
})

const press = (state: AppState, ...keys: string[]): AppState =>
  keys.reduce((now, name) => reduce(now, { type: 'key', name, bagDrawn: false }), state)

const playIn = (state: AppState): PlayState => {
  if (state.screen.kind !== 'play') throw new Error(state.screen.kind)
  return state.screen.play
}

const entry = (): AppState => {
  const states = [services.begin(scenario, 'contest')]
  const played = { scenario, states, notes: noNotes('test'), recordPath: null, contest: 'Autumn contest' }
  return goOnWith(home, played, services)
}

const rowsOf = (state: AppState): string => {
  const play = state.notice === '' ? playIn(state) : { ...playIn(state), notice: state.notice }
  const parts = { play, view: services.view(blockOf(play)), fall: null, context: keyContext(state) }
  return playScreenRows({ ...parts, size: { columns: 80, rows: 24 }, theme: PLAIN })
    .map(bare)
    .join('\n')
}

function thrown(state: AppState): AppState {
  const weighing = press(state, 'enter')
  const play = playIn(weighing)
  const next = services.advance(blockOf(play), play.decision)
  return press(reduce(reduce(weighing, { type: 'weighed', grade: null, next }), { type: 'kept', next }), 'space')
}

it('holds grades and oil back, and says so', () => {
  const once = thrown(entry())
  expect(playIn(once).contest).toBe('Autumn contest')
  expect(rowsOf(once)).toMatch(/Autumn contest/)
  expect(rowsOf(once)).toMatch(/Grades come when the contest is over/)
  for (const key of ['e', 'o']) {
    const asked = press(once, key)
    expect([playIn(asked).stage.kind, playIn(asked).open]).toEqual(['deciding', 'nothing'])
    expect(rowsOf(asked)).toMatch(/held back until the contest is over/)
  }
})

it('has nothing to undo and nothing to take back once a choice is made', () => {
  const weighing = press(entry(), 'up', 'enter')
  expect(playIn(weighing).stage.kind).toBe('weighing')
  expect(playIn(press(weighing, 'escape')).stage.kind).toBe('weighing')
  const after = thrown(entry())
  expect(playIn(press(after, 'u')).states).toHaveLength(2)
  const refused = reduce(weighing, { type: 'not-thrown', sentence: 'The host does not answer.' })
  expect(playIn(refused).stage.kind).toBe('deciding')
  expect(refused.notice).toBe('The host does not answer.')
})

it('ends with where the entry is, and opens no debrief', () => {
  const once = thrown(entry())
  const play = playIn(once)
  const over = { ...blockOf(play), spot: null, phase: 'done' as const }
  const states = [...play.states.slice(0, -1), over]
  const done: AppState = {
    ...once,
    screen: { kind: 'play', play: { ...play, states, stage: { kind: 'done' }, recordPath: '/records/a.json' } },
  }
  expect(rowsOf(done)).toMatch(/Hand in \/records\/a\.json/)
  expect(rowsOf(done)).not.toMatch(/show the oil/)
  const longPath = `/home/ansa/.local/share/${'club/'.repeat(14)}Ansa-2026-11-27-house-forty-7ecea8-1.json`
  const longer: AppState = { ...done, screen: { kind: 'play', play: { ...playIn(done), recordPath: longPath } } }
  expect(rowsOf(longer)).toMatch(/Hand in this file:/)
  expect(rowsOf(longer).replace(/\s/g, '')).toContain(longPath)
  const left = press(done, 'enter')
  expect([left.screen.kind, left.finished]).toEqual(['home', null])
})
