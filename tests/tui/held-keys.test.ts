import { afterEach, describe, expect, it } from 'vitest'
import { startBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { fixtureServices, shortScenario } from './fixtures.js'
import { type Mounted, mountTrainer } from './mounted.js'

/** A clock that a test sets; the trainer only ever compares two looks at it. */
interface SetClock {
  milliseconds: number
}

const open: Mounted[] = []
afterEach(() => {
  for (const sitting of open.splice(0)) sitting.close()
})

async function sit() {
  const clock: SetClock = { milliseconds: 10_000 }
  const services = fixtureServices({ now: () => clock.milliseconds, settings: { mode: 'drill' } })
  const home = await startingState(undefined, services)
  const sitting = mountTrainer({ services, initial: startBlock(home, await shortScenario(), 'held', services) })
  open.push(sitting)
  await sitting.until('Enter throw')
  const throwsKept = () => services.keptThrows.length
  const settle = () => new Promise((done) => setTimeout(done, 250))
  return { ...sitting, clock, throwsKept, settle }
}

/** The number in the field under the hand: a board, or a ball's place in the bag. */
const board = (screen: string): number => Number(/‹ ([\d.]+) /.exec(screen)?.[1])

describe('keys that cannot hurt', () => {
  it('throws once for an Enter held down, however long it repeats at thirty a second', async () => {
    const { type, clock, until, throwsKept, settle, screen } = await sit()
    for (let repeat = 0; repeat < 60; repeat++) {
      type('\r')
      clock.milliseconds += 33
      await new Promise((done) => setTimeout(done, 5))
    }
    await until('Seen:')
    for (let repeat = 0; repeat < 60; repeat++) {
      type('\r')
      clock.milliseconds += 33
      await new Promise((done) => setTimeout(done, 2))
    }
    await settle()
    expect(throwsKept()).toBe(1)
    expect(await screen()).toContain('held down')
  })

  it('lets an Enter throw again 400 ms after a result, and not before', async () => {
    const { type, press, clock, until, throwsKept, settle } = await sit()
    await press('\r', 'on its way')
    clock.milliseconds += 1000
    await press('\r', 'Seen:')
    clock.milliseconds += 399
    await press('\r', 'press Enter again')
    expect(throwsKept()).toBe(1)
    clock.milliseconds += 200
    await press('\r', 'on its way')
    await settle()
    expect(throwsKept()).toBe(2)
    type(' ')
    await until('Enter throw')
  })

  it('keeps what is typed while the ball rolls, and does it once the result is in', async () => {
    const { press, type, until, screen, throwsKept, settle } = await sit()
    const slide = board(await screen())
    await press('\r', 'on its way')
    type('kkt')
    await settle()
    expect(await screen()).toContain('on its way')
    type(' ')
    await until('Seen:')
    await settle()
    const after = await screen()
    // The field under the hand is the target by now; the slide before it went two boards left.
    expect(after).toMatch(new RegExp(`${slide + 2} +‹`))
    expect(throwsKept()).toBe(1)
  })

  it('skips by Enter without throwing by it, keys typed before it or not', async () => {
    const { press, type, until, settle, throwsKept, screen } = await sit()
    await press('\r', 'on its way')
    type('k\r')
    await until('Seen:')
    await settle()
    expect(throwsKept()).toBe(1)
    expect(await screen()).toContain('Enter throw')
  })

  it('types digits into the field under the hand, and takes them by Enter without throwing', async () => {
    const { press, throwsKept, settle, screen } = await sit()
    await press('21', '‹ 21_ ›')
    await press('\r', '‹ 21 ›')
    await press('t1', '‹ 1_ ›')
    await press('0.5', '‹ 10.5_ ›')
    await press('\t', '10.5')
    await settle()
    expect(throwsKept()).toBe(0)
    await press('f9', '9_')
    await press('9\r', 'can be from board')
    // What cannot be thrown changes nothing.
    expect(await screen()).toContain('‹ 21 ›')
    const ball = board(await press('h', /‹ \d \D/))
    const other = (ball % 6) + 1
    await press(`${other}`, `‹ ${other} `)
  })
})
