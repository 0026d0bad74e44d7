import { beforeAll, describe, expect, it } from 'vitest'
import { createPainter } from '../../../src/tui/terminal/painter.js'
import { bare, THEMES } from '../fixtures.js'
import { fakeTerminal } from '../terminal/fake-terminal.js'
import { type Drawn, drawnFrom, everyScreen, SIZES } from './all-screens.js'

let drawn: Drawn
beforeAll(async () => {
  const { home, plays } = await drawnFrom()
  // Screens of like blocks differ in figures only; xterm.js is slow enough that some stand for all.
  const some = <One>(all: readonly One[]) => all.filter((_, index) => index % 9 === 0)
  drawn = { home: { ...home, scenarios: some(home.scenarios) }, plays: [plays[0]!, ...plays.slice(-3)] }
}, 180_000)

// xterm.js judges: what an independent terminal makes of the bytes we send, one screen after the other.
describe.each(THEMES)('every screen on a terminal, %s', (_, theme) => {
  it.each(SIZES)(
    'stands there as it was written, at $columns by $rows',
    async (size) => {
      const terminal = fakeTerminal(size.columns, size.rows)
      const painter = createPainter(terminal)
      for (const [name, rows] of everyScreen(drawn, size, theme)) {
        painter.show(rows)
        const shown = await terminal.screen()
        const meant = Array.from({ length: size.rows }, (_, row) => bare(rows[row] ?? ''))
        // The last cell of the screen is left alone.
        meant[size.rows - 1] = meant[size.rows - 1]!.slice(0, size.columns - 1)
        expect(
          shown.map((row) => row.trimEnd()),
          name,
        ).toEqual(meant.map((row) => row.trimEnd()))
      }
      expect(await terminal.scrollback()).toBe(0)
      painter.close()
    },
    30_000,
  )
})
