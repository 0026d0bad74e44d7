import { afterEach, describe, expect, it, vi } from 'vitest'
import { areaAt, clickable, takeHits } from '../../src/tui/draw/hits.js'
import { startBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { tokenise } from '../../src/tui/terminal/key-tokens.js'
import { fixtureServices, shortScenario } from './fixtures.js'
import { type Mounted, mountTrainer } from './mounted.js'

const open: Mounted[] = []
afterEach(() => {
  for (const sitting of open.splice(0)) sitting.close()
})

async function sit(mouse: 'on' | 'off', onLane: boolean) {
  const services = fixtureServices({ settings: { mouse } })
  const home = await startingState(undefined, services)
  const initial = onLane ? startBlock(home, await shortScenario(), 'mouse', services) : home
  const sitting = mountTrainer({ services, initial })
  open.push(sitting)
  await sitting.until(onLane ? 'Enter throw' : 'New block')
  /** Presses the left button on the first place a text stands, as xterm reports it. */
  const click = async (text: string, columnsIn = 1) => {
    const rows = (await sitting.screen()).split('\n')
    const row = rows.findIndex((one) => one.includes(text))
    const column = rows[row]!.indexOf(text) + columnsIn
    sitting.type(`\u001B[<0;${column + 1};${row + 1}M\u001B[<0;${column + 1};${row + 1}m`)
  }
  return { ...sitting, click }
}

describe('the mouse', () => {
  // xterm, control sequences, "SGR (1006)": CSI < button ; column ; row M for a press and m for a release.
  it('is heard in presses and not in releases', () => {
    expect(tokenise('\u001B[<0;5;7M\u001B[<0;5;7m').tokens).toEqual([{ kind: 'mouse', button: 0, column: 4, row: 6 }])
  })

  it('is off unless it is wanted, and given back to the terminal at the end', async () => {
    const off = await sit('off', false)
    expect(off.terminal.written.join('')).not.toContain('\u001B[?1000h')
    const on = await sit('on', false)
    expect(on.terminal.written.join('')).toContain('\u001B[?1000h\u001B[?1006h')
  })

  it('goes to an entry by one click and opens it by the next', async () => {
    const { click, until } = await sit('on', false)
    await click('Settings')
    await until('▸ Settings')
    await click('Settings')
    await until('kept as they are changed')
    await click('Motion')
    await until('‹ ball and pins move ›')
    await click('ball and pins move')
    await until('‹ nothing moves ›')
  })

  it('goes to a field, and picks target and slide on the lane by the boards its rows are labelled with', async () => {
    const { click, until, screen } = await sit('on', true)
    await click('Speed')
    await until('‹ usual ›')
    const labelled = /\n *(1\d)│/.exec(await screen())![1]!
    await click(`${labelled}│`, 30)
    await until(`‹ ${labelled} ›`)
    const higher = /\n *(2\d)│/.exec(await screen())![1]!
    await click(`${higher}│`, 5)
    await until(new RegExp(`‹ ${higher} › +${labelled}`))
  })

  it('turns the wheel as the arrows', async () => {
    const { type, until } = await sit('on', false)
    type('\u001B[<65;3;3M')
    await until('▸ Lane of the day')
    type('\u001B[<64;3;3M')
    await vi.waitFor(() => until('▸ New block'))
  })
})

describe('what can be clicked', () => {
  it('is taken out of a row before it is drawn, styles left where they are', () => {
    const row = `a\u001B[1m${clickable('bcd', { kind: 'tab', place: 2 })}\u001B[0m e${clickable('f', { kind: 'lane', board: 17, left: 4, columns: 60 })}`
    const { rows, areas } = takeHits(['', row])
    expect(rows[1]).toBe('a\u001B[1mbcd\u001B[0m ef')
    expect(areaAt(areas, 1, 1)?.hit).toEqual({ kind: 'tab', place: 2 })
    expect(areaAt(areas, 4, 1)).toBeNull()
    expect(areaAt(areas, 6, 1)?.hit).toEqual({ kind: 'lane', board: 17, left: 4, columns: 60 })
    expect(areaAt(areas, 1, 0)).toBeNull()
  })
})
