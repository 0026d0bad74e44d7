import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  copyFilm,
  emptyFilm,
  FILM_BOARDS,
  FILM_ROW_METRES,
  FILM_ROWS,
  filmVolumeMicrolitres,
  meanFilmMicrons,
  mirrorFilm,
  type OilFilm,
} from '../../../../src/sim/world/lane/film.js'
import { checkPass, meanStrokeMicrons, type OilPass, strokeOf } from '../../../../src/sim/world/lane/oil-pass.js'
import { layPattern, measurePattern, patternVolumeMicrolitres } from '../../../../src/sim/world/lane/pattern.js'

const passes: fc.Arbitrary<OilPass> = fc
  .record({
    direction: fc.constantFrom('forward' as const, 'reverse' as const),
    boards: fc.tuple(fc.integer({ min: 1, max: 39 }), fc.integer({ min: 1, max: 39 })),
    microlitresPerBoard: fc.double({ min: 1, max: 200, noNaN: true }),
    ends: fc.tuple(fc.double({ min: 0, max: 18, noNaN: true }), fc.double({ min: 0, max: 18, noNaN: true })),
    taperShare: fc.double({ min: 0, max: 1, noNaN: true }),
    strokes: fc.integer({ min: 1, max: 6 }),
  })
  .filter(({ ends: [a, b] }) => Math.abs(a - b) > 0.05)
  .map(({ boards: [a, b], ends: [from, to], taperShare, ...rest }) => ({
    ...rest,
    fromBoard: Math.min(a, b),
    toBoard: Math.max(a, b),
    fromMetres: from,
    toMetres: to,
    taperMetres: taperShare * Math.abs(from - to),
  }))

const same = (one: OilFilm, other: OilFilm) => one.microns.every((microns, cell) => microns === other.microns[cell])
const only = (pass: OilPass) => layPattern({ name: 'one pass', passes: [pass] })

describe('layPattern', () => {
  it('puts exactly the oil of the sheet on the lane, none of it negative', () => {
    fc.assert(
      fc.property(fc.array(passes, { minLength: 1, maxLength: 8 }), (list) => {
        const pattern = { name: 'drawn', passes: list }
        const film = layPattern(pattern)
        const laid = patternVolumeMicrolitres(pattern)
        expect(Math.abs(filmVolumeMicrolitres(film) / laid - 1)).toBeLessThan(1e-12)
        expect(film.microns.every((microns) => microns >= 0)).toBe(true)
      }),
      { seed: 1, numRuns: 200 },
    )
  })

  it('has the mean film that its strokes are said to leave, anywhere', () => {
    const places = fc.record({
      boards: fc.tuple(fc.integer({ min: 1, max: 39 }), fc.integer({ min: 1, max: 39 })),
      metres: fc.double({ min: 0, max: 18.3, noNaN: true }),
    })
    fc.assert(
      fc.property(fc.array(passes, { minLength: 1, maxLength: 8 }), places, (list, { boards, metres }) => {
        const [from, to] = [Math.min(...boards), Math.max(...boards)]
        const laid = meanFilmMicrons(layPattern({ name: 'drawn', passes: list }), from, to, metres)
        expect(meanStrokeMicrons(list.map(strokeOf), from, to, metres)).toBeCloseTo(laid, 9)
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it('mirrors with its boards', () => {
    fc.assert(
      fc.property(passes, (pass) => {
        const mirrored = { ...pass, fromBoard: 40 - pass.toBoard, toBoard: 40 - pass.fromBoard }
        expect(same(only(mirrored), mirrorFilm(only(pass)))).toBe(true)
      }),
      { seed: 2, numRuns: 100 },
    )
  })

  it('falls linearly over the taper: an even stroke of n rows with a taper of m rows holds n - m/2 rows of full film', () => {
    const rows = (count: number) => count * FILM_ROW_METRES
    const pass: OilPass = {
      direction: 'forward',
      fromBoard: 20,
      toBoard: 20,
      microlitresPerBoard: 80,
      fromMetres: 0,
      toMetres: rows(60),
      taperMetres: rows(20),
    }
    const film = only(pass)
    const at = (row: number) => film.microns[row * FILM_BOARDS + 19]!
    const full = at(0)
    expect(at(39)).toBeCloseTo(full, 12)
    // Area under a linear fall: row k of the taper holds 1 - (k + 1/2)/20 of the full film.
    expect(at(40)).toBeCloseTo(full * (1 - 0.5 / 20), 12)
    expect(at(59)).toBeCloseTo((full * 0.5) / 20, 12)
    expect(at(60)).toBe(0)
    expect(full * 50).toBeCloseTo(
      film.microns.reduce((sum, microns) => sum + microns, 0),
      9,
    )
    const back = only({ ...pass, direction: 'reverse' })
    for (let row = 0; row < 60; row++) expect(back.microns[row * FILM_BOARDS + 19]).toBeCloseTo(at(59 - row), 12)
  })

  it('takes the two ends in either order', () => {
    fc.assert(
      fc.property(passes, (pass) => {
        const swapped = { ...pass, fromMetres: pass.toMetres, toMetres: pass.fromMetres }
        expect(same(only(swapped), only(pass))).toBe(true)
      }),
      { seed: 3, numRuns: 50 },
    )
  })

  const good: OilPass = {
    direction: 'forward',
    fromBoard: 2,
    toBoard: 38,
    microlitresPerBoard: 50,
    fromMetres: 0,
    toMetres: 12,
    taperMetres: 0.6,
  }
  it.each([
    [{ fromBoard: 0 }, 'Boards 0 to 38'],
    [{ toBoard: 40 }, 'Boards 2 to 40'],
    [{ fromBoard: 20, toBoard: 10 }, 'lies left of'],
    [{ microlitresPerBoard: 0 }, 'must be more than 0'],
    [{ microlitresPerBoard: Number.NaN }, 'must be more than 0'],
    [{ toMetres: 0 }, 'must have a length'],
    [{ toMetres: 19 }, 'between 0 and 18.288'],
    [{ taperMetres: 13 }, "the stroke's length"],
    [{ strokes: 1.5 }, 'whole number'],
  ])('refuses %o in one sentence', (change, sentence) => {
    expect(checkPass(good)).toBeNull()
    const problem = checkPass({ ...good, ...change })
    expect(problem).toContain(sentence)
    expect(() => only({ ...good, ...change })).toThrow(problem!)
  })
})

describe('measurePattern', () => {
  it('finds a dry lane empty, of no length and even', () => {
    expect(measurePattern(emptyFilm())).toEqual({
      volumeMicrolitres: 0,
      lengthMetres: 0,
      ratio: 1,
      laneClass: 'sport',
      readings: [],
    })
  })

  it('gives an endless ratio where one side is dry', () => {
    const film = only({
      direction: 'forward',
      fromBoard: 3,
      toBoard: 32,
      microlitresPerBoard: 50,
      fromMetres: 0,
      toMetres: 12,
      taperMetres: 0,
    })
    expect(measurePattern(film).ratio).toBe(Number.POSITIVE_INFINITY)
    expect(measurePattern(film).laneClass).toBe('standard')
  })
})

describe('copyFilm', () => {
  it('shares nothing with the original', () => {
    const film = emptyFilm()
    const copy = copyFilm(film)
    copy.microns[FILM_ROWS] = 1
    expect(film.microns[FILM_ROWS]).toBe(0)
  })
})
