import { feetToMetres } from '../../../../src/sim/units.js'
import type { OilPass } from '../../../../src/sim/world/lane/oil-pass.js'
import type { OilPattern } from '../../../../src/sim/world/lane/pattern.js'

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
    centred('forward', 2, 73.5, 40),
    centred('reverse', 2, 37, 32),
    centred('forward', 2, 18.5, 22, 8),
    centred('forward', 9, 111, 40),
    centred('reverse', 9, 74, 25),
    centred('forward', 10, 111, 39),
    centred('reverse', 10, 74, 27),
    centred('forward', 11, 111, 38),
    centred('reverse', 11, 74, 29),
    centred('forward', 12, 111, 40),
    centred('reverse', 12, 74, 31),
    centred('forward', 13, 111, 39),
    centred('reverse', 13, 74, 33),
    centred('forward', 13, 111, 20, 8),
  ],
}

/** Invented flat long pattern: 45 ft, 26.0 mL, 2.5:1. */
export const flatFortyFive: OilPattern = {
  name: 'flat forty-five',
  passes: [
    centred('forward', 1, 223.5, 45),
    centred('reverse', 1, 149, 36),
    centred('forward', 1, 37, 25, 8),
    centred('forward', 8, 65.5, 45),
    centred('reverse', 8, 43.5, 30),
    centred('forward', 10, 65.5, 44),
    centred('reverse', 10, 43.5, 32),
    centred('forward', 12, 65.5, 43),
    centred('reverse', 12, 43.5, 34),
    centred('forward', 14, 65.5, 45),
    centred('reverse', 14, 43.5, 36),
    centred('forward', 16, 65.5, 44),
    centred('reverse', 16, 43.5, 30),
    centred('forward', 15, 65.5, 23, 8),
  ],
}

/** Invented short pattern: 35 ft, 23.0 mL, 3:1. */
export const shortThirtyFive: OilPattern = {
  name: 'short thirty-five',
  passes: [
    centred('forward', 2, 172, 35),
    centred('reverse', 2, 114.5, 28),
    centred('forward', 2, 28.5, 19, 8),
    centred('forward', 8, 81, 35),
    centred('reverse', 8, 54, 23),
    centred('forward', 10, 81, 34),
    centred('reverse', 10, 54, 25),
    centred('forward', 12, 81, 33),
    centred('reverse', 12, 54, 27),
    centred('forward', 14, 81, 35),
    centred('reverse', 14, 54, 28),
    centred('forward', 14, 81, 18, 8),
  ],
}

/** Invented flat pattern of the usual length: 40 ft, 26.0 mL, 2.5:1. */
export const flatForty: OilPattern = {
  name: 'flat forty',
  passes: [
    centred('forward', 2, 235, 40),
    centred('reverse', 2, 157, 32),
    centred('forward', 2, 39, 22, 8),
    centred('forward', 8, 66, 40),
    centred('reverse', 8, 44, 26),
    centred('forward', 10, 66, 39),
    centred('reverse', 10, 44, 28),
    centred('forward', 12, 66, 38),
    centred('reverse', 12, 44, 30),
    centred('forward', 14, 66, 40),
    centred('reverse', 14, 44, 32),
    centred('forward', 16, 66, 39),
    centred('reverse', 16, 44, 26),
    centred('forward', 15, 66, 20, 8),
  ],
}

/** Evenly oiled from board 2 to board 38, 40 ft, 18.7 mL, for checks that want no shape. */
export const plainForty: OilPattern = {
  name: 'plain forty',
  passes: [{ ...centred('forward', 2, 18_700 / 37, 40, 0) }],
}
