/**
 * The one place where the trade's units meet SI. Everything inside src/sim works in metres, seconds,
 * kilograms and radians; film alone is kept in micrometres and volumes in microlitres, because
 * 1 µm × 1 m² = 1 mL keeps the oil's book readable.
 */

const METRES_PER_INCH = 0.0254
const METRES_PER_FOOT = 0.3048
const KILOGRAMS_PER_POUND = 0.45359237
export const STANDARD_GRAVITY = 9.80665

/** Nominal lane width, 41.5 in (allowed 41 to 42 in). */
export const LANE_WIDTH_METRES = 41.5 * METRES_PER_INCH
export const BOARD_COUNT = 39
export const BOARD_WIDTH_METRES = LANE_WIDTH_METRES / BOARD_COUNT

const METRES_PER_SECOND_PER_MPH = 0.44704

/** Lateral place of a board's centre, in metres from the right edge; fractions of a board are allowed. */
export const boardToMetres = (board: number): number => (board - 0.5) * BOARD_WIDTH_METRES
/** Board (fractional) whose centre lies `metres` from the right edge. */
export const metresToBoard = (metres: number): number => metres / BOARD_WIDTH_METRES + 0.5
/** A distance counted in boards, in metres. */
export const boardsToMetres = (boards: number): number => boards * BOARD_WIDTH_METRES
export const metresToBoards = (metres: number): number => metres / BOARD_WIDTH_METRES
export const feetToMetres = (feet: number): number => feet * METRES_PER_FOOT
export const metresToFeet = (metres: number): number => metres / METRES_PER_FOOT
export const inchesToMetres = (inches: number): number => inches * METRES_PER_INCH
export const metresToInches = (metres: number): number => metres / METRES_PER_INCH
export const mphToMetresPerSecond = (mph: number): number => mph * METRES_PER_SECOND_PER_MPH
export const metresPerSecondToMph = (speed: number): number => speed / METRES_PER_SECOND_PER_MPH
export const rpmToRadiansPerSecond = (rpm: number): number => (rpm * 2 * Math.PI) / 60
export const radiansPerSecondToRpm = (spin: number): number => (spin * 60) / (2 * Math.PI)
export const degreesToRadians = (degrees: number): number => (degrees * Math.PI) / 180
export const radiansToDegrees = (radians: number): number => (radians * 180) / Math.PI
export const poundsToKilograms = (pounds: number): number => pounds * KILOGRAMS_PER_POUND
export const kilogramsToPounds = (kilograms: number): number => kilograms / KILOGRAMS_PER_POUND
