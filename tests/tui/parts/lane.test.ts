import { describe, expect, it } from 'vitest'
import { emptyFilm, FILM_BOARDS, FILM_ROWS } from '../../../src/sim/world/lane/film.js'
import {
  AIM_LINE,
  boardOnTrace,
  type LanePicture,
  lanePicture,
  oilLevel,
  TRACE_LINES,
} from '../../../src/tui/parts/lane.js'
import { columnsOf } from '../../../src/tui/terminal/fit.js'
import { bare, PLAIN, THEMES } from '../fixtures.js'

const nothing: LanePicture = { hand: 'right', standing: 0, traces: [] }
const rowsOf = (picture: LanePicture, columns = 79, laneRows = 10) =>
  lanePicture(picture, columns, laneRows, PLAIN).map(bare)
const placeOf = (rows: readonly string[], glyph: string) => {
  const row = rows.findIndex((text) => text.includes(glyph))
  return { row, column: rows[row]?.indexOf(glyph) ?? -1 }
}

describe('lane picture', () => {
  it.each(THEMES)('takes exactly its room (%s)', (_, theme) => {
    for (const [columns, laneRows] of [
      [79, 10],
      [118, 20],
      [130, 26],
    ] as const) {
      const rows = lanePicture(
        { ...nothing, standing: 1023, aim: { laydownBoard: 22, targetBoard: 11 } },
        columns,
        laneRows,
        theme,
      )
      expect(rows).toHaveLength(laneRows + 3)
      for (const row of rows) expect(columnsOf(row)).toBe(columns)
    }
  })

  it('has board 1 at the bottom for a right-hander and at the top for a left-hander', () => {
    const at = (hand: 'right' | 'left', board: number) =>
      placeOf(rowsOf({ ...nothing, hand, breakpoint: { board, feet: 40 } }), '◆').row
    expect([at('right', 1), at('right', 39)]).toEqual([10, 1])
    expect([at('left', 1), at('left', 39)]).toEqual([1, 10])
    expect(at('right', 8)).toBe(11 - at('left', 8))
  })

  it('puts marks at their distance: 60 columns show a foot each', () => {
    const rows = lanePicture({ ...nothing, breakpoint: { board: 20, feet: 42.5 } }, 60 + 4 + 1 + 9, 10, PLAIN).map(bare)
    expect(placeOf(rows, '◆').column - 4).toBe(42)
  })

  it('shows all ten pins, and felled ones otherwise', () => {
    const standing =
      rowsOf({ ...nothing, standing: 1023 })
        .join('')
        .split('●').length - 1
    expect(standing).toBe(10)
    // Pin 7 stands on the bowler's far left, pin 10 on the far right (rule book, numbering of the pins).
    expect(placeOf(rowsOf({ ...nothing, standing: 1 << 6 }), '●').row).toBe(1)
    expect(placeOf(rowsOf({ ...nothing, standing: 1 << 9 }), '●').row).toBe(10)
  })

  it('shows more film by a denser glyph, where it lies, for either hand alike', () => {
    const film = emptyFilm()
    for (let row = 0; row < FILM_ROWS / 2; row++)
      for (let board = 1; board <= FILM_BOARDS; board++)
        film.microns[row * FILM_BOARDS + board - 1] = board > 35 ? 4 : 0.3
    const rows = rowsOf({ ...nothing, oil: film })
    expect(rows[1]).toContain('█')
    expect(rows[10]).toContain('░')
    expect(rows[10]).not.toContain('█')
    expect(rows[1]!.slice(4 + 34, 60).trim()).toBe('')
    expect(rowsOf({ ...nothing, hand: 'left', oil: film })[1]).toContain('█')
  })

  it.each([10, 11, 20, 26])('shows an even sheet evenly and a symmetric one symmetrically (%i rows)', (laneRows) => {
    const even = emptyFilm()
    const crowned = emptyFilm()
    for (let cell = 0; cell < even.microns.length; cell++) {
      const board = (cell % FILM_BOARDS) + 1
      even.microns[cell] = 1
      crowned.microns[cell] = 4 - Math.abs(board - 20) / 4.9
    }
    const oilRows = (film: typeof even) =>
      rowsOf({ ...nothing, oil: film }, 79, laneRows)
        .slice(1, -2)
        .map((row) => row.slice(4, 4 + 8))
    expect(new Set(oilRows(even)).size).toBe(1)
    const crown = oilRows(crowned)
    expect(crown).toEqual([...crown].reverse())
    expect(new Set(crown).size).toBeGreaterThan(2)
  })

  it('never lowers the ramp for more film', () => {
    let level = 0
    for (let microns = 0; microns < 8; microns += 0.01) {
      expect(oilLevel(microns)).toBeGreaterThanOrEqual(level)
      level = oilLevel(microns)
    }
    expect(level).toBe(7)
  })

  it('reads a path between its points and nowhere else', () => {
    const trace = { boards: [20, 18, Number.NaN, 10], firstFeet: 0, stepFeet: 10, look: 'last' } as const
    expect(boardOnTrace(trace, 5)).toBe(19)
    expect(boardOnTrace(trace, 15)).toBeNaN()
    expect(boardOnTrace(trace, 30)).toBe(10)
    expect(boardOnTrace(trace, 45)).toBeNaN()
  })

  it('draws paths and oil by different letters where there are only letters', () => {
    const ascii = THEMES.at(-1)![1].glyphs
    const letters = [AIM_LINE, ...Object.values(TRACE_LINES)]
      .map((line) => line.letter)
      .filter((letter) => letter !== '.')
    for (const letter of letters) expect(ascii.oil).not.toContain(letter)
  })

  it('keeps to twelve colour runs a row while a ball moves over bare lane', () => {
    const straight = (board: number) => Array.from({ length: 61 }, (_, feet) => board - feet / 10)
    const picture: LanePicture = {
      ...nothing,
      standing: 1023,
      traces: (['oldest', 'older', 'last'] as const).map((look, place) => ({
        boards: straight(24 - 5 * place),
        firstFeet: 0,
        stepFeet: 1,
        look,
      })),
      balls: [{ board: 9, feet: 55, look: 'last' }],
    }
    for (const row of lanePicture(picture, 79, 10, THEMES[0]![1])) {
      expect(row.split('\u001B[').filter((part) => !part.startsWith('0m')).length - 1).toBeLessThanOrEqual(12)
    }
  })
})
