import { inchesToMetres, LANE_WIDTH_METRES } from '../../units.js'

/** Pin spots stand in an equilateral triangle with 12 in between neighbours (governing body's lane rules). */
const SPOT_PITCH_METRES = inchesToMetres(12)
const ROW_PITCH_METRES = (SPOT_PITCH_METRES * Math.sqrt(3)) / 2

const ROW: readonly number[] = [0, 1, 1, 2, 2, 2, 3, 3, 3, 3]
/** Half pitches to the left of the head pin. */
const COLUMN: readonly number[] = [0, 1, -1, 2, 0, -2, 3, 1, -1, -3]

/** Metres down-lane from the head pin spot; index is the pin number less one. */
export const SPOT_DOWN_LANE_METRES: readonly number[] = ROW.map((row) => row * ROW_PITCH_METRES)
/** Metres to the left of the head pin spot, as the bowler sees it. */
export const SPOT_LEFT_METRES: readonly number[] = COLUMN.map((column) => (column * SPOT_PITCH_METRES) / 2)

/** From the head pin spot to the end of the deck: 62 ft 10 3/16 in less 60 ft. */
export const DECK_END_METRES = inchesToMetres(34.1875)
export const DECK_HALF_WIDTH_METRES = LANE_WIDTH_METRES / 2
/** From the lane's middle to a side wall: lane and both gutters together measure 60 to 60 1/4 in. */
export const WALL_METRES = inchesToMetres(30.1)
/** Depth of the flat gutter beside the pins; 3 1/4 to 3 3/4 in, from memory. */
export const GUTTER_DEPTH_METRES = inchesToMetres(3.5)
/** A body whose centre of gravity is this far past the deck drops into the pit, and nothing comes back from there. */
export const PIT_METRES = DECK_END_METRES + inchesToMetres(2.5)

/** The same for the inner loops, in one piece. */
export const BUILDING_MEASURES = {
  deckEnd: DECK_END_METRES,
  halfWidth: DECK_HALF_WIDTH_METRES,
  gutterDepth: GUTTER_DEPTH_METRES,
  wall: WALL_METRES,
  pit: PIT_METRES,
}
