import type { OilPass, OilPattern } from '../../../src/sim/lane/pattern.js'
import { feetToMetres } from '../../../src/sim/units.js'

/** A pass the same number of boards in from both edges, from the foul line to `farFeet`. */
const centred = (
  direction: 'forward' | 'reverse',
  inset: number,
  microlitresPerBoard: number,
  farFeet: number,
  taperFeet = 2,
): OilPass => ({
  direction,
  fromBoard: inset,
  toBoard: 40 - inset,
  microlitresPerBoard,
  fromMetres: 0,
  toMetres: feetToMetres(farFeet),
  taperMetres: feetToMetres(taperFeet),
})

/** Invented house pattern: 40 ft, 24.0 mL, 10:1. */
export const houseForty: OilPattern = {
  name: 'house forty',
  passes: [
    centred('forward', 2, 68.5, 40),
    centred('reverse', 2, 34, 32),
    centred('forward', 2, 17, 22, 8),
    centred('forward', 8, 103, 40),
    centred('reverse', 8, 68.5, 25),
    centred('forward', 9, 103, 39),
    centred('reverse', 9, 68.5, 27),
    centred('forward', 10, 103, 38),
    centred('reverse', 10, 68.5, 29),
    centred('forward', 11, 103, 40),
    centred('reverse', 11, 68.5, 31),
    centred('forward', 12, 103, 39),
    centred('reverse', 12, 68.5, 33),
    centred('forward', 13, 103, 20, 8),
  ],
}

/** Invented flat long pattern: 45 ft, 26.0 mL, 2.5:1. */
export const flatFortyFive: OilPattern = {
  name: 'flat forty-five',
  passes: [
    centred('forward', 2, 153, 45),
    centred('reverse', 2, 76.5, 36),
    centred('forward', 2, 38, 25, 8),
    centred('forward', 4, 85, 45),
    centred('reverse', 4, 56.5, 28),
    centred('forward', 7, 85, 44),
    centred('reverse', 7, 56.5, 30),
    centred('forward', 10, 85, 43),
    centred('reverse', 10, 56.5, 32),
    centred('forward', 13, 85, 45),
    centred('reverse', 13, 56.5, 35),
    centred('forward', 15, 85, 44),
    centred('reverse', 15, 56.5, 37),
    centred('forward', 15, 85, 23, 8),
  ],
}

/** Invented short pattern: 35 ft, 23.0 mL, 3:1. */
export const shortThirtyFive: OilPattern = {
  name: 'short thirty-five',
  passes: [
    centred('forward', 2, 121, 35),
    centred('reverse', 2, 60.5, 28),
    centred('forward', 2, 30, 19, 8),
    centred('forward', 5, 74, 35),
    centred('reverse', 5, 49.5, 22),
    centred('forward', 7, 74, 34),
    centred('reverse', 7, 49.5, 23),
    centred('forward', 9, 74, 33),
    centred('reverse', 9, 49.5, 25),
    centred('forward', 11, 74, 35),
    centred('reverse', 11, 49.5, 27),
    centred('forward', 13, 74, 34),
    centred('reverse', 13, 49.5, 29),
    centred('forward', 14, 74, 18, 8),
  ],
}

/** Invented flat pattern of the usual length: 40 ft, 26.0 mL, 2.5:1. */
export const flatForty: OilPattern = {
  name: 'flat forty',
  passes: [
    centred('forward', 2, 157, 40),
    centred('reverse', 2, 78.5, 32),
    centred('forward', 2, 39.5, 22, 8),
    centred('forward', 4, 83.5, 40),
    centred('reverse', 4, 55.5, 25),
    centred('forward', 7, 83.5, 39),
    centred('reverse', 7, 55.5, 27),
    centred('forward', 10, 83.5, 38),
    centred('reverse', 10, 55.5, 29),
    centred('forward', 13, 83.5, 40),
    centred('reverse', 13, 55.5, 31),
    centred('forward', 15, 83.5, 39),
    centred('reverse', 15, 55.5, 33),
    centred('forward', 15, 83.5, 20, 8),
  ],
}

/** Evenly oiled from board 2 to board 38, 40 ft, 18.7 mL, for checks that want no shape. */
export const plainForty: OilPattern = {
  name: 'plain forty',
  passes: [{ ...centred('forward', 2, 18_700 / 37, 40, 0) }],
}
