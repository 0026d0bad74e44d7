import { beforeAll, expect, it } from 'vitest'
import { type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { blockOf, type PlayState } from '../../../src/tui/state/play-state.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { startBlock } from '../../../src/tui/state/start.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { fixtureServices, madeUpAccount, madeUpGrade, shortScenario } from '../fixtures.js'

const services = fixtureServices()
const reduce = reducer(services)
const press = (state: AppState, ...keys: string[]): AppState =>
  keys.reduce((now, name) => reduce(now, { type: 'key', name, bagDrawn: false }), state)

function playIn(state: AppState): PlayState {
  if (state.screen.kind !== 'play' && state.screen.kind !== 'debrief') throw new Error(state.screen.kind)
  return state.screen.play
}

function thrown(state: AppState): AppState {
  const weighing = press(state, 'enter')
  const { decision } = playIn(weighing)
  const block = blockOf(playIn(weighing))
  const next = services.advance(block, decision)
  return press(reduce(weighing, { type: 'weighed', grade: madeUpGrade(block, decision), next }), 'space')
}

/** Looking back at a short block, its findings in sight. */
let findings: AppState
beforeAll(async () => {
  const home = await startingState(undefined, services)
  let state = startBlock(home, await shortScenario(), 'again', services, 'drill')
  for (let i = 0; i < 4; i++) {
    state = thrown(state)
    const rolling = playIn(state)
    if (rolling.stage.kind === 'rolling') state = reduce(state, { type: 'kept', next: rolling.stage.next })
  }
  const looking = press(state, 'e', 'enter', 'escape')
  const block = blockOf(playIn(looking))
  const whole = reduce(looking, { type: 'account-whole', block, account: madeUpAccount(block) })
  findings = press(whole, 'tab', 'tab', 'tab')
})

it('plays the moment of a finding again from its page, on the same oil and luck, and keeps nothing of it', () => {
  const again = press(findings, 'enter')
  const play = playIn(again)
  expect(keyContext(again)).toBe('play')
  expect(play.states).toHaveLength(1)
  expect(play.mode).toBe('drill')
  expect(play.moment!.thenPins).toBe(madeUpAccount(blockOf(playIn(findings))).throws[0]!.graded!.grade.givenAwayPins)
  const { decision } = blockOf(playIn(findings)).throws[0]!
  const rolled = thrown({ ...again, screen: { kind: 'play', play: { ...play, decision } } })
  expect(blockOf(playIn(rolled)).throws[0]!.standingAfter).toBe(blockOf(playIn(findings)).throws[0]!.standingAfter)
})

it('ends with its frame and goes back to where it came from', () => {
  let again = press(findings, 'enter')
  for (let ball = 0; ball < 2 && playIn(again).stage.kind !== 'done'; ball++) again = thrown(again)
  expect(playIn(again).stage.kind).toBe('done')
  const back = press(again, 'enter')
  expect(back.screen).toEqual(findings.screen)
  expect(press(press(findings, 'enter'), 'escape').screen).toEqual(findings.screen)
  expect(back.momentFrom).toBeNull()
})

it('takes Enter elsewhere for the throw after', () => {
  const throwPage = press(findings, 'tab', 'tab', 'tab', 'tab', 'home')
  expect(throwPage.screen).toMatchObject({ debrief: { view: 'throw', chosen: 0 } })
  expect(press(throwPage, 'enter').screen).toMatchObject({ debrief: { chosen: 1 } })
})
