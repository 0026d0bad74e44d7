import { describe, expect, it } from 'vitest'
import { oilPicture } from '../../../src/scenarios/words/oil-picture.js'
import { feetToMetres } from '../../../src/sim/units.js'
import { emptyFilm, FILM_BOARDS } from '../../../src/sim/world/lane/film.js'
import { layPattern } from '../../../src/sim/world/lane/pattern.js'

const cellsOf = (row: string): string => row.slice(row.indexOf('|') + 1, row.lastIndexOf('|'))

describe('the picture of the oil', () => {
  it('fits 80 columns and has a column a foot, three boards a row, board 1 at the bottom', () => {
    const rows = oilPicture(emptyFilm())
    expect(rows.filter((row) => row.includes('|'))).toHaveLength(FILM_BOARDS / 3)
    for (const row of rows) expect(row.length).toBeLessThanOrEqual(80)
    for (const row of rows.slice(0, 13)) expect(cellsOf(row)).toBe(' '.repeat(60))
    expect(rows[12]).toContain('1-3 |')
  })

  it('shows oil exactly where it was laid, as dark as it is thick', () => {
    const pass = { direction: 'forward', microlitresPerBoard: 50, taperMetres: 0 } as const
    const film = layPattern({
      name: 'two steps',
      passes: [
        { ...pass, fromBoard: 1, toBoard: 3, fromMetres: feetToMetres(10), toMetres: feetToMetres(20) },
        // Twice the oil on the same length, at the other edge.
        {
          ...pass,
          fromBoard: 37,
          toBoard: 39,
          fromMetres: feetToMetres(10),
          toMetres: feetToMetres(20),
          microlitresPerBoard: 100,
        },
      ],
    })
    const rows = oilPicture(film).slice(0, 13).map(cellsOf)
    expect(rows[12]).toBe(`${' '.repeat(10)}${'+'.repeat(10)}${' '.repeat(40)}`)
    expect(rows[0]).toBe(`${' '.repeat(10)}${'@'.repeat(10)}${' '.repeat(40)}`)
    expect(rows.slice(1, 12).every((row) => row.trim() === '')).toBe(true)
  })
})
