import { beforeAll, describe, expect, it } from 'vitest'
import type { Scenario } from '../../../src/scenarios/files/scenario/scenario.js'
import { noNotes } from '../../../src/scenarios/store/block-notes.js'
import { startingBag } from '../../../src/tui/forms/ball-form.js'
import { startingBowler } from '../../../src/tui/forms/bowler-form.js'
import { commandFor } from '../../../src/tui/keys/keys.js'
import { type Action, type AppState, keyContext } from '../../../src/tui/state/app-state.js'
import { homeEntries } from '../../../src/tui/state/home-entries.js'
import { blockOf, type PlayState } from '../../../src/tui/state/play-state.js'
import { reducer } from '../../../src/tui/state/reduce.js'
import { startBlock } from '../../../src/tui/state/start.js'
import { startingState } from '../../../src/tui/state/starting-state.js'
import { fixtureServices, madeUpAccount, madeUpGrade, shortScenario } from '../fixtures.js'

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

function playIn(state: AppState): PlayState {
  if (state.screen.kind !== 'play' && state.screen.kind !== 'debrief') throw new Error(state.screen.kind)
  return state.screen.play
}

const debriefIn = (state: AppState) => {
  if (state.screen.kind !== 'debrief') throw new Error(state.screen.kind)
  return state.screen.debrief
}

/** Throws what is decided; the grade comes with it where the mode is a drill. */
function thrown(state: AppState): AppState {
  const weighing = press(state, 'enter')
  const { decision, mode } = playIn(weighing)
  const block = blockOf(playIn(weighing))
  const grade = mode === 'drill' ? madeUpGrade(block, decision) : undefined
  const next = services.advance(block, decision)
  return press(reduce(reduce(weighing, { type: 'weighed', grade, next }), { type: 'kept', next }), 'space')
}

describe('calling the reaction', () => {
  it('is kept with the throw it was made for, and asked anew for the next', () => {
    const called = press(startBlock(home, scenario, 'call', services), 'c', 'right', 'up', 'enter')
    expect(playIn(called).call).toEqual({ contact: 'high', confidencePercent: 80 })
    const after = thrown(called)
    expect(playIn(after).calls).toEqual([{ contact: 'high', confidencePercent: 80 }])
    expect(playIn(after).call).toBeNull()
    expect(playIn(thrown(after)).calls).toEqual([{ contact: 'high', confidencePercent: 80 }, null])
  })

  it('stays within its words and can be taken back', () => {
    const open = press(startBlock(home, scenario, 'call', services), 'c')
    const ends = press(open, ...new Array(9).fill('left'), ...new Array(9).fill('down'))
    expect(playIn(ends).call).toEqual({ contact: 'gutter', confidencePercent: 50 })
    expect(playIn(press(open, 'x')).call).toBeNull()
    expect(keyContext(press(open, 'escape'))).toBe('play')
  })

  it('says why there is none at a spare', () => {
    let state = startBlock(home, scenario, 'call', services)
    for (let i = 0; i < 8 && blockOf(playIn(state)).standing === 1023; i++) state = thrown(state)
    expect(playIn(press(state, 'c')).notice).toMatch(/first balls only/)
  })
})

describe('how sure one could be', () => {
  it('is told after a choice, in a drill only', () => {
    const drill = startBlock(home, scenario, 'sure', services)
    expect(playIn(press(drill, 'o')).notice).toMatch(/after a choice/)
    expect(keyContext(press(thrown(drill), 'o'))).toBe('belief')
    const test = thrown(startBlock(home, scenario, 'sure', services, 'test'))
    expect(playIn(press(test, 'o')).notice).toMatch(/debrief/)
  })
})

describe('the own account', () => {
  const ended = (mode: 'drill' | 'block', keys: string[]) => {
    const state = thrown(press(startBlock(home, scenario, 'own', services, mode), ...keys))
    return press(state, 'e', 'enter')
  }

  it('is asked of dear choices before anything of ours, and kept', () => {
    const asking = ended('drill', ['t', 'up', 'up', 'up'])
    expect(keyContext(asking)).toBe('own-account')
    const given = press(asking, 'down', 'enter')
    expect(playIn(given).ownFindings).toEqual([{ throwIndex: 0, finding: 'wrong-ball' }])
    expect(debriefIn(given).view).toBe('findings')
    expect(keyContext(given)).toBe('debrief')
  })

  it('waits until every choice is weighed, where grades are held back', () => {
    const waiting = ended('block', ['t', 'up', 'up', 'up'])
    expect(debriefIn(waiting).own?.throws).toEqual([])
    expect(press(waiting, 'enter').screen).toEqual(waiting.screen)
    const block = blockOf(playIn(waiting))
    const account = madeUpAccount(block)
    const whole = reduce(waiting, {
      type: 'accounted',
      block,
      step: { done: 1, of: 1, latest: account.throws[0]! },
    })
    expect(debriefIn(whole).own?.throws).toEqual([0])
    expect(debriefIn(press(waiting, 'escape')).own).toBeNull()
  })

  it('takes no account of another block', () => {
    const waiting = ended('block', [])
    const other = blockOf(playIn(startBlock(home, scenario, 'other', services)))
    const step = { done: 1, of: 1, latest: madeUpAccount(blockOf(playIn(waiting))).throws[0]! }
    expect(reduce(waiting, { type: 'accounted', block: other, step })).toBe(waiting)
  })
})

describe('what if', () => {
  it('changes a copy of the choice and leaves the block alone', () => {
    const looking = press(thrown(startBlock(home, scenario, 'if', services)), 'e', 'enter', 'escape')
    const trying = press(looking, 'i', 'up', ']', 'h', '2')
    expect(keyContext(trying)).toBe('what-if')
    const trial = debriefIn(trying).whatIf!
    expect(trial.lab.decision).not.toEqual(blockOf(playIn(trying)).throws[0]!.decision)
    expect(playIn(trying).states).toBe(playIn(looking).states)
    expect(debriefIn(press(trying, 'enter', 'b', 'e')).whatIf?.lab.stage.kind).toBe('deciding')
    expect(debriefIn(press(trying, 'escape')).whatIf).toBeNull()
  })
})

describe('the kit', () => {
  it('grows by a ball from the form, refuses an illegal one, and takes changes back', () => {
    const kit = press({ ...home, screen: { kind: 'kit', cursor: 0 } }, 'enter')
    expect(keyContext(kit)).toBe('form')
    const named = press(kit, 'N', 'e', 'w', 'enter')
    expect(named.kit.bag.map(({ name }) => name)).toEqual(['New'])
    const weight = press({ ...home, screen: { kind: 'kit', cursor: 0 } }, 'enter', 'down', 'down', 'down', 'down')
    const refused = press(weight, '4', '0', 'enter')
    expect(refused.screen.kind === 'ball' && refused.screen.form.faults.join()).toMatch(/16/)
    expect(refused.kit.bag).toEqual([])
    expect(press(refused, 'escape').kit.bag).toEqual([])
    expect(press(named, 'u').kit.bag).toEqual([])
  })

  it('starts from the library, loses a ball by x and gets it back by u', () => {
    const taken = press({ ...home, screen: { kind: 'kit', cursor: 1 } }, 'enter')
    expect(taken.kit.bag).toHaveLength(6)
    const less = press(taken, 'x')
    expect(less.kit.bag).toEqual(startingBag().slice(1))
    expect(press(less, 'u').kit.bag).toHaveLength(6)
  })

  it('can be chosen when a block is started', () => {
    const [, weak] = startingBag()
    const state = { ...home, kit: { bag: [weak!], bowler: startingBowler('left') } }
    const playing = press(state, 'enter', 'enter', 'down', 'left', 'm', 'enter')
    const { setup } = blockOf(playIn(playing))
    expect(setup.bag.map(({ id }) => id)).toEqual([weak!.id])
    expect(setup.bowler.hand).toBe('left')
    expect(playIn(playing).mode).toBe('block')
    expect(press(home, 'enter', 'enter', 'b').notice).toMatch(/no bag of your own/)
  })
})

describe('settings', () => {
  it('change under the hand and show in the next block', () => {
    const changed = press({ ...home, screen: { kind: 'settings', cursor: 0 } }, 'right', 'right', 'down', 'left')
    expect(changed.settings).toMatchObject({ mode: 'test', hand: 'left' })
    const playing = press(changed, 'escape', 'enter', 'enter', 'enter')
    expect(playIn(playing).mode).toBe('test')
    expect(blockOf(playIn(playing)).setup.bowler.hand).toBe('left')
  })
})

describe('past blocks', () => {
  const block = {
    path: '/r/1.json',
    name: 'house-forty',
    title: 'T',
    seed: 's',
    bowledAt: new Date(0),
    throws: 1,
    games: [9],
    frames: 1,
    isOwn: true,
    kind: 'block' as const,
  }
  const listed = () => {
    const past = { ...home, hasPast: true }
    const cursor = homeEntries(past).indexOf('past')
    const open = press({ ...past, screen: { kind: 'home', cursor } }, 'enter')
    return reduce(open, { type: 'past-read', blocks: [block] })
  }

  it('are offered where there are any, and open in the debrief', () => {
    expect(homeEntries({ ...home, hasPast: true })).toContain('past')
    const opening = press(listed(), 'enter')
    expect(opening.screen.kind === 'past' && opening.screen.opening).toBe('/r/1.json')
    const begun = services.begin(scenario, 'past')
    const states = [begun, services.advance(begun, services.view(begun)!.suggestion)]
    const played = { scenario, states, notes: noNotes('block'), recordPath: block.path }
    const opened = reduce(opening, { type: 'past-opened', path: block.path, played })
    expect(opened.screen.kind).toBe('debrief')
    expect(playIn(opened).recordPath).toBe(block.path)
    // An answer that comes when something else is on screen changes nothing.
    expect(reduce(home, { type: 'past-opened', path: block.path, played } satisfies Action)).toBe(home)
  })

  it('open at once where they were just looked back on, with all that was worked out', () => {
    const begun = services.begin(scenario, 'past')
    const states = [begun, services.advance(begun, services.view(begun)!.suggestion)]
    const account = madeUpAccount(states[1]!)
    const grades = account.throws.map(({ graded }) => graded?.grade ?? null)
    const played = { scenario, states, notes: noNotes('block'), recordPath: block.path, worked: { grades, account } }
    const opened = reduce(press(listed(), 'enter'), { type: 'past-opened', path: block.path, played })
    expect(playIn(opened)).toMatchObject({ account, grades })
    const again = press({ ...listed(), finished: opened.finished }, 'enter')
    expect(again.screen.kind).toBe('debrief')
    expect(playIn(again)).toBe(opened.finished)
  })

  it('say why one cannot be opened', () => {
    const refused = reduce(press(listed(), 'enter'), { type: 'past-refused', sentence: 'It differs.' })
    expect(refused.notice).toBe('It differs.')
    expect(refused.screen.kind === 'past' && refused.screen.opening).toBeNull()
  })
})

describe('the guided first frame', () => {
  it('opens for one who has never been here, guides by what is done, and ends with the frame', async () => {
    const first = await startingState(undefined, fixtureServices({ settings: { tour: 'offered' } }))
    expect(playIn(first).tour).toBe(0)
    let state = press(first, 'up')
    expect(playIn(state).tour).toBe(1)
    for (let i = 0; i < 3 && playIn(state).stage.kind === 'deciding'; i++) state = thrown(state)
    expect(playIn(state).stage.kind).toBe('done')
    expect(playIn(state).tour).toBe(4)
    expect(press(state, 'enter').screen.kind).toBe('debrief')
  })

  it('is left by Esc for good, offers nothing to continue, and comes back from help', async () => {
    const first = await startingState(undefined, fixtureServices({ settings: { tour: 'offered' } }))
    const left = press(thrown(first), 'escape')
    expect(left.screen.kind).toBe('home')
    expect(left.settings.tour).toBe('seen')
    expect(homeEntries(left)).not.toContain('continue')
    expect(playIn(press(left, '?', 't')).tour).toBe(0)
    expect(commandFor('help', 't')).toBe('tour')
  })

  it('keeps a block it interrupts', () => {
    const interrupted = press(thrown(startBlock(home, scenario, 'kept', services)), '?', 't', 'escape')
    expect(homeEntries(interrupted)[0]).toBe('continue')
  })
})
