import { beforeAll, describe, expect, it } from 'vitest'
import type { Mode } from '../../../src/scenarios/store/block-notes.js'
import type { Size } from '../../../src/tui/draw/layout.js'
import { playLayout } from '../../../src/tui/screens/play/play-rows.js'
import { blockOf } from '../../../src/tui/state/play-state.js'
import { columnsOf } from '../../../src/tui/terminal/fit.js'
import { bare, PLAIN, THEMES } from '../fixtures.js'
import { type Drawn, debriefRows, drawnFrom, everyScreen, played, playScreen, SIZES } from './all-screens.js'

let drawn: Drawn
beforeAll(async () => {
  drawn = await drawnFrom()
}, 180_000)

const textOf = (rows: readonly string[]): string => rows.map(bare).join('\n')

const COLOUR = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*(3[0-8]|4[0-8]|9[0-7])[;m]`)

describe.each(THEMES)('every screen, %s', (name, theme) => {
  // The depths between differ from true colour in nothing but the sequences sent, so one size does for them.
  const sizes = /^\d/.test(name) ? SIZES.slice(0, 1) : SIZES
  it.each(sizes)('keeps to $columns by $rows', (size) => {
    for (const [screen, rows] of everyScreen(drawn, size, theme)) {
      expect(rows.length, screen).toBeLessThanOrEqual(size.rows)
      if (screen.startsWith('play')) expect(rows.length, screen).toBeLessThanOrEqual(size.rows - 1)
      // Plain text in menus may be cut by the frame; the lane, the sheet and the figures may not.
      for (const row of rows) expect(columnsOf(row), `${screen}: ${bare(row)}`).toBeLessThanOrEqual(size.columns)
    }
  })

  it('sends no more than it says', () => {
    for (const [screen, rows] of everyScreen(drawn, SIZES[0]!, theme)) {
      const text = rows.join('\n')
      if (name.startsWith('no colour')) expect(COLOUR.test(text), screen).toBe(false)
      if (name.endsWith('ASCII')) expect(bare(text), screen).toMatch(/^[\n -~]*$/)
    }
  })
})

describe('play screen', () => {
  it('never shows the oil, nor a path but from what was seen', () => {
    for (const play of drawn.plays) {
      const rows = textOf(playScreen(play, SIZES[0]!, PLAIN))
      expect(rows).not.toMatch(/[░▒▓█]/)
      // The same throws with another truth under the same observation draw the same picture.
      const states = play.states.map((block) => ({
        ...block,
        throws: block.throws.map((record) => ({
          ...record,
          truth: { ...record.truth, path: record.truth.path.map(() => 0.3), breakpointBoard: 3, entryBoard: 30 },
        })),
      }))
      expect(textOf(playScreen({ ...play, states }, SIZES[0]!, PLAIN))).toBe(rows)
    }
  })

  it('gives a larger terminal a larger lane, never less', () => {
    let last = playLayout(SIZES[0]!)
    expect(last.laneRows).toBe(10)
    for (let rows = 25; rows <= 60; rows++) {
      const next = playLayout({ columns: 120, rows })
      expect(next.laneRows).toBeGreaterThanOrEqual(last.laneRows)
      last = next
    }
    expect(last.laneRows).toBe(30)
  })

  it('words the move against the last throw on the lane as the trade does', async () => {
    let play = drawn.plays[0]!
    while (blockOf(play).standing !== 1023) play = await played('house-forty', play.grades.length + 1)
    const { aim } = play.decision
    const moved = { ...play.decision, aim: { ...aim, feetBoard: aim.feetBoard + 2, targetBoard: aim.targetBoard + 1 } }
    const rows = textOf(playScreen({ ...play, decision: moved }, SIZES[0]!, PLAIN))
    expect(rows).toContain('2 and 1 left')
  })
})

describe('how sure one could be of the oil', () => {
  const words = /39 to 41 ft[^\n]*22 to 26 mL/
  const belief = {
    lengthFeet: { low: 38.9, high: 41.1, mean: 40 },
    volumeMillilitres: { low: 22, high: 26, mean: 24 },
    ratio: { low: 3, high: 9, mean: 6 },
    length: { short: 0, medium: 1, long: 0 },
    shape: { flat: 0.1, between: 0.2, houseLike: 0.7 },
  }
  const shown = (size: Size, mode: Mode) => {
    const play = { ...drawn.plays[0]!, belief, mode }
    return textOf(playScreen(play, size, PLAIN))
  }

  it('stands on the main screen of a drill from 100 columns or 30 rows on', () => {
    expect(shown({ columns: 100, rows: 24 }, 'drill')).toMatch(words)
    expect(shown({ columns: 80, rows: 30 }, 'drill')).toMatch(words)
    expect(shown({ columns: 120, rows: 40 }, 'drill')).toMatch(/39 to 41 ft.*22 to 26 mL.*house-like 70 %/s)
    expect(shown({ columns: 80, rows: 24 }, 'drill')).not.toContain('41 ft')
  })

  it('is kept from who plays a block or a test', () => {
    for (const mode of ['block', 'test'] as const) {
      for (const size of SIZES) expect(shown(size, mode)).not.toContain('41 ft')
    }
  })
})

describe('the calls in the debrief', () => {
  it('are counted and scored, and told as what they were', () => {
    const play = drawn.plays.at(-2)!
    const rows = textOf(debriefRows(play, { view: 'calls' }, SIZES[0]!, PLAIN))
    const first = blockOf(play).throws.filter(({ standingBefore }) => standingBefore === 1023)
    const right = first.filter(({ observation }) => observation.contact === 'pocket').length
    expect(rows).toContain(`${right} of ${first.length} calls came right`)
    expect(rows).toContain(`as sure as you were, ${(0.7 * first.length).toFixed(1)} would have`)
    // Each call at 70 %: (0.3 squared for a right one, 0.7 squared for a wrong one) over all of them.
    const brier = (right * 0.09 + (first.length - right) * 0.49) / first.length
    expect(rows).toContain(`Brier score ${brier.toFixed(2)}`)
    const none = textOf(debriefRows(drawn.plays[0]!, { view: 'calls' }, SIZES[0]!, PLAIN))
    expect(none).toContain('You called nothing in this block.')
  })
})

describe('debrief', () => {
  it.each([
    [80, 22],
    [80, 24],
  ])('cuts nothing of a throw at %i by %i', (columns, rows) => {
    const screen = debriefRows(drawn.plays[0]!, {}, { columns, rows }, PLAIN).map(bare)
    expect(screen).toHaveLength(rows)
    expect(screen.at(-3)).toMatch(/Entry board|Off the lane/)
    expect(screen.at(-2)).toMatch(/Target|Called|Rolls|Still/)
  })

  it('shows the oil, both balls and what the choice gave away', () => {
    const rows = textOf(debriefRows(drawn.plays[0]!, {}, SIZES[3]!, PLAIN))
    expect(rows).toMatch(/[░▒▓█]/)
    expect(rows).toContain('Best from what you had seen')
    expect(rows).toContain('the best if you could see the oil')
    expect(rows).toMatch(/Cost \d+\.\d pins?/)
    expect(rows).toMatch(/Entry board|Off the lane/)
  })

  it('adds up what it shows throw by throw', () => {
    const play = drawn.plays[1]!
    const rows = play.grades.map((_, chosen) => debriefRows(play, { chosen }, SIZES[3]!, PLAIN).map(bare))
    const total = Number(rows[0]![0]!.match(/([\d.]+) pins? *$/)![1])
    const parts = rows.map((screen) => Number(screen.join('\n').match(/cost ([\d.]+) pin/)?.[1] ?? 0))
    expect(parts.reduce((sum, pins) => sum + pins, 0)).toBeCloseTo(total, 6)
  })
})
