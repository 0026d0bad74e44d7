import { describe, expect, it } from 'vitest'
import {
  BOARD_WIDTH_METRES,
  boardToMetres,
  LANE_WIDTH_METRES,
  metresToBoard,
  metresToInches,
  STANDARD_GRAVITY,
} from '../../src/sim/units.js'
import {
  ARROWS,
  CENTRE_BOARD,
  GREATEST_LANE_WIDTH_METRES,
  GUTTER_WIDTH_METRES,
  HEADPIN_DISTANCE_METRES,
  HEADPIN_TO_PIT_METRES,
  LANE_DOTS,
  LANE_LENGTH_METRES,
  LEAST_LANE_WIDTH_METRES,
  LEVELNESS_METRES,
  PIN_ROW_METRES,
  pinSpot,
} from '../../src/sim/world/lane/geometry.js'

describe('lane dimensions of the published rules', () => {
  it('puts the headpin 60 ft from the foul line and the pit 62 ft 10 3/16 in (world body, technical data of Nov 2006)', () => {
    expect(HEADPIN_DISTANCE_METRES).toBeCloseTo(18.288, 9)
    expect(metresToInches(LANE_LENGTH_METRES)).toBeCloseTo(62 * 12 + 10 + 3 / 16, 9)
    expect(metresToInches(HEADPIN_TO_PIT_METRES)).toBeCloseTo(34.1875, 9)
  })

  it('has 39 boards of 1.0641 in with board 20 in the middle (state sport department guide, 2021)', () => {
    expect(metresToInches(BOARD_WIDTH_METRES)).toBeCloseTo(1.0641, 4)
    expect(metresToInches(boardToMetres(CENTRE_BOARD))).toBeCloseTo(20.75, 9)
    expect(metresToInches(LEAST_LANE_WIDTH_METRES) / 39).toBeCloseTo(1.0513, 4)
    expect(metresToInches(GREATEST_LANE_WIDTH_METRES) / 39).toBeCloseTo(1.0769, 4)
  })

  it('leaves 9 1/4 in for each gutter of a lane 60 in over all (blind bowling association manual)', () => {
    expect(metresToInches(GUTTER_WIDTH_METRES)).toBeCloseTo(9.25, 9)
  })

  it('spaces pin rows 10.392 in and ends the deck 3 in before the pit (12 in triangle; rules summary)', () => {
    expect(metresToInches(PIN_ROW_METRES)).toBeCloseTo(10.3923, 4)
    expect(metresToInches(pinSpot(7).metres - HEADPIN_DISTANCE_METRES)).toBeCloseTo(31.1769, 4)
    expect(metresToInches(LANE_LENGTH_METRES - pinSpot(10).metres)).toBeCloseTo(3, 1)
  })

  it('stands the 10 pin 2.75 in from the edge and every neighbour 12 in away (retailer drawing of the US rule)', () => {
    expect(metresToInches(pinSpot(10).lateralMetres)).toBeCloseTo(2.75, 9)
    expect(metresToInches(LANE_WIDTH_METRES - pinSpot(7).lateralMetres)).toBeCloseTo(2.75, 9)
    const neighbours = [
      [1, 2],
      [1, 3],
      [2, 3],
      [2, 4],
      [2, 5],
      [3, 5],
      [3, 6],
      [4, 5],
      [5, 6],
      [4, 7],
      [4, 8],
      [5, 8],
      [5, 9],
      [6, 9],
      [6, 10],
      [7, 8],
      [8, 9],
      [9, 10],
    ] as const
    for (const [a, b] of neighbours) {
      const aside = pinSpot(a).lateralMetres - pinSpot(b).lateralMetres
      const along = pinSpot(a).metres - pinSpot(b).metres
      expect(metresToInches(Math.sqrt(aside * aside + along * along))).toBeCloseTo(12, 9)
    }
  })

  it('puts the pins over the boards that follow from a 41.5 in lane', () => {
    // Board of each pin by arithmetic: 20.75 in plus or minus multiples of 6 in, over 1.0641 in a board.
    const boards = [20, 25.64, 14.36, 31.28, 20, 8.72, 36.92, 25.64, 14.36, 3.08]
    boards.forEach((board, i) => {
      expect(metresToBoard(pinSpot(i + 1).lateralMetres)).toBeCloseTo(board, 2)
    })
  })

  it('marks seven arrows on every fifth board and dots on 3, 5, 8, 11, 14 and their mirror images (two reference guides)', () => {
    expect(ARROWS.map((arrow) => arrow.board)).toEqual([5, 10, 15, 20, 25, 30, 35])
    expect(ARROWS[3]!.metres).toBe(Math.max(...ARROWS.map((arrow) => arrow.metres)))
    expect(LANE_DOTS.map((dot) => dot.board).sort((a, b) => a - b)).toEqual([3, 5, 8, 11, 14, 26, 29, 32, 35, 37])
  })

  it('limits cross tilt to 0.040 in, 0.0095 m/s² of gravity across the lane (rules summary, arithmetic)', () => {
    expect((LEVELNESS_METRES / LANE_WIDTH_METRES) * STANDARD_GRAVITY).toBeCloseTo(0.0095, 4)
  })

  it('refuses a pin that does not exist', () => {
    expect(() => pinSpot(11)).toThrow('Pin 11 does not exist')
  })
})
