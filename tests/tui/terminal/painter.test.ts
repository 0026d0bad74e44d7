import { EventEmitter } from 'node:events'
import xterm from '@xterm/headless'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { createPainter } from '../../../src/tui/terminal/painter.js'
import { fakeTerminal } from './fake-terminal.js'

const clear = '\u001B[2J'

/** What shows in every cell: the character with its colours and weight, of a blank only what shows on one. */
async function cellsOn(emulator: xterm.Terminal): Promise<string[]> {
  await new Promise<void>((done) => emulator.write('', done))
  const cells: string[] = []
  for (let y = 0; y < emulator.rows; y++) {
    const line = emulator.buffer.active.getLine(y)!
    for (let x = 0; x < emulator.cols; x++) {
      const cell = line.getCell(x)!
      const glyph = cell.getChars() || ' '
      const ground = [cell.getBgColorMode(), cell.getBgColor(), cell.isInverse(), cell.isUnderline()]
      const ink = [cell.getFgColorMode(), cell.getFgColor(), cell.isBold(), cell.isDim()]
      const showsInk = glyph !== ' ' || cell.isInverse() || cell.isUnderline()
      cells.push(`${y},${x} ${JSON.stringify([glyph, cell.getWidth(), ...ground, ...(showsInk ? ink : [])])}`)
    }
  }
  return cells
}

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

  it('leaves the same cells in the same colours as rows written whole onto an empty screen', async () => {
    const styles = [
      '1',
      '2',
      '4',
      '7',
      '38;2;9;8;7',
      '1;38;5;67',
      '48;2;1;2;3',
      '1;38;2;9;8;7;48;5;17',
      '0',
      '',
      '39',
      '22',
      '49',
    ]
    const part = fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom('a', 'b', ' ', '  ', '█', '⠿', '‹') },
      { weight: 2, arbitrary: fc.constantFrom(...styles).map((style) => `\u001B[${style}m`) },
      { weight: 1, arbitrary: fc.constantFrom('日', 'é') },
    )
    const row = fc.array(part, { maxLength: 9 }).map((parts) => `${parts.join('')}\u001B[0m`)
    const frame = fc.array(row, { minLength: 1, maxLength: 4 })
    await fc.assert(
      fc.asyncProperty(fc.array(frame, { minLength: 1, maxLength: 5 }), async (frames) => {
        const painted = new xterm.Terminal({ cols: 20, rows: 5, allowProposedApi: true })
        const target = Object.assign(new EventEmitter(), {
          columns: 20,
          rows: 5,
          write: (data: string) => painted.write(data),
        })
        const painter = createPainter(target)
        frames.forEach((rows, turn) => void (turn % 2 === 0 ? painter.show(rows) : painter.write(rows.join('\n'))))
        const whole = new xterm.Terminal({ cols: 20, rows: 5, allowProposedApi: true })
        frames.at(-1)!.forEach((text, y) => void whole.write(`\u001B[${y + 1};1H${text}`))
        expect(await cellsOn(painted)).toEqual(await cellsOn(whole))
      }),
      { numRuns: 150, seed: 11 },
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
