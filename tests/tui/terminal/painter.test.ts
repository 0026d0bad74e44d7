import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createPainter } from '../../../src/tui/terminal/painter.js'
import { fakeTerminal } from './fake-terminal.js'

const clear = '\u001B[2J'

describe('painter, judged by the xterm.js emulator', () => {
  it('uses every row of the terminal and never wipes the scrollback', async () => {
    const terminal = fakeTerminal(20, 5)
    const painter = createPainter(terminal)
    for (let turn = 0; turn < 3; turn++) painter.write(`one\ntwo\nthree\nfour\nlast ${turn}`)
    expect(await terminal.screen()).toEqual(['one', 'two', 'three', 'four', 'last 2'])
    expect(terminal.written.join('')).not.toContain('\u001B[3J')
    expect(await terminal.scrollback()).toBe(0)
  })

  it('writes only the rows that changed', () => {
    const terminal = fakeTerminal(20, 5)
    const painter = createPainter(terminal)
    painter.write('alpha\nbeta\ngamma')
    terminal.written.length = 0
    painter.write('alpha\nBETA\ngamma')
    const sent = terminal.written.join('')
    expect(sent).toContain('BETA')
    expect(sent).not.toContain('alpha')
    expect(sent).not.toContain('gamma')
    expect(sent).not.toContain(clear)
    terminal.written.length = 0
    painter.write('alpha\nBETA\ngamma')
    expect(terminal.written).toEqual([])
  })

  // Synchronised output, DEC private mode 2026, as terminals' public specification of it has it.
  it('wraps each update in synchronised output', () => {
    const terminal = fakeTerminal()
    createPainter(terminal).write('x')
    expect(terminal.written).toHaveLength(1)
    expect(terminal.written[0]!.startsWith('\u001B[?2026h')).toBe(true)
    expect(terminal.written[0]!.endsWith('\u001B[?2026l')).toBe(true)
  })

  it('leaves the last cell blank and a full row above it whole', async () => {
    const terminal = fakeTerminal(4, 2)
    createPainter(terminal).write('abcd\nefgh')
    expect(await terminal.screen()).toEqual(['abcd', 'efg'])
    expect(await terminal.scrollback()).toBe(0)
  })

  it('shows the same screen whatever frames came before', async () => {
    const row = fc.string({ unit: 'grapheme-ascii', maxLength: 14 }).map((text) => text.trimEnd())
    const frame = fc.array(row, { minLength: 2, maxLength: 7 })
    await fc.assert(
      fc.asyncProperty(fc.array(frame, { minLength: 1, maxLength: 5 }), async (frames) => {
        const terminal = fakeTerminal(12, 6)
        const painter = createPainter(terminal)
        for (const rows of frames) painter.write(rows.join('\n'))
        const last = frames.at(-1)!
        const expected = Array.from({ length: 6 }, (_, y) => (last[y] ?? '').slice(0, y === 5 ? 11 : 12).trimEnd())
        expect((await terminal.screen()).map((text) => text.trimEnd())).toEqual(expected)
      }),
      { numRuns: 60, seed: 7 },
    )
  })

  it('redraws everything after a resize, at the new size', async () => {
    const terminal = fakeTerminal(10, 3)
    const painter = createPainter(terminal)
    let told = 0
    painter.on('resize', () => told++)
    painter.write('aaaaaaaaaa\nb\nc')
    terminal.resizeTo(6, 4)
    expect(told).toBe(1)
    expect([painter.columns, painter.rows]).toEqual([6, 4])
    painter.write('aaaaaa\nb\nc\nd')
    expect(await terminal.screen()).toEqual(['aaaaaa', 'b', 'c', 'd'])
  })

  it('draws everything afresh when asked', async () => {
    const terminal = fakeTerminal(10, 3)
    const painter = createPainter(terminal)
    painter.write('a\nb')
    terminal.write('\u001B[2Jrubbish')
    painter.repaint()
    expect(await terminal.screen()).toEqual(['a', 'b', ''])
  })

  it('takes a terminal that reports no size for 80 by 24', () => {
    const terminal = fakeTerminal()
    terminal.columns = 0
    terminal.rows = 0
    const painter = createPainter(terminal)
    expect([painter.columns, painter.rows]).toEqual([80, 24])
  })

  it('ignores frames once closed, and cursor switches always', () => {
    const terminal = fakeTerminal()
    const painter = createPainter(terminal)
    painter.write('\u001B[?25h')
    expect(terminal.written).toEqual([])
    painter.close()
    painter.write('late')
    expect(terminal.written).toEqual([])
  })
})
