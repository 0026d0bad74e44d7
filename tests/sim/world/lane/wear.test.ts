import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { boardToMetres, LANE_WIDTH_METRES } from '../../../../src/sim/units.js'
import {
  copyFilm,
  emptyFilm,
  FILM_BOARDS,
  FILM_CELLS,
  FILM_ROWS,
  filmVolumeMicrolitres,
  mirrorFilm,
  type OilFilm,
} from '../../../../src/sim/world/lane/film.js'
import { layPattern } from '../../../../src/sim/world/lane/pattern.js'
import { freshLane, type LaneState, type WearingPass, wearFilm, wearLane } from '../../../../src/sim/world/lane/wear.js'
import { drawnPath } from './field-play.js'
import { flatFortyFive, houseForty } from './patterns-for-tests.js'

const share = fc.double({ min: 0, max: 1, noNaN: true })
const arbitraryPass: fc.Arbitrary<WearingPass> = fc
  .record({
    start: fc.double({ min: -2, max: 42, noNaN: true }),
    slope: fc.double({ min: -0.3, max: 0.3, noNaN: true }),
    touchdown: fc.integer({ min: 0, max: 20 }),
    leaves: fc.integer({ min: 30, max: 160 }),
    pickupShare: share,
    layDownShare: share,
    freshCoverShare: share,
  })
  .map(({ start, slope, touchdown, leaves, pickupShare, layDownShare, freshCoverShare }) => ({
    path: Float64Array.from({ length: FILM_ROWS }, (_, row) =>
      row < touchdown || row > leaves ? Number.NaN : boardToMetres(start + slope * row),
    ),
    coverUptake: { pickupShare, layDownShare },
    freshCoverShare,
  }))

const straight = (board: number): Float64Array => new Float64Array(FILM_ROWS).fill(boardToMetres(board))
const uptake = { pickupShare: 0.05, layDownShare: 0.6 }

describe('wearLane', () => {
  it('keeps the book: film and wiped oil make what was laid, to 1e-9, and no film is negative', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(houseForty, flatFortyFive),
        fc.array(arbitraryPass, { minLength: 1, maxLength: 40 }),
        (pattern, list) => {
          const lane = list.reduce<LaneState>(wearLane, freshLane(layPattern(pattern)))
          const kept = filmVolumeMicrolitres(lane.film) + lane.wipedMicrolitres
          expect(Math.abs(kept / lane.laidMicrolitres - 1)).toBeLessThan(1e-9)
          expect(lane.film.microns.every((microns) => microns >= 0)).toBe(true)
          expect(lane.wipedMicrolitres).toBeGreaterThanOrEqual(0)
        },
      ),
      { seed: 4, numRuns: 60 },
    )
  })

  it('does not know left from right', () => {
    fc.assert(
      fc.property(arbitraryPass, (pass) => {
        const film = layPattern(houseForty)
        const mirrored = { ...pass, path: pass.path.map((lateral) => LANE_WIDTH_METRES - lateral) }
        const one = mirrorFilm(wearLane(freshLane(film), pass).film)
        const other = wearLane(freshLane(mirrorFilm(film)), mirrored).film
        const apart = one.microns.map((microns, cell) => Math.abs(microns - other.microns[cell]!))
        expect(Math.max(...apart)).toBeLessThan(1e-12)
      }),
      { seed: 5, numRuns: 60 },
    )
  })

  it('leaves the state it was given as it was, and repeats itself exactly', () => {
    const lane = freshLane(layPattern(houseForty))
    const before = copyFilm(lane.film)
    const pass = { path: drawnPath(0), coverUptake: uptake, freshCoverShare: 0.8 }
    const worn = wearLane(lane, pass)
    expect(lane.film).toEqual(before)
    expect(wearLane(lane, pass)).toEqual(worn)
    expect(worn.film).not.toEqual(before)
  })

  it('wears in place exactly as it wears a copy', () => {
    const lane = freshLane(layPattern(houseForty))
    const pass = { path: drawnPath(0.3), coverUptake: uptake, freshCoverShare: 0.8 }
    const film = copyFilm(lane.film)
    const wiped = wearFilm(film, pass)
    const worn = wearLane(lane, pass)
    expect(film).toEqual(worn.film)
    expect(wiped).toBe(worn.wipedMicrolitres)
  })

  it('touches only boards under the footprint', () => {
    const film = layPattern(houseForty)
    const worn = wearLane(freshLane(film), { path: straight(17), coverUptake: uptake, freshCoverShare: 0.8 }).film
    for (let cell = 0; cell < FILM_CELLS; cell++) {
      const board = (cell % FILM_BOARDS) + 1
      if (Math.abs(board - 17) > 2.5) expect(worn.microns[cell]).toBe(film.microns[cell])
    }
  })

  it('wears nothing where the ball is not on the lane', () => {
    const lane = freshLane(layPattern(houseForty))
    const path = straight(12)
    path.fill(Number.NaN, 0, 50)
    const worn = wearLane(lane, { path, coverUptake: uptake, freshCoverShare: 0.8 }).film
    expect(worn.microns.slice(0, 50 * FILM_BOARDS)).toEqual(lane.film.microns.slice(0, 50 * FILM_BOARDS))
    const air = new Float64Array(FILM_ROWS).fill(Number.NaN)
    expect(wearLane(lane, { path: air, coverUptake: uptake, freshCoverShare: 0.8 })).toEqual(lane)
  })

  it('takes more oil off the lane with thirstier covers and with more flare, and carries less of it down', () => {
    const lane = freshLane(layPattern(flatFortyFive))
    const path = drawnPath(0)
    const wiped = (pickupShare: number, layDownShare: number, freshCoverShare: number) =>
      wearLane(lane, { path, coverUptake: { pickupShare, layDownShare }, freshCoverShare }).wipedMicrolitres
    expect(wiped(0.06, 0.7, 0.5)).toBeGreaterThan(wiped(0.04, 0.7, 0.5))
    expect(wiped(0.05, 0.5, 0.5)).toBeGreaterThan(wiped(0.05, 0.9, 0.5))
    expect(wiped(0.05, 0.7, 0.8)).toBeGreaterThan(1.5 * wiped(0.05, 0.7, 0.05))
    const dryEnd = (film: OilFilm) => film.microns.slice(90 * FILM_BOARDS).reduce((sum, microns) => sum + microns, 0)
    const carried = (freshCoverShare: number) =>
      dryEnd(wearLane(lane, { path, coverUptake: { pickupShare: 0.05, layDownShare: 0.7 }, freshCoverShare }).film)
    expect(carried(0.05)).toBeGreaterThan(3 * carried(0.8))
    expect(carried(0.8)).toBeGreaterThan(0)
  })

  it('lifts the gaussian footprint: under a straight pass over even oil each board loses in proportion', () => {
    const film = emptyFilm()
    film.microns.fill(2)
    const worn = wearLane(freshLane(film), {
      path: straight(20),
      coverUptake: { pickupShare: 0.05, layDownShare: 0 },
      freshCoverShare: 0,
    }).film
    const lost = (board: number) => 2 - worn.microns[60 * FILM_BOARDS + board - 1]!
    // Levelling moves at most a fiftieth of the differences the pass itself has made.
    for (const board of [18, 19, 20, 21, 22]) {
      const expected = 2 * 0.05 * Math.exp(-(((board - 20) / 0.5) ** 2) / 2)
      expect(Math.abs(lost(board) - expected)).toBeLessThan(0.0015)
    }
  })

  it('levels a rut a little with every pass', () => {
    const film = emptyFilm()
    film.microns.fill(2)
    for (let row = 0; row < FILM_ROWS; row++) film.microns[row * FILM_BOARDS + 19] = 0.5
    const worn = wearLane(freshLane(film), {
      path: straight(20),
      coverUptake: { pickupShare: 0, layDownShare: 0 },
      freshCoverShare: 0,
    }).film
    expect(worn.microns[60 * FILM_BOARDS + 19]).toBeGreaterThan(0.5)
    expect(worn.microns[60 * FILM_BOARDS + 18]).toBeLessThan(2)
  })
})
