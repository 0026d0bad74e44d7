import { describe, expect, it } from 'vitest'
import { feetToMetres, LANE_WIDTH_METRES, metresToFeet } from '../../src/sim/units.js'
import { filmVolumeMicrolitres } from '../../src/sim/world/lane/film.js'
import {
  laneClassOf,
  layPattern,
  measurePattern,
  type OilPattern,
  patternVolumeMicrolitres,
} from '../../src/sim/world/lane/pattern.js'
import { flaringField, strongUnflaringField, urethaneField, weakUnflaringField } from '../sim/world/lane/field-balls.js'
import { bandLoss, bandMicrons, playField } from '../sim/world/lane/field-play.js'
import {
  flatForty,
  flatFortyFive,
  houseForty,
  plainForty,
  shortThirtyFive,
} from '../sim/world/lane/patterns-for-tests.js'

describe('the oil book of a lane machine', () => {
  // Program arithmetic on a machine maker's help page: 145 boards forward + 229 back = 374 boards × 50 µL = 18.7 mL.
  // A load "2-2" covers 37 boards, "10-10" covers 21.
  const load = (inset: number, strokes: number, direction: 'forward' | 'reverse') => ({
    direction,
    fromBoard: inset,
    toBoard: 40 - inset,
    microlitresPerBoard: 50,
    fromMetres: 0,
    toMetres: feetToMetres(38),
    taperMetres: feetToMetres(2),
    strokes,
  })
  const sheet: OilPattern = {
    name: '374 boards',
    passes: [
      load(2, 3, 'forward'),
      { ...load(3, 1, 'forward'), fromBoard: 4 },
      load(2, 5, 'reverse'),
      load(10, 1, 'reverse'),
      load(9, 1, 'reverse'),
    ],
  }

  it('sums 374 boards of 50 µL to 18.70 mL, in the sheet and on the lane', () => {
    const boards = (direction: 'forward' | 'reverse') =>
      sheet.passes
        .filter((pass) => pass.direction === direction)
        .reduce((sum, pass) => sum + (pass.toBoard - pass.fromBoard + 1) * (pass.strokes ?? 1), 0)
    expect([boards('forward'), boards('reverse')]).toEqual([145, 229])
    expect(patternVolumeMicrolitres(sheet)).toBe(18_700)
    expect(filmVolumeMicrolitres(layPattern(sheet))).toBeCloseTo(18_700, 6)
  })

  it('spreads 18.7 mL over 40 ft of lane to a mean film of 1.455 µm (volume over area, within 0.5 %)', () => {
    const film = layPattern(plainForty)
    const mean = filmVolumeMicrolitres(film) / 1000 / (feetToMetres(40) * LANE_WIDTH_METRES)
    expect(Math.abs(mean / 1.455 - 1)).toBeLessThan(0.005)
  })
})

describe('length, ratio and class', () => {
  it.each([
    [houseForty, 40, 24, 10, 'standard'],
    [flatForty, 40, 26, 2.5, 'sport'],
    [flatFortyFive, 45, 26, 2.5, 'sport'],
    [shortThirtyFive, 35, 23, 3, 'sport'],
  ] as const)('measures $name as it was meant', (pattern, feet, millilitres, ratio, laneClass) => {
    const measured = measurePattern(layPattern(pattern))
    expect(metresToFeet(measured.lengthMetres)).toBeCloseTo(feet, 9)
    expect(Math.abs(measured.volumeMicrolitres / 1000 - millilitres)).toBeLessThan(0.05)
    expect(Math.abs(measured.ratio - ratio)).toBeLessThan(0.02)
    expect(measured.laneClass).toBe(laneClass)
  })

  it('calls up to 4:1 sport, up to 7:1 challenge and the rest standard (governing body, league page)', () => {
    expect([2, 4, 4.01, 7, 7.01, 12].map(laneClassOf)).toEqual([
      'sport',
      'sport',
      'challenge',
      'challenge',
      'standard',
      'standard',
    ])
  })

  it('reads 22 ft and 2 ft before the end, the side with less oil outside counting (governing body, ratio rule)', () => {
    const wide = { ...plainForty.passes[0]!, fromBoard: 1, toBoard: 39, microlitresPerBoard: 100 }
    const pattern: OilPattern = {
      name: 'three times as much from board 10 to the left edge',
      passes: [wide, { ...wide, fromBoard: 10, microlitresPerBoard: 200 }],
    }
    const measured = measurePattern(layPattern(pattern))
    expect(measured.ratio).toBeCloseTo(3, 9)
    expect(measured.readings.map((reading) => metresToFeet(reading.atMetres))).toEqual([
      expect.closeTo(22, 9),
      expect.closeTo(38, 9),
    ])
    expect(measured.readings[0]!.leftMicrons / measured.readings[0]!.rightMicrons).toBeCloseTo(3, 9)
  })
})

describe('depletion and carrydown as reported from the field', () => {
  it('loses 40 % (+10, -5) of the played oil along the whole pattern in 4.5 games on one line (depletion article, Nov 2013)', () => {
    const wear = playField({ pattern: flatForty, balls: flaringField, games: 4.5, spreadBoards: 1.25 }, 'one line')
    for (const [from, to] of [
      [1, 8],
      [8, 16],
      [16, 24],
      [24, 32],
      [32, 40],
    ] as const) {
      const loss = bandLoss(wear, from, to)
      expect(loss).toBeGreaterThan(0.35)
      expect(loss).toBeLessThan(0.5)
    }
  })

  it.each([12, 13.5, 15])(
    'keeps half (± 10 %) of the oil in the heads after %d games of spread play (trade magazine, Aug 2015)',
    (games) => {
      const wear = playField({ pattern: flatForty, balls: flaringField, games, spreadBoards: 2.75 }, 'spread')
      const loss = bandLoss(wear, 1, 16)
      expect(loss).toBeGreaterThan(0.4)
      expect(loss).toBeLessThan(0.6)
    },
  )

  it('takes oil only from the first 8 to 16 ft in 24 games of weak covers without flare (article on play before 1980, 2012)', () => {
    const wear = playField({ pattern: flatForty, balls: weakUnflaringField, games: 24, spreadBoards: 2.75 }, 'weak')
    expect(bandLoss(wear, 1, 8)).toBeGreaterThan(0.15)
    expect(bandLoss(wear, 16, 24)).toBeLessThan(0.05)
    expect(bandLoss(wear, 24, 40)).toBeLessThan(0.02)
  })

  it('adds oil to the last half and the dry end under strong covers without flare (article on the 1980s, 2012)', () => {
    const play = { pattern: flatForty, games: 4.5, spreadBoards: 1.25 }
    const strong = playField({ ...play, balls: strongUnflaringField }, 'strong')
    const flaring = playField({ ...play, balls: flaringField }, 'strong')
    expect(bandLoss(strong, 20, 40)).toBeLessThan(0)
    const dry = bandMicrons(strong.after.film, strong, 40, 50)
    expect(dry).toBeGreaterThan(0.1)
    expect(dry).toBeGreaterThan(5 * bandMicrons(flaring.after.film, flaring, 40, 50))
  })

  it('carries more oil down with urethane or plastic than with resin that flares (article on carrydown, 2012; coaches)', () => {
    const carried = [urethaneField, weakUnflaringField, flaringField].map((balls) => {
      const wear = playField({ pattern: flatFortyFive, balls, games: 4.5, spreadBoards: 1.25 }, 'carrydown')
      return bandMicrons(wear.after.film, wear, 45, 60)
    })
    expect(carried[0]).toBeGreaterThan(1.5 * carried[2]!)
    expect(carried[1]).toBeGreaterThan(1.5 * carried[2]!)
  })
})
