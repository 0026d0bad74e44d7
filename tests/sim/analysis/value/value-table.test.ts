import { describe, expect, it } from 'vitest'
import { buildValueTable, ENTRIES, lookUpWorth, visitEntries } from '../../../../src/sim/analysis/value/value-table.js'
import { normalDistribution } from '../../../../src/sim/exact-math.js'
import { BOARD_WIDTH_METRES, boardToMetres, metresToBoard } from '../../../../src/sim/units.js'

const tableOf = (worth: (board: number, tangent: number) => number) => {
  const exact = new Float64Array(ENTRIES)
  visitEntries((place, offset, tangent) => {
    exact[place] = worth(metresToBoard(boardToMetres(20) - offset), tangent)
  })
  return buildValueTable(exact)
}

const at = (table: ReturnType<typeof tableOf>, board: number, tangent: number, spreadBoards: number): number =>
  lookUpWorth(table, boardToMetres(board), tangent, spreadBoards * BOARD_WIDTH_METRES)

describe('value table', () => {
  it('gives back what is linear in board and tangent, however far it is smeared', () => {
    const table = tableOf((board, tangent) => 2 * board + 40 * tangent)
    for (const spread of [0, 0.6, 1.3, 2.9])
      for (const board of [14.03, 17.5, 22.41])
        expect(at(table, board, 0.052, spread)).toBeCloseTo(2 * board + 40 * 0.052, 6)
  })

  // closed form: the mean of (x - m)² under a normal spread s around x is (x - m)² + s²; kernels are cut at 3.5 s
  it('adds the variance to a parabola', () => {
    const table = tableOf((board) => (board - 18) ** 2)
    for (const spread of [0.5, 1, 2, 3]) expect(at(table, 18, 0, spread) / spread ** 2).toBeCloseTo(1, 1)
  })

  // closed form: a step at a board is worth the normal share of the spread on its far side
  it('smears a step to the normal distribution', () => {
    const table = tableOf((board) => (board > 17.0625 ? 1 : 0))
    for (const spread of [0.5, 1, 2.5])
      for (const board of [15.5, 16.5, 17.5, 19])
        expect(Math.abs(at(table, board, 0.03, spread) - normalDistribution((board - 17.0625) / spread))).toBeLessThan(
          0.006,
        )
  })

  it('holds its border beyond the lane', () => {
    const table = tableOf((board) => board)
    expect(at(table, 60, 0, 0)).toBe(at(table, 44, 0, 0))
    expect(at(table, -20, 0, 0)).toBe(at(table, -4, 0, 0))
    expect(at(table, 20, 0.9, 0)).toBeCloseTo(20, 9)
  })
})
