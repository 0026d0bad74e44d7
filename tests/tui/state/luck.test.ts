import { beforeAll, describe, expect, it } from 'vitest'
import type { Scenario } from '../../../src/scenarios/files/scenario/scenario.js'
import { laneOfToday } from '../../../src/scenarios/store/today.js'
import { bowlerFields, startingBowler } from '../../../src/tui/forms/bowler-form.js'
import { openForm, reduceForm, settleTyping } from '../../../src/tui/forms/form.js'
import { type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { homeEntries } from '../../../src/tui/state/home-entries.js'
import { blockOf, type PlayState } from '../../../src/tui/state/play-state.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { startBlock } from '../../../src/tui/state/start.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { fixtureServices, madeUpGrade, shortScenario } from '../fixtures.js'

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

function playIn({ screen }: AppState): PlayState {
  if (screen.kind !== 'play' && screen.kind !== 'debrief') throw new Error(screen.kind)
  return screen.play
}

function thrown(state: AppState): AppState {
  const weighing = press(state, 'enter')
  const block = blockOf(playIn(weighing))
  const { decision } = playIn(weighing)
  const next = services.advance(block, decision)
  const rolling = reduce(weighing, { type: 'weighed', grade: madeUpGrade(block, decision), next })
  return press(reduce(rolling, { type: 'kept', next }), 'space')
}

const bowlerOf = ({ screen }: AppState) => {
  if (screen.kind !== 'bowler') throw new Error(screen.kind)
  return screen
}
const choosing = (): AppState => press({ ...home, screen: { kind: 'scenarios', cursor: 0 } }, 'enter')

/** A block over in one frame, since that is what the screen is told. */
function over(state: AppState): AppState {
  let now = state
  for (let balls = 0; blockOf(playIn(now)).spot && balls < 30; balls++) now = thrown(now)
  return now
}

describe('the luck of a block', () => {
  it('is a seed typed before it begins, and a fresh one where none is', () => {
    const typing = press(choosing(), 'e')
    expect(keyContext(typing)).toBe('naming')
    const set = press(typing, 'q', '7', 'space', 'x', 'backspace', 'backspace', 'enter')
    expect(bowlerOf(set)).toMatchObject({ seed: 'q7', naming: null })
    expect(blockOf(playIn(press(set, 'enter'))).seed).toBe('q7')
    expect(blockOf(playIn(press(choosing(), 'enter'))).seed).toBe('fixture')
    // Esc leaves it as it was, and closes nothing else.
    expect(bowlerOf(press(typing, 'z', 'escape'))).toMatchObject({ seed: '', naming: null })
  })

  it('is had again by one key after a block, or another on the same lane', () => {
    const done = over(startBlock(home, scenario, 'luck', services))
    expect(keyContext(done)).toBe('done')
    const again = press(done, 'a')
    expect(blockOf(playIn(again)).throws).toEqual([])
    expect(blockOf(playIn(again)).seed).toBe('luck')
    expect(blockOf(playIn(again)).setup).toBe(blockOf(playIn(done)).setup)
    expect(again.finished && blockOf(again.finished)).toBe(blockOf(playIn(done)))
    const other = blockOf(playIn(press(done, 'o')))
    expect(other.setup).toBe(blockOf(playIn(done)).setup)
    expect(other.seed).not.toBe('luck')
    const looked = press(done, 'enter', 'escape')
    expect(blockOf(playIn(press(looked, 'a'))).seed).toBe('luck')
  })

  it("is the date's on the lane of the day, for the scenario's own bowler and bag to begin with", () => {
    const cursor = homeEntries(home).indexOf('today')
    const chosen = press({ ...home, screen: { kind: 'home', cursor } }, 'enter')
    const { scenarioName, seed, date } = laneOfToday()
    expect(bowlerOf(chosen)).toMatchObject({ seed, day: date, bag: 'scenario', cursor: 0 })
    expect(bowlerOf(chosen).scenario.name).toBe(scenarioName)
    expect(blockOf(playIn(press(chosen, 'enter'))).seed).toBe(seed)
    expect(press(chosen, 'escape').screen.kind).toBe('home')
  })
})

describe('two players at one keyboard', () => {
  const match = (): AppState => press(press(choosing(), 'g', 'B', 'o', 'enter'), 'enter')

  it('have a block each on the same lane and luck', () => {
    const { who, rival, states } = playIn(match())
    expect(who).toEqual({ name: 'You', isGuest: false })
    if (rival?.kind !== 'guest') throw new Error('nobody')
    expect(rival.play.who).toEqual({ name: 'Bo', isGuest: true })
    expect(rival.play.states[0]).toEqual(states[0])
    expect(rival.play.states[0]).not.toBe(states[0])
  })

  it('take turns frame by frame, and both are kept when they stop', () => {
    let now = press({ ...match() }, 'x')
    const names: string[] = []
    for (let throws = 0; throws < 9; throws++) {
      names.push(playIn(now).who!.name)
      now = thrown(now)
      if (keyContext(now) === 'passing') now = press(now, 'enter')
    }
    expect(new Set(names)).toEqual(new Set(['You', 'Bo']))
    expect(names[0]).toBe('You')
    const stopped = press(now, 'escape')
    expect(stopped.kept).toHaveLength(2)
    expect(stopped.kept.filter(({ title }) => title.includes('(Bo)'))).toHaveLength(1)
    expect(stopped.kept.reduce((sum, { throws }) => sum + throws, 0)).toBe(9)
  })

  it('hear late grades of either block', () => {
    let now = thrown(match())
    while (keyContext(now) !== 'passing') now = thrown(now)
    const handed = press(now, 'enter')
    const grade = madeUpGrade(services.begin(scenario, 'late'), playIn(now).decision)
    const graded = reduce(handed, { type: 'graded', before: rivalStates(handed)[0]!, grade })
    const { rival } = playIn(graded)
    expect(rival?.kind === 'guest' && rival.play.grades[0]).toBe(grade)
  })
})

function rivalStates(state: AppState) {
  const { rival } = playIn(state)
  if (rival?.kind !== 'guest') throw new Error('nobody')
  return rival.play.states
}

describe('an average typed in place of a level', () => {
  const fields = bowlerFields(startingBowler('right'))
  const level = fields.findIndex(({ label }) => label.startsWith('Level'))
  const typed = (text: string) =>
    settleTyping(
      [...text].reduce((form, type) => reduceForm(form, fields, { type }), {
        ...openForm(startingBowler('right')),
        cursor: level,
      }),
      fields,
    ).draft

  it('is that level, or figures between those of the two next to it', () => {
    expect(typed('180')).toMatchObject({ level: '180', style: 'tweener' })
    const own = (average: string) => {
      const bowler = typed(average)
      if (bowler.level !== 'own') throw new Error(String(bowler.level))
      return bowler
    }
    expect(own('190').name).toBe('190 tweener')
    expect(own('195').error.laydownBoards).toBeLessThan(own('185').error.laydownBoards)
    expect(own('195').strike.speedMph).toBeGreaterThan(own('165').strike.speedMph)
    expect(typed('300')).toEqual(startingBowler('right'))
  })
})
