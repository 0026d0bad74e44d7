import { EventEmitter } from 'node:events'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { runTrainer } from '../../src/tui/app.js'
import { type Theme, themeFor } from '../../src/tui/draw/theme.js'
import type { Mode } from '../../src/tui/notes.js'
import { startBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { createKeyReader } from '../../src/tui/terminal/key-reader.js'
import { createPainter } from '../../src/tui/terminal/painter.js'
import { type FixtureServices, fixtureServices, PLAIN, shortScenario } from './fixtures.js'
import { type Mounted, mountTrainer } from './mounted.js'
import { fakeTerminal } from './terminal/fake-terminal.js'

interface Sitting extends Mounted {
  services: FixtureServices
  /** Waits until a text stands on the emulated screen. */
  until(text: string | RegExp): Promise<string>
}

const open: Sitting[] = []
afterEach(() => {
  for (const sitting of open.splice(0)) sitting.close()
})

async function sit({
  playing,
  mode,
  ...parts
}: {
  columns?: number
  rows?: number
  playing?: boolean
  noMotion?: boolean
  mode?: Mode
  theme?: Theme
} = {}): Promise<Sitting> {
  const services = fixtureServices()
  const home = await startingState(undefined, services)
  const initial = playing ? startBlock(home, await shortScenario(), 'sitting', services, mode) : home
  const mounted = mountTrainer({ ...parts, services, initial })
  const until = (text: string | RegExp) =>
    vi.waitFor(
      async () => {
        const now = await mounted.screen()
        expect(now).toMatch(text)
        return now
      },
      { timeout: 8000, interval: 20 },
    )
  const sitting = { ...mounted, services, until }
  open.push(sitting)
  return sitting
}

const COLOURFUL = themeFor({ depth: 'true', characters: 'unicode' })
const SENT_CLEAR_SCROLLBACK = '\u001B[3J'

describe('the trainer on a terminal', () => {
  it('reaches the first decision in three keys and fills 24 rows', async () => {
    const { type, until, screen, terminal } = await sit()
    await until('New block')
    type('\r')
    await until('choose the lanes')
    type('\r')
    await until('choose who bowls')
    type('\r')
    await until('by rule of thumb')
    const rows = (await screen()).split('\n')
    expect(rows).toHaveLength(24)
    expect(rows[23]).toContain('throw')
    expect(terminal.written.join('')).not.toContain(SENT_CLEAR_SCROLLBACK)
  })

  it('shows the grade while the ball rolls and the result after', async () => {
    const { type, until } = await sit({ playing: true })
    await until('Enter throw')
    type('t,')
    await until('12.5')
    type('\r')
    const rolling = await until('on its way')
    expect(rolling).toMatch(/Gave away \d+\.\d pins?, by what could be known/)
    expect(rolling).not.toContain('Seen:')
    type('x')
    const seen = await until('Seen:')
    expect(seen).toMatch(/Gave away/)
    expect(seen).toMatch(/Frame (1, ball 2|2, ball 1)/)
  })

  it('rolls by itself to the result, and then holds still: nothing is drawn and no timer runs', async () => {
    const { type, until, terminal, services } = await sit({ playing: true })
    await until('Enter throw')
    type('\r')
    await until('Seen:')
    await vi.waitFor(() => expect(services.keptThrows.at(-1)?.block.throws).toHaveLength(1))
    const before = terminal.written.length
    const timers = () => process.getActiveResourcesInfo().filter((name) => name === 'Timeout').length
    const running = timers()
    await new Promise((done) => setTimeout(done, 400))
    expect(terminal.written.length).toBe(before)
    // Vitest keeps a timer of its own for the time limit; none of ours may come on top.
    expect(running).toBeLessThanOrEqual(1)
  })

  it('draws no ball on its way where motion is unwanted, but the grade still comes first', async () => {
    const { type, until, terminal } = await sit({ playing: true, noMotion: true })
    await until('Enter throw')
    type('\r')
    await until('on its way')
    const written = terminal.written.length
    await new Promise((done) => setTimeout(done, 300))
    expect(terminal.written.length).toBe(written)
    await until('Seen:')
  })

  it('takes a ball out of the bag by ink-select-input', async () => {
    const { type, until } = await sit({ playing: true })
    await until('Enter throw')
    type('b')
    await until('The bag')
    type('\u001B[B\u001B[B')
    await until('▸ 3 asymmetric hybrid')
    type('\r')
    const after = await until('‹ 3 asymmetric hybrid ›')
    expect(after).not.toContain('on its way')
  })

  it('hears keys typed faster than it draws, one by one', async () => {
    const { type, until } = await sit({ playing: true })
    await until(/Feet/)
    const feet = Number((await until(/‹ (\d+) ›/)).match(/‹ (\d+) ›/)![1])
    type('kkkkkkkkkk')
    await until(`‹ ${feet + 10} ›`)
    type('\u007f\u007f\u007f')
    await until(`‹ ${feet + 7} ›`)
  })

  it('asks for a larger terminal when it is too small, and loses nothing', async () => {
    const { type, until, terminal, screen } = await sit({ playing: true })
    await until('Enter throw')
    const feet = Number((await until(/‹ (\d+) ›/)).match(/‹ (\d+) ›/)![1])
    type('[')
    const decided = await until(`‹ ${feet + 2} ›`)
    terminal.resizeTo(79, 24)
    await until('needs 80 by 24')
    type('\r[[[')
    await new Promise((done) => setTimeout(done, 100))
    terminal.resizeTo(80, 24)
    await until('Enter throw')
    await vi.waitFor(async () => expect(await screen()).toBe(decided))
  })

  it('uses the room of a large terminal', async () => {
    const { type, until, terminal } = await sit({ playing: true, columns: 120, rows: 40 })
    await until('Enter throw')
    type('\rx')
    await until('Seen:')
    const rows = await terminal.screen()
    expect(rows).toHaveLength(40)
    expect(rows.filter((row) => row.includes('│')).length).toBeGreaterThanOrEqual(23)
    expect(rows.join('\n')).toContain('Standing')
    terminal.resizeTo(100, 30)
    await until('Enter throw')
    expect((await terminal.screen()).every((row) => row.length <= 100)).toBe(true)
  })

  it('lifts the oil at the end and steps through the throws', async () => {
    const { type, until } = await sit({ playing: true })
    await until('Enter throw')
    type('\rx')
    await until('Seen:')
    type('e')
    await until('lift the oil?')
    type('\r')
    // A choice that was dear is asked about first.
    await until(/Your account first|Fair /)
    type('\u001B')
    const debrief = await until('Fair ')
    expect(debrief).toContain('The oil lifted')
    expect(debrief).toContain('Entry board')
    type('w')
    await until('oil gone so far')
    type('w')
    await until('as you saw it')
  })

  it('is redrawn whole when the terminal changes in mid-throw, and the throw goes on', async () => {
    const { type, until, terminal } = await sit({ playing: true })
    await until('Enter throw')
    type('\r')
    await until('on its way')
    terminal.resizeTo(120, 40)
    await until('Standing')
    terminal.resizeTo(60, 20)
    await until('needs 80 by 24')
    terminal.resizeTo(100, 30)
    await until('Seen:')
    const rows = await terminal.screen()
    expect(rows).toHaveLength(30)
    expect(rows.at(-1)).toContain('throw')
  })

  it('takes a paste, unmapped control keys and sequences for nothing at all', async () => {
    const { type, until, screen } = await sit({ playing: true })
    const before = await until('Enter throw')
    type('\u001B[200~qq\re\r\u001B[201~')
    type('\u0001\u000E\u001B[1;5P\u001B[15~\u001C\u001D')
    await new Promise((done) => setTimeout(done, 150))
    expect(await screen()).toBe(before)
  })

  it('takes a paste into the line of a form', async () => {
    const { type, until, services } = await sit()
    await until('New block')
    type('j\r')
    await until('Start from the library bag')
    type('\r')
    await until('‹')
    type('\u001B[200~Old faith\r\nful\u001B[201~')
    await until('Old faithful_')
    type('\r')
    await vi.waitFor(() => expect(services.keptKits.at(-1)?.bag[0]?.name).toBe('Old faithful'))
  })

  it('holds its grades back in a test, and tells them in the debrief', async () => {
    const { type, until } = await sit({ playing: true, mode: 'test' })
    await until('Enter throw')
    type('t.\r')
    expect(await until('on its way')).not.toMatch(/Gave away|Nothing given away/)
    type('x')
    await until('Grades come in the debrief')
    type('e\r')
    await until(/Your account first|Given away/)
  })

  it('keeps settings as they are changed', async () => {
    const { type, until, services } = await sit()
    await until('New block')
    type('jj\r')
    await until('kept as they are changed')
    type('jjj\u001B[C')
    await until('nothing moves')
    await vi.waitFor(() => expect(services.keptSettings.at(-1)?.motion).toBe('off'))
  })

  it('closes with code 0 by q', async () => {
    const { type, until, exit } = await sit({ playing: true })
    await until('Enter throw')
    type('q')
    expect(await exit).toBe(0)
  })

  it('keeps each throw once, and files a finished block once however often it is looked at', async () => {
    const { type, until, services } = await sit({ playing: true })
    await until('Enter throw')
    type('\rx')
    await until('Seen:')
    type('e')
    await until('lift the oil?')
    type('\r')
    await until('Your account first')
    type('\u001B')
    await until('The oil lifted')
    type('\u001B')
    await until('Look back')
    type('j\r')
    await until('Your account first')
    expect([services.keptThrows.length, services.filed.length]).toEqual([1, 1])
    // The grades are kept with the record, and the account once it is whole: here it was so at once.
    expect(services.keptWorked.at(-1)?.worked.account?.throws).toHaveLength(1)
    expect(services.keptWorked.at(-1)?.worked.grades).toHaveLength(1)
  })

  it('ends with the fault when a screen cannot be drawn, instead of a blank screen', async () => {
    const terminal = fakeTerminal()
    const source = Object.assign(new EventEmitter(), { setEncoding() {}, resume() {}, pause() {} })
    const services = {
      ...fixtureServices(),
      levels: () => {
        throw new Error('no levels today')
      },
    }
    const keys = createKeyReader(source, { onInterrupt: () => {} })
    const initial = await startingState(undefined, services)
    const running = runTrainer({
      painter: createPainter(terminal),
      keys,
      services,
      theme: PLAIN,
      initial,
      noMotion: true,
    })
    const failed = expect(running).rejects.toThrow('no levels today')
    await vi.waitFor(async () => expect((await terminal.screen()).join()).toContain('New block'))
    source.emit('data', '\r')
    await vi.waitFor(async () => expect((await terminal.screen()).join()).toContain('choose the lanes'))
    source.emit('data', '\r')
    await failed
  })

  // Budget: 16 ms and 1.5 kB a picture at 80 by 24, in true colours, the longest; threefold slack in time for a loaded machine.
  it('draws a whole throw within its budget, picture by picture', async () => {
    const { type, until, terminal } = await sit({ playing: true, theme: COLOURFUL })
    await until('Enter throw')
    for (let throws = 0; throws < 3; throws++) {
      terminal.written.length = 0
      const before = process.cpuUsage()
      type('\r')
      await until('on its way')
      await until('Seen:')
      const { user, system } = process.cpuUsage(before)
      const sizes = terminal.written.map((data) => Buffer.byteLength(data))
      expect(sizes.length).toBeGreaterThan(10)
      expect(Math.max(...sizes)).toBeLessThan(1500)
      expect((user + system) / 1000 / sizes.length).toBeLessThan(48)
    }
  })
})
