import { beforeAll, describe, expect, it } from 'vitest'
import type { Scenario } from '../../../src/scenarios/files/scenario/scenario.js'
import { FULL_RACK } from '../../../src/sim/world/pins/leaves.js'
import { commandFor } from '../../../src/tui/keys/keys.js'
import { type Action, type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { homeEntries } from '../../../src/tui/state/home-entries.js'
import { blockOf, type PlayState } from '../../../src/tui/state/play-state.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { FALL_SECONDS, framesOf, ROLL_FRAMES } from '../../../src/tui/state/reduce-throw.js'
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

/** Presses keys as the root does: each by what it means where the trainer then is. */
function press(state: AppState, ...keys: string[]): AppState {
  return keys.reduce((now, key) => {
    const command = commandFor(keyContext(now), key)
    return command === null ? now : reduce(now, { type: 'command', command })
  }, state)
}

function playIn(state: AppState): PlayState {
  if (state.screen.kind !== 'play') throw new Error(`The screen is ${state.screen.kind}.`)
  return state.screen.play
}

const playing = () => startBlock(home, scenario, 'reduce', services)

/** What the weighing task does once the screen has said so, and then what keeps the throw. */
function weighed(state: AppState, isKept = true): AppState {
  const play = playIn(state)
  const block = blockOf(play)
  const next = services.advance(block, play.decision)
  const rolling = reduce(state, { type: 'weighed', grade: madeUpGrade(block, play.decision), next })
  return isKept ? reduce(rolling, { type: 'kept', next }) : rolling
}

describe('from home to a decision', () => {
  it('takes three keys', () => {
    const state = press(home, 'enter', 'enter', 'enter')
    expect(keyContext(state)).toBe('play')
    expect(playIn(state).decision.ballId).not.toBe('')
  })

  it('offers no entry that leads nowhere', () => {
    expect(homeEntries(home)).toEqual(['practice', 'new', 'today', 'kit', 'settings', 'keys', 'quit'])
    for (let entry = 0; entry < homeEntries(home).length; entry++) {
      const state = press({ ...home, screen: { kind: 'home', cursor: entry } }, 'enter')
      expect(state).not.toEqual({ ...home, screen: { kind: 'home', cursor: entry } })
    }
  })

  it('goes back one level by Esc, all the way', () => {
    const state = press(home, 'enter', 'enter', 'enter', 'escape')
    expect(state.screen.kind).toBe('home')
    expect(press(home, 'enter', 'enter', 'escape').screen.kind).toBe('scenarios')
    expect(press(home, 'enter', 'escape').screen.kind).toBe('home')
  })

  it('lets a left-hander bowl', () => {
    const state = press(home, 'enter', 'enter', 'right', 'enter')
    expect(blockOf(playIn(state)).setup.bowler.hand).toBe('left')
  })
})

describe('deciding', () => {
  it('moves feet left on the lane upwards, for either hand', () => {
    const right = playing()
    const feet = playIn(right).decision.aim.feetBoard
    expect(playIn(press(right, 'up')).decision.aim.feetBoard).toBe(feet + 1)
    expect(playIn(press(right, ',')).decision.aim.feetBoard).toBe(feet + 0.5)
    const left = startBlock(
      home,
      services.fit(scenario, { bowler: { level: '200', hand: 'left', style: 'tweener' }, seeing: 'scenario' }),
      'left',
      services,
    )
    const leftFeet = playIn(left).decision.aim.feetBoard
    expect(playIn(press(left, 'up')).decision.aim.feetBoard).toBe(leftFeet - 1)
    const { aim } = playIn(press(left, '[')).decision
    expect(aim.feetBoard).toBe(leftFeet - 2)
  })

  it('moves 2 and 1 by one key and takes it back by one', () => {
    const start = playing()
    const before = playIn(start).decision
    const moved = press(start, '[')
    expect(playIn(moved).decision.aim.feetBoard - before.aim.feetBoard).toBe(2)
    expect(playIn(moved).decision.aim.targetBoard - before.aim.targetBoard).toBe(1)
    expect(playIn(press(moved, 'u')).decision).toEqual(before)
  })

  it('undoes any run of changes one by one, and says when there is nothing left', () => {
    const start = playing()
    const keys = ['up', 'right', 'down', 'right', 'up', '[', ']', ',', 'r', 'up']
    let state = press(start, ...keys)
    const { undo } = playIn(state)
    for (let i = 0; i < undo.length; i++) state = press(state, 'u')
    expect(playIn(state).decision).toEqual(playIn(start).decision)
    expect(playIn(press(state, 'u')).notice).toMatch(/nothing to undo/i)
  })

  it('refuses what cannot be thrown, with the reason, and keeps the decision', () => {
    let state = playing()
    for (let i = 0; i < 60; i++) state = press(state, 'up')
    const play = playIn(state)
    expect(play.notice).toMatch(/board/)
    expect(services.check(blockOf(play), play.decision)).toBeNull()
    expect(playIn(press(state, 'down')).notice).toBe('')
  })

  it('opens the bag, and leaves it unchanged by Esc', () => {
    const open = press(playing(), 'b')
    expect(keyContext(open)).toBe('bag')
    expect(press(open, 'enter')).toBe(open)
    expect(playIn(press(open, 'escape')).decision).toEqual(playIn(playing()).decision)
    const chosen = reduce(open, { type: 'ball-chosen', place: 2 })
    expect(playIn(chosen).decision.ballId).toBe(scenario.setup.bag[2]!.id)
    expect(keyContext(chosen)).toBe('play')
  })
})

describe('a throw', () => {
  it('fixes the grade before the result is known, and shows the result only after the roll', () => {
    const weighing = press(playing(), 'enter')
    expect(playIn(weighing).stage.kind).toBe('weighing')
    let state = weighed(weighing)
    const stage = playIn(state).stage
    expect(stage.kind === 'rolling' && stage.grade).toEqual(
      madeUpGrade(blockOf(playIn(weighing)), playIn(weighing).decision),
    )
    const { stage: rolling } = playIn(state)
    const frames = rolling.kind === 'rolling' ? framesOf(rolling.next) : 0
    expect(frames).toBe(ROLL_FRAMES + FALL_SECONDS.length)
    for (let frame = 0; frame < frames; frame++) {
      expect(blockOf(playIn(state)).throws).toHaveLength(0)
      state = reduce(state, { type: 'tick' })
    }
    expect(blockOf(playIn(state)).throws).toHaveLength(1)
    expect(playIn(state).grades).toHaveLength(1)
    expect(playIn(state).stage.kind).toBe('deciding')
  })

  it('cannot be changed or thrown twice while it is weighed, and is skipped by Enter, space or Esc while it rolls', () => {
    const weighing = press(playing(), 'enter')
    for (const key of ['up', 'enter', '[', 'x']) expect(press(weighing, key)).toEqual(weighing)
    expect(playIn(press(weighing, 'escape')).stage.kind).toBe('deciding')
    const skipped = press(weighed(weighing), 'space')
    expect(blockOf(playIn(skipped)).throws).toHaveLength(1)
  })

  it('cannot be taken back', () => {
    const after = press(weighed(press(playing(), 'up', 'enter')), 'space')
    expect(playIn(press(after, 'u')).notice).toMatch(/nothing to undo/i)
  })
})

describe('a block left unfinished', () => {
  const left = () => press(weighed(press(playing(), 'enter')), 'space', 'escape')

  /** What the task does that plays a block again. */
  async function takenUp(state: AppState): Promise<AppState> {
    if (state.screen.kind !== 'home' || !state.screen.takingUp) throw new Error('Nothing is being taken up.')
    const kept = state.screen.takingUp
    return reduce(state, { type: 'taken-up', kept, played: await kept.takeUp() })
  }

  it('is offered first at home and goes on where it was', async () => {
    const state = left()
    expect(state.screen.kind).toBe('home')
    expect(homeEntries(state)[0]).toBe('continue')
    const again = await takenUp(press(state, 'enter'))
    expect(again.kept).toEqual([])
    expect(blockOf(playIn(again)).throws).toHaveLength(1)
    expect(blockOf(playIn(again)).spot).not.toBeNull()
  })

  it('is not offered when nothing was thrown', () => {
    expect(homeEntries(press(playing(), 'escape'))).not.toContain('continue')
  })

  it('says why when it cannot be taken up again, and offers the one left before it', () => {
    const [kept, older] = ['Old', 'Older'].map((title) => ({ title, throws: 3, takeUp: () => Promise.reject() }))
    const asked = press({ ...home, kept: [kept!, older!], screen: { kind: 'home', cursor: 0 } }, 'enter')
    // Keys wait until it has been played again.
    expect(press(asked, 'down', 'enter')).toEqual(asked)
    const state = reduce(asked, { type: 'take-up-refused', kept: kept!, sentence: 'decision 3 leaves other pins.' })
    expect(state.screen).toEqual({ kind: 'home', cursor: 0 })
    expect(state.notice).toContain('decision 3 leaves other pins.')
    expect(state.kept).toEqual([older])
  })

  it('has in it a ball that was on its way when it was left', () => {
    const rolling = weighed(press(playing(), 'enter'), false)
    const interrupted = press(reduce(rolling, { type: 'command', command: 'help' }), 't')
    expect(interrupted.kept[0]?.throws).toBe(1)
  })
})

describe('a throw being kept', () => {
  it('shows nothing of its result before it is on the disk, whatever is pressed', () => {
    const rolling = weighed(press(playing(), 'enter'), false)
    let waiting = rolling
    for (let i = 0; i < ROLL_FRAMES + 3; i++) waiting = reduce(waiting, { type: 'tick' })
    expect(waiting).toBe(rolling)
    waiting = press(waiting, 'space')
    const { stage } = playIn(waiting)
    expect(stage.kind === 'rolling' && stage.frame).toBe(0)
    expect(blockOf(playIn(waiting)).throws).toHaveLength(0)
    if (stage.kind !== 'rolling') return
    const kept = reduce(waiting, { type: 'kept', next: stage.next })
    expect(playIn(kept).stage.kind).toBe('deciding')
    expect(blockOf(playIn(kept)).throws).toHaveLength(1)
  })

  it('is not made where it cannot be kept: that is said in one line, nothing of it is shown, and it can be thrown again', () => {
    const waiting = press(weighed(press(playing(), 'enter'), false), 'x')
    const { stage } = playIn(waiting)
    if (stage.kind !== 'rolling') throw new Error('no ball rolls')
    // The longest reason there is.
    const sentence = 'a file stands where a folder should be.'
    const refused = reduce(waiting, { type: 'not-kept', next: stage.next, sentence })
    expect(playIn(refused).stage.kind).toBe('deciding')
    expect(blockOf(playIn(refused)).throws).toHaveLength(0)
    expect(refused.notice).toMatch(/^Not kept, so not thrown: .* Throw again\.$/)
    expect(refused.notice.length).toBeLessThanOrEqual(78)
    const again = weighed(press(refused, 'enter'))
    expect(blockOf(playIn(again)).throws.length + (playIn(again).stage.kind === 'rolling' ? 1 : 0)).toBe(1)
    expect(again.notice).toBe('')
  })
})

describe('the end of a block', () => {
  const throwOnce = (state: AppState) => press(weighed(press(state, 'enter')), 'space')

  it('comes after ten frames and leads to the debrief', () => {
    let state = playing()
    let throws = 0
    while (playIn(state).stage.kind === 'deciding' && throws++ < 25) state = throwOnce(state)
    expect(playIn(state).stage.kind).toBe('done')
    expect(blockOf(playIn(state)).balls[0]).toHaveLength(10)
    const debrief = press(state, 'enter')
    expect(debrief.screen.kind).toBe('debrief')
    expect(homeEntries(press(debrief, 'escape'))).toContain('debrief')
    // Whoever passes the debrief over can still look back without the block being played again.
    expect(press(state, 'escape').finished).toBe(playIn(state))
  }, 60_000)

  it('can be brought about early, if asked twice', () => {
    const once = throwOnce(playing())
    expect(press(once, 'e', 'escape').screen).toEqual(once.screen)
    expect(press(once, 'e', 'enter').screen.kind).toBe('debrief')
  })

  it('steps through the throws within bounds and finds the costly ones', () => {
    let state = playing()
    for (const keys of [['t', 'up'], ['t', 'up', 'up', 'up'], []]) {
      if (blockOf(playIn(state)).standing !== FULL_RACK) state = throwOnce(state)
      state = throwOnce(press(state, ...keys))
    }
    // The player's own account comes first and can be passed over.
    let debrief = press(state, 'e', 'enter', 'escape')
    const at = (now: AppState) => (now.screen.kind === 'debrief' ? now.screen.debrief.chosen : -1)
    const count = playIn(state).grades.length
    for (let i = 0; i < count + 3; i++) debrief = press(debrief, 'right')
    expect(at(debrief)).toBe(count - 1)
    for (let i = 0; i < count + 3; i++) debrief = press(debrief, 'left')
    expect(at(debrief)).toBe(0)
    const costly = press(debrief, 'n')
    expect(playIn(state).grades[at(costly)]?.givenAwayPins).toBeGreaterThan(0.5)
    let running = press(debrief, 'p')
    for (let i = 0; i < count + 3; i++) running = reduce(running, { type: 'ran-on' } satisfies Action)
    expect(at(running)).toBe(count - 1)
    expect(running.screen.kind === 'debrief' && running.screen.debrief.running).toBe(false)
  })
})

describe('help', () => {
  it('opens over any screen, leaves it untouched, and closes by ? or Esc', () => {
    for (const state of [home, press(home, 'enter'), press(playing(), 'up')]) {
      const open = press(state, '?')
      expect(open.help?.page).toBe('keys')
      expect(press(open, 'up', 'enter', 'x').screen).toBe(state.screen)
      expect(press(open, '?').help).toBeNull()
      expect(press(open, 'tab').help?.page).toBe('words')
      expect(press(open, 'escape').screen).toBe(state.screen)
    }
  })
})
