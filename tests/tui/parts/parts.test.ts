import { describe, expect, it } from 'vitest'
import { tally } from '../../../src/sim/world/scoring/game.js'
import { decisionPanelRows } from '../../../src/tui/parts/decision-panel.js'
import { keyLine } from '../../../src/tui/parts/key-line.js'
import { SCORE_SHEET_COLUMNS, scoreSheetRows } from '../../../src/tui/parts/score-sheet.js'
import { timelineRows } from '../../../src/tui/screens/debrief/value-chart.js'
import { columnsOf } from '../../../src/tui/terminal/fit.js'
import { bare, PLAIN, shortScenario, THEMES } from '../fixtures.js'

describe('score sheet', () => {
  // Worked line of the international federation's playing rules: strikes, spares and opens, 180 in ten-pin scoring.
  const line = [[10], [10], [10], [7, 2], [8, 2], [0, 9], [10], [7, 3], [9, 0], [10, 10, 8]]

  it('writes balls and running score into each frame', () => {
    const [numbers, balls, scores] = scoreSheetRows(tally('ten-pin', line), null, PLAIN).map(bare)
    const cells = (row: string) =>
      row
        .split('│')
        .slice(1, -1)
        .map((cell) => cell.trim())
    expect(cells(numbers!)).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', '10'])
    expect(cells(balls!)).toEqual(['X', 'X', 'X', '7 2', '8 /', '- 9', 'X', '7 /', '9 -', 'X X 8'])
    expect(cells(scores!)).toEqual(['30', '57', '76', '85', '95', '104', '124', '143', '152', '180'])
  })

  it('fits 80 columns and shows the whole game, 300 included', () => {
    expect(SCORE_SHEET_COLUMNS).toBeLessThanOrEqual(80)
    const perfect = [...Array.from({ length: 9 }, () => [10]), [10, 10, 10]]
    const rows = scoreSheetRows(tally('ten-pin', perfect), null, PLAIN).map(bare)
    expect(rows[2]).toContain('300')
    expect(rows[1]).toContain('X X X')
  })

  it('ends after the last frame that is bowled', () => {
    const rows = scoreSheetRows(tally('ten-pin', [[10], [7, 2]]), 2, PLAIN, 6).map(bare)
    expect(rows[0]).toMatch(/▸ 2.* 6 +│ *$/)
    for (const row of rows) expect(row.split('│')).toHaveLength(8)
  })

  it('points at the frame being bowled without needing colour', () => {
    expect(bare(scoreSheetRows(tally('ten-pin', [[10]]), 2, PLAIN)[0]!)).toContain('▸ 2')
  })
})

describe('decision panel', () => {
  it('marks the field under the hand by signs, not by colour alone', async () => {
    const { bag } = (await shortScenario()).setup
    const decision = {
      ballId: bag[3]!.id,
      aim: { feetBoard: 24.5, targetBoard: 12, speedStep: 1 },
      release: 'strike',
    } as const
    const [headings, values] = decisionPanelRows(decision, bag, 'feet', null, 78, PLAIN).map(bare)
    expect(values).toContain('‹ 24.5 ›')
    expect(values).toContain(`4 ${bag[3]!.name}`)
    expect(values).toContain('firmer')
    expect(bare(decisionPanelRows(decision, bag, 'feet', '2', 78, PLAIN)[1]!)).toContain('‹ 2_ ›')
    expect(headings!.indexOf('Slide')).toBe(values!.indexOf('24.5'))
  })
})

describe('timeline', () => {
  const grades = Array.from({ length: 30 }, (_, index) => ({
    label: String(index + 1),
    pins: index === 20 ? 4 : index % 2,
  }))

  it('always shows the chosen throw, and the tallest bar for the costliest choice', () => {
    for (const chosen of [0, 12, 20, 29]) {
      const rows = timelineRows(grades, chosen, 60, 3, PLAIN).map(bare)
      expect(rows[3]).toMatch(new RegExp(`▸${chosen + 1}( |$)`))
    }
    const rows = timelineRows(grades, 20, 60, 3, PLAIN).map(bare)
    const column = rows[3]!.indexOf('▸') + 1
    expect(rows.slice(0, 3).map((row) => row[column])).toEqual(['█', '█', '█'])
  })

  it('tells an unweighed throw from one that gave nothing away', () => {
    const rows = timelineRows(
      [
        { label: '1', pins: null },
        { label: '2', pins: 0 },
      ],
      0,
      20,
      2,
      PLAIN,
    ).map(bare)
    expect(rows[1]).toMatch(/\?\s+·/)
  })
})

describe('rows keep to their columns', () => {
  it.each(THEMES)('%s', (_, theme) => {
    const rows = [
      ...timelineRows([{ label: '10c', pins: 3 }], 0, 40, 3, theme),
      keyLine(
        Array.from({ length: 12 }, () => ({ keys: 'Enter', does: 'something' })),
        40,
        theme,
      ),
    ]
    for (const row of rows) expect(columnsOf(row)).toBeLessThanOrEqual(40)
  })
})
