import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readAppearance } from '../../../src/tui/terminal/colour.js'
import { clipRow, columnsOf, fitRow, wrapWords } from '../../../src/tui/terminal/fit.js'

const styled = fc
  .array(fc.constantFrom('a', ' ', '\u001B[38;5;67m', '\u001B[0m', '█', '⠿', '日', '•'), { maxLength: 40 })
  .map((parts) => parts.join(''))

describe('fitting rows', () => {
  it('fits any styled row to exactly the columns asked', () => {
    fc.assert(
      fc.property(styled, fc.integer({ min: 0, max: 30 }), (row, columns) => {
        expect(columnsOf(fitRow(row, columns))).toBe(columns)
        expect(columnsOf(clipRow(row, columns))).toBeLessThanOrEqual(columns)
      }),
      { seed: 3 },
    )
  })

  it('wraps words and loses none that fit', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,9}$/), { maxLength: 20 }), (words) => {
        const rows = wrapWords(words.join(' '), 10)
        expect(rows.join(' ').split(' ').filter(Boolean)).toEqual(words)
        for (const row of rows) expect(row.length).toBeLessThanOrEqual(10)
      }),
      { seed: 5 },
    )
  })

  it('ends no row between a figure and its unit, or a word and the figure it names', () => {
    expect(wrapWords('comes in at 17.1 (pocket 26 %).', 24)).toEqual(['comes in at 17.1 (pocket', '26 %).'])
    expect(wrapWords('it came in light at 13.4 mph', 24)).toEqual(['it came in light at', '13.4 mph'])
    expect(wrapWords('asymmetric hybrid, slide 21.5', 25)).toEqual(['asymmetric hybrid,', 'slide 21.5'])
    expect(wrapWords('slide 21.5', 6)).toEqual(['slide', '21.5'])
  })
})

describe('reading what a terminal can show', () => {
  // NO_COLOR: any non-empty value switches colour off (no-color.org).
  it.each([
    [{ NO_COLOR: '1', FORCE_COLOR: '3', COLORTERM: 'truecolor' }, 'none'],
    [{ NO_COLOR: '', COLORTERM: 'truecolor' }, 'true'],
    [{ TERM: 'xterm-256color' }, 'palette'],
    [{ TERM: 'xterm' }, 'sixteen'],
    [{ TERM: 'dumb' }, 'none'],
  ])('%j gives depth %s', (environment, depth) => {
    expect(readAppearance(environment).depth).toBe(depth)
  })

  it.each([
    [{ LANG: 'en_GB.UTF-8' }, 'unicode'],
    [{ LANG: 'C' }, 'ascii'],
    [{ LC_ALL: 'C.UTF-8' }, 'unicode'],
    [{ TERM: 'linux', LANG: 'en_GB.UTF-8' }, 'ascii'],
    [{ DRYBOARD_ASCII: '1' }, 'ascii'],
  ])('%j gives %s characters', (environment, characters) => {
    expect(readAppearance(environment).characters).toBe(characters)
  })
})
