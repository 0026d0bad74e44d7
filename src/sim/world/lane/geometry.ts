import { BOARD_COUNT, boardToMetres, feetToMetres, inchesToMetres, LANE_WIDTH_METRES } from '../../units.js'

/*
 * Lane dimensions of the governing bodies' published rules (US manual and world body's technical data of Nov 2006, as
 * summarised by several independent federations). Markings differ between sources: they are for drawing, never for physics.
 */

/** Foul line to the centre of the headpin spot: 60 ft ± 1/2 in. */
export const HEADPIN_DISTANCE_METRES = feetToMetres(60)
export const HEADPIN_TOLERANCE_METRES = inchesToMetres(0.5)
/** Headpin spot to the pit, tail plank left out: 34 3/16 in. */
export const HEADPIN_TO_PIT_METRES = inchesToMetres(34 + 3 / 16)
/** Foul line to the pit, tail plank left out: 62 ft 10 3/16 in. */
export const LANE_LENGTH_METRES = HEADPIN_DISTANCE_METRES + HEADPIN_TO_PIT_METRES
export const TAIL_PLANK_METRES = inchesToMetres(2)

export const LEAST_LANE_WIDTH_METRES = inchesToMetres(41)
export const GREATEST_LANE_WIDTH_METRES = inchesToMetres(42)
/** Board 20 from either side. */
export const CENTRE_BOARD = (BOARD_COUNT + 1) / 2
/** Lane with both gutters: 60 to 60 1/4 in. */
export const LANE_WITH_GUTTERS_METRES = inchesToMetres(60)
/** Follows from 60 in over all; 9 1/4 in on a 41.5 in lane. */
export const GUTTER_WIDTH_METRES = (LANE_WITH_GUTTERS_METRES - LANE_WIDTH_METRES) / 2
/** Round gutter below the lane's surface: 1 7/8 in. */
export const GUTTER_DEPTH_METRES = inchesToMetres(1 + 7 / 8)
export const LEAST_APPROACH_METRES = feetToMetres(15)

/** Centre to centre of neighbouring pins, an equilateral triangle: 12 in. */
export const PIN_SPACING_METRES = inchesToMetres(12)
/** Pin row to pin row: 12 in × √3 / 2 = 10.392 in. */
export const PIN_ROW_METRES = (PIN_SPACING_METRES * Math.sqrt(3)) / 2
export const PIN_SPOT_DIAMETER_METRES = inchesToMetres(2.25)
/** Greatest departure from level, crosswise tilt, crown or depression: 40/1000 in. */
export const LEVELNESS_METRES = inchesToMetres(0.04)

/** A mark painted on the lane, for drawing. */
export interface LaneMark {
  readonly board: number
  readonly metres: number
}

/** Each pin further from the middle stands this many rows back and half spacings aside. */
const PIN_PLACES: readonly (readonly [rowsBack: number, halfSpacingsLeft: number])[] = [
  [0, 0],
  [1, 1],
  [1, -1],
  [2, 2],
  [2, 0],
  [2, -2],
  [3, 3],
  [3, 1],
  [3, -1],
  [3, -3],
]

/** Where pin n (1 to 10) stands: metres from the foul line, and metres from the right edge of the lane. */
export function pinSpot(pin: number): { readonly metres: number; readonly lateralMetres: number } {
  const place = PIN_PLACES[pin - 1]
  if (place === undefined) throw new RangeError(`Pin ${pin} does not exist; pins are 1 to 10.`)
  const [rowsBack, halfSpacingsLeft] = place
  return {
    metres: HEADPIN_DISTANCE_METRES + rowsBack * PIN_ROW_METRES,
    lateralMetres: LANE_WIDTH_METRES / 2 + (halfSpacingsLeft * PIN_SPACING_METRES) / 2,
  }
}

/** Distance at which bowlers read the arrows, 15 ft; sources give 12 to 17 ft. */
export const ARROWS_METRES = feetToMetres(15)

/** Seven arrows on boards 5, 10 ... 35 in a V whose point is furthest from the bowler (common drawing, no source for the slant). */
export const ARROWS: readonly LaneMark[] = [5, 10, 15, 20, 25, 30, 35].map((board) => ({
  board,
  metres: feetToMetres(15.75 - (3.25 * Math.abs(board - CENTRE_BOARD)) / 15),
}))

/** Ten dots beyond the foul line, on boards 3, 5, 8, 11, 14 and their mirror images; 7 to 7.5 ft by most sources. */
export const LANE_DOTS: readonly LaneMark[] = [3, 5, 8, 11, 14, 26, 29, 32, 35, 37].map((board) => ({
  board,
  metres: feetToMetres(7.5),
}))

/** Dots on the approach, 12 and 15 ft before the foul line, hence negative distances. */
export const APPROACH_DOTS: readonly LaneMark[] = [-12, -15].flatMap((feet) =>
  [5, 10, 15, 20, 25, 30, 35].map((board) => ({ board, metres: feetToMetres(feet) })),
)

/** Lateral place of the headpin, the middle of board 20. */
export const HEADPIN_LATERAL_METRES = boardToMetres(CENTRE_BOARD)
