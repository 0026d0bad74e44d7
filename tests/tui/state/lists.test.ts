import { beforeAll, describe, expect, it } from 'vitest'
import { commandFor } from '../../../src/tui/keys/keys.js'
import { type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { playedOf } from '../../../src/tui/state/played.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { listedScenarios } from '../../../src/tui/state/reduce-menus.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { fixtureServices } from '../fixtures.js'

const services = fixtureServices()
const reduce = reducer(services)
let home: AppState
beforeAll(async () => {
  home = await startingState(undefined, services)
}, 30_000)

const press = (state: AppState, ...keys: string[]): AppState =>
  keys.reduce((now, key) => reduce(now, { type: 'key', name: key, bagDrawn: false }), state)

const cursorIn = ({ screen }: AppState): number => ('cursor' in screen ? screen.cursor : -1)
const listed = (state: AppState) =>
  listedScenarios(state, state.screen.kind === 'scenarios' ? state.screen.filter : undefined)

describe('a long list', () => {
  const lanes = () => press(home, 'enter')

  it('is gone through by pages and to its ends', () => {
    const count = home.scenarios.length
    expect(cursorIn(press(lanes(), 'pagedown'))).toBe(10)
    expect(cursorIn(press(lanes(), 'pagedown', 'pageup', 'pageup'))).toBe(0)
    expect(cursorIn(press(lanes(), 'end'))).toBe(count - 1)
    expect(cursorIn(press(lanes(), 'end', 'pagedown'))).toBe(count - 1)
    expect(cursorIn(press(lanes(), 'end', 'home'))).toBe(0)
  })

  it('is narrowed by / to what holds every word, chosen from, and shown whole again by Esc', () => {
    const typed = press(lanes(), '/', ...'long', 'space', ...'flat')
    expect(keyContext(typed)).toBe('filter')
    const names = listed(typed).map(({ name }) => name)
    expect(names.length).toBeGreaterThan(1)
    expect(names.length).toBeLessThan(10)
    for (const { title, purpose, name } of listed(typed)) {
      expect(`${name} ${title} ${purpose}`.toLowerCase()).toMatch(/long.*flat|flat.*long/s)
    }
    const chosen = press(typed, 'enter', 'down', 'enter')
    expect(chosen.screen.kind === 'bowler' && chosen.screen.scenario.name).toBe(names[1])
    expect(listed(press(typed, 'escape'))).toHaveLength(home.scenarios.length)
    expect(press(typed, 'escape', 'escape').screen.kind).toBe('home')
    // Letters that are commands elsewhere are letters here.
    expect(press(lanes(), '/', 'q').exitCode).toBeNull()
    expect(commandFor('filter', '?')).toEqual({ type: '?' })
  })

  it('finds nothing without harm', () => {
    const none = press(lanes(), '/', ...'zzzz', 'enter', 'down', 'pagedown', 'end', 'enter')
    expect(none.screen.kind).toBe('scenarios')
    expect(listed(none)).toEqual([])
  })
})

describe('what was bowled on a lane', () => {
  it('is counted by its title, with the best game of all its blocks', () => {
    const block = {
      path: '',
      name: '',
      seed: '',
      bowledAt: new Date(0),
      throws: 20,
      frames: 10,
      isOwn: true,
      kind: 'block' as const,
    }
    const played = playedOf([
      { ...block, title: 'A', games: [150, 211] },
      { ...block, title: 'A', games: [190] },
      { ...block, title: 'B', games: [] },
      { ...block, title: 'B', games: [78], kind: 'drill' },
    ])
    expect(played.get('A')).toEqual({ blocks: 2, bestGame: 211 })
    expect(played.get('B')).toEqual({ blocks: 1, bestGame: null })
  })
})
