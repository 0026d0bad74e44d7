import { beforeAll, describe, expect, it } from 'vitest'
import type { Drill } from '../../../src/scenarios/drills/load-drill.js'
import { shortLibraryDrill } from '../../../src/scenarios/practice/library-drill.js'
import { readyPositions } from '../../../src/scenarios/practice/position-set.js'
import type { Remembered } from '../../../src/scenarios/store/remembered.js'
import { homeScreen } from '../../../src/tui/screens/menus/home-screen.js'
import type { AppState } from '../../../src/tui/state/app-state.js'
import { homeEntries } from '../../../src/tui/state/home-entries.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { bare, fixtureServices, shortScenario, THEMES } from '../fixtures.js'

const waiting = { skill: 'line', name: 'library:line', answered: 0 } as const
const remembered: Remembered = { costs: [5], skills: [], unpriced: 0, lanesMet: 1, lanesOfAll: 35, calls: null }

const services = fixtureServices()
const reduce = reducer(services)
let home: AppState
let drill: Drill
beforeAll(async () => {
  home = await startingState(undefined, services, [])
  home = {
    ...home,
    hasPast: true,
    screen: { kind: 'home', cursor: homeEntries({ ...home, hasPast: true }).indexOf('past') },
  }
  const scenario = await shortScenario()
  const state = services.begin(scenario, 'drilled')
  drill = { title: 'One', positions: [{ scenario, state, states: [state], throws: 1, lookFor: 'Where?', given: [] }] }
})

const told = (state: AppState) => reduce(state, { type: 'remembered', remembered, drill: waiting })
const cursorOf = ({ screen }: AppState) => (screen.kind === 'home' ? screen.cursor : -1)
const handOn = (state: AppState) => homeEntries(state)[cursorOf(state)]
const rowsOf = (state: AppState) =>
  homeScreen(state, cursorOf(state), null, { columns: 80, rows: 22 }, THEMES[0]![1]).map(bare).join('\n')

const onDrill = (): AppState => {
  const state = told(home)
  return { ...state, screen: { kind: 'home', cursor: homeEntries(state).indexOf('drill') } }
}
const pressed = (): AppState => reduce(onDrill(), { type: 'command', command: 'enter' })

describe('a drill that waits', () => {
  it('stands on the home screen once it is known, the hand staying where it was', () => {
    expect(rowsOf(home)).not.toContain('Drill waiting')
    const state = told(home)
    expect(rowsOf(state)).toContain('Drill waiting: line')
    expect([handOn(home), handOn(state)]).toEqual(['past', 'past'])
    expect(handOn(reduce(state, { type: 'remembered', remembered, drill: null }))).toBe('past')
  })

  it('is started by Enter, once its positions are ready', () => {
    const opening = pressed()
    expect(rowsOf(opening)).toContain('Setting the pins of the drill')
    const { screen } = reduce(opening, { type: 'drill-opened', waiting, drill })
    expect(screen).toMatchObject({ kind: 'play', play: { drill: { place: 0, answered: [] } } })
  })

  it('says why where it cannot be, and starts nothing for who has gone on', () => {
    const refused = reduce(pressed(), { type: 'drill-refused', waiting, sentence: 'There is no such drill.' })
    expect(rowsOf(refused)).toContain('There is no such drill.')
    expect(handOn(refused)).toBe('drill')
    const elsewhere = reduce(pressed(), { type: 'command', command: 'back' })
    expect(reduce(elsewhere, { type: 'drill-opened', waiting, drill })).toBe(elsewhere)
  })

  it('is a few positions, others after those that were answered, going round', async () => {
    const { positions } = await readyPositions()
    const lines = positions.filter(({ kind, skill }) => kind === 'decide' && skill === 'line')
    const expected = [lines.at(-1)!, ...lines.slice(0, 4)].map(({ moment: { seed, decisions } }) => [
      seed,
      decisions.length,
    ])
    const short = await shortLibraryDrill('library:line', 2 * lines.length - 1)
    expect(short.positions.map(({ state: { seed, throws } }) => [seed, throws.length])).toEqual(expected)
  }, 60_000)
})
