import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import type { Theme } from '../../draw/theme.js'

/** One column of the timeline; `pins` null where there is no grade yet or none is given. */
export interface Grade {
  readonly label: string
  readonly pins: number | null
}

const EIGHTHS = 8

/**
 * Pins given away, throw by throw: bars upwards, the chosen throw pointed at. Columns that do not fit are scrolled so that the
 * chosen one shows.
 */
export function timelineRows(
  grades: readonly Grade[],
  chosen: number,
  columns: number,
  barRows: number,
  theme: Theme,
): string[] {
  const { glyphs } = theme
  const width = Math.max(2, ...grades.map((grade) => grade.label.length)) + 1
  const shown = Math.max(1, Math.floor((columns - 1) / width))
  const first = Math.min(Math.max(0, chosen - Math.floor(shown / 2)), Math.max(0, grades.length - shown))
  const most = Math.max(1, ...grades.map((grade) => grade.pins ?? 0))
  const canvas = newCanvas(columns, barRows + 1)
  grades.slice(first, first + shown).forEach((grade, place) => {
    const x = 1 + place * width
    const isChosen = first + place === chosen
    const ink = isChosen ? 'accent' : 'loss'
    const eighths = Math.round(((grade.pins ?? 0) / most) * barRows * EIGHTHS)
    for (let row = 0; row < barRows; row++) {
      const filled = Math.min(EIGHTHS, Math.max(0, eighths - (barRows - 1 - row) * EIGHTHS))
      if (filled > 0) put(canvas, x, row, glyphs.bar[filled]!.repeat(width - 1), ink)
    }
    if (grade.pins === null) putRight(canvas, x + width - 1, barRows - 1, '?', 'faint')
    else if (eighths === 0) putRight(canvas, x + width - 1, barRows - 1, glyphs.dot, 'faint')
    putRight(canvas, x + width - 1, barRows, grade.label, isChosen ? 'accent' : 'faint')
    if (isChosen) put(canvas, x + width - 2 - grade.label.length, barRows, glyphs.pointer, 'accent')
  })
  return canvasRows(canvas, theme)
}
