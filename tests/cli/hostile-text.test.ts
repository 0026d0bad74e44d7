import { describe, expect, it } from 'vitest'
import { visibleJson, visibleLine } from '../../src/scenarios/files/text/visible-text.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { fixtureServices } from '../tui/fixtures.js'
import { screenLeaks } from '../tui/hostile-screens.js'
import { commandLeaks } from './hostile-commands.js'
import { leakIn, leakOnScreen, PAYLOADS } from './hostile-payloads.js'
import { runCommand } from './in-process.js'

// `npm run study hostile-text` gives all of them to everything; here some go everywhere that is quick.
const SOME = PAYLOADS.filter((_, index) => index % 41 === 0)

describe('a text of a stranger', () => {
  it('is looked for: the judge sees every payload where it is sent raw', () => {
    for (const payload of PAYLOADS) expect(leakIn(`x${payload}y`), JSON.stringify(payload)).not.toBeNull()
    expect(PAYLOADS.length).toBeGreaterThanOrEqual(200)
    expect(leakOnScreen('\u001B[31mred')).not.toBeNull()
  })

  it('shows what is hidden in it, and nothing else is touched', () => {
    for (const payload of PAYLOADS) expect(leakIn(visibleLine(payload)), JSON.stringify(payload)).toBeNull()
    expect(visibleLine('a\u001B[31m\u009Bb\n\t\u202Ec\u{E0041}')).toBe('a\\x1b[31m\\x9bb\\n\\t\\u202ec\\u{e0041}')
    for (const text of ['Ängström, Łódź, 東京, 😀', 'عربي שלום हिन्दी', 'C:\\lanes\\new', '·–—…½'])
      expect(visibleLine(text)).toBe(text)
  })

  it('means the same in JSON', () => {
    for (const payload of PAYLOADS) {
      const text = visibleJson(JSON.stringify({ [payload]: payload }, null, 2))
      expect(leakIn(text)).toBeNull()
      expect(JSON.parse(text)).toEqual({ [payload]: payload })
    }
  })

  it("forges no line of a message by a line end in an option's value", async () => {
    const { exitCode, err } = await runCommand(['pattern', 'house-forty', '--seed', '\nFORGED: fine'])
    expect([exitCode, leakIn(err)]).toEqual([64, null])
  })

  it('reaches no terminal through any quick command', async () => {
    const leaks = await Promise.all(SOME.map((payload) => commandLeaks(payload, false)))
    expect(leaks.flat()).toEqual([])
  })

  it('reaches no terminal through any screen', async () => {
    const home = await startingState(undefined, fixtureServices())
    for (const payload of SOME) expect(await screenLeaks(home, payload, 2)).toEqual([])
  })
})
