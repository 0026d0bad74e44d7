import { describe, expect, it } from 'vitest'
import { stream } from '../../../../src/sim/random.js'
import { feetToMetres, metresToFeet } from '../../../../src/sim/units.js'
import { FILM_BOARDS, FILM_ROWS, mirrorFilm, type OilFilm } from '../../../../src/sim/world/lane/film.js'
import { generatePattern, type PatternLimits, WIDEST_LIMITS } from '../../../../src/sim/world/lane/generator.js'
import { layPattern, measurePattern } from '../../../../src/sim/world/lane/pattern.js'

const draw = (limits: PatternLimits, seed: string) =>
  generatePattern(limits, stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'pattern' }))

const lopsided = (film: OilFilm): boolean => {
  const mirrored = mirrorFilm(film)
  return film.microns.some((microns, cell) => Math.abs(microns - mirrored.microns[cell]!) > 1e-9)
}

const within = (value: number, [least, most]: readonly [number, number]) => {
  expect(value).toBeGreaterThanOrEqual(least * (1 - 1e-9))
  expect(value).toBeLessThanOrEqual(most * (1 + 1e-9))
}

const NARROW: PatternLimits = {
  lengthMetres: [feetToMetres(45), feetToMetres(45)],
  volumeMicrolitres: [26_000, 26_000],
  ratio: [2.5, 2.5],
  symmetric: true,
}
const HOUSE: PatternLimits = {
  lengthMetres: [feetToMetres(38), feetToMetres(42)],
  volumeMicrolitres: [22_000, 26_000],
  ratio: [8, 12],
  symmetric: false,
}

describe('generatePattern', () => {
  it.each([
    ['the widest limits', WIDEST_LIMITS],
    ['one length, volume and ratio', NARROW],
    ['lopsided house oil', HOUSE],
  ])(
    'measures within %s for 300 seeds',
    (_, limits) => {
      for (let i = 0; i < 300; i++) {
        const film = layPattern(draw(limits, `seed ${i}`))
        const measured = measurePattern(film)
        within(measured.lengthMetres, limits.lengthMetres)
        within(measured.volumeMicrolitres, limits.volumeMicrolitres)
        within(measured.ratio, limits.ratio)
        const even = !lopsided(film)
        if (limits.symmetric !== 'either') expect(even).toBe(limits.symmetric)
      }
    },
    30_000,
  )

  it('reaches the corners: every whole foot, flat and house ratios, even and lopsided', () => {
    const measured = Array.from({ length: 300 }, (_, i) => {
      const film = layPattern(draw(WIDEST_LIMITS, `corner ${i}`))
      return { ...measurePattern(film), lopsided: lopsided(film) }
    })
    expect(new Set(measured.map((one) => Math.floor(metresToFeet(one.lengthMetres) + 1e-9))).size).toBe(17)
    expect(measured.filter((one) => one.ratio < 2).length).toBeGreaterThan(20)
    expect(measured.filter((one) => one.ratio > 7).length).toBeGreaterThan(10)
    const uneven = measured.filter((one) => one.lopsided).length
    expect(uneven).toBeGreaterThan(100)
    expect(uneven).toBeLessThan(200)
  }, 30_000)

  it('thins towards the pins past the first 2 ft, and towards the edges, as a machine lays it', () => {
    for (let i = 0; i < 100; i++) {
      const { microns } = layPattern(draw({ ...WIDEST_LIMITS, symmetric: true }, `shape ${i}`))
      const at = (row: number, board: number) => microns[row * FILM_BOARDS + board - 1]!
      let thickens = 0
      for (let row = 5; row < FILM_ROWS; row++) {
        for (let board = 1; board <= FILM_BOARDS; board++)
          thickens = Math.max(thickens, at(row, board) - at(row - 1, board))
        for (let board = 2; board <= 20; board++) thickens = Math.max(thickens, at(row, board - 1) - at(row, board))
      }
      expect(thickens).toBeLessThan(1e-12)
    }
  })

  it('gives the same pattern for the same stream and another for another', () => {
    expect(draw(WIDEST_LIMITS, 'same')).toEqual(draw(WIDEST_LIMITS, 'same'))
    expect(draw(WIDEST_LIMITS, 'same')).not.toEqual(draw(WIDEST_LIMITS, 'other'))
  })

  it.each([
    [{ lengthMetres: [13, 12] as const }, 'must run upward'],
    [{ lengthMetres: [12.2, 12.3] as const }, 'No whole half foot'],
    [{ ratio: [0.5, 3] as const }, 'ratio limits 0.5 to 3'],
    [{ volumeMicrolitres: [0, 10] as const }, 'volume'],
  ])('refuses %o in one sentence', (change, sentence) => {
    expect(() => draw({ ...WIDEST_LIMITS, ...change }, 'x')).toThrow(sentence)
  })
})
