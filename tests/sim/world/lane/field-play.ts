import { drawNormal, type RandomSource, stream } from '../../../../src/sim/random.js'
import { boardToMetres, feetToMetres, metresToFeet } from '../../../../src/sim/units.js'
import { FILM_BOARDS, FILM_ROW_METRES, FILM_ROWS, type OilFilm } from '../../../../src/sim/world/lane/film.js'
import { layPattern, type OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { type CoverUptake, freshLane, type LaneState, wearLane } from '../../../../src/sim/world/lane/wear.js'

/** First balls that reach the played band, each bowler and game (the depletion article's count of about 11). */
export const BAND_SHOTS_PER_GAME = 11

export interface FieldBall {
  readonly coverUptake: CoverUptake
  readonly freshCoverShare: number
}

export interface FieldPlay {
  readonly pattern: OilPattern
  readonly balls: readonly FieldBall[]
  readonly games: number
  /** Standard deviation of the shots about the line. 1.25 keeps 95 % of them in a band of 5 boards, 2.75 in one of 11. */
  readonly spreadBoards: number
}

export interface FieldWear {
  readonly before: LaneState
  readonly after: LaneState
  /** Band about the line that holds 95 % of the shots, in boards to either side. */
  readonly bandBoards: number
}

const LINE_AT_FEET: readonly (readonly [number, number])[] = [
  [0, 16],
  [15, 11.5],
  [32, 8.4],
  [40, 8],
  [46, 9.2],
  [52, 12.2],
  [60, 17.5],
]

/** The board the line runs over at a distance: out to the breakpoint and back to the pocket, drawn by hand. */
export function lineBoard(feet: number): number {
  const after = LINE_AT_FEET.findIndex(([place]) => place >= feet)
  const [nearFeet, nearBoard] = LINE_AT_FEET[Math.max(after - 1, 0)]!
  const [farFeet, farBoard] = LINE_AT_FEET[Math.max(after, 1)]!
  return nearBoard + ((farBoard - nearBoard) * (feet - nearFeet)) / (farFeet - nearFeet)
}

/** A drawn path, moved sideways by so many boards; the ball touches down a foot past the foul line. */
export function drawnPath(asideBoards: number): Float64Array {
  return Float64Array.from({ length: FILM_ROWS }, (_, row) => {
    const feet = metresToFeet((row + 0.5) * FILM_ROW_METRES)
    return feet < 1 ? Number.NaN : boardToMetres(lineBoard(feet) + asideBoards)
  })
}

export function playField(play: FieldPlay, seed: string): FieldWear {
  const random: RandomSource = stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })
  const before = freshLane(layPattern(play.pattern))
  let after = before
  for (let shot = 0; shot < Math.round(play.games * BAND_SHOTS_PER_GAME); shot++) {
    const ball = play.balls[shot % play.balls.length]!
    after = wearLane(after, { path: drawnPath(play.spreadBoards * drawNormal(random)), ...ball })
  }
  return { before, after, bandBoards: 2 * play.spreadBoards }
}

/** Share of the band's oil that has gone between two distances; negative where it has gained. */
export function bandLoss(wear: FieldWear, fromFeet: number, toFeet: number): number {
  return (
    1 - bandMicrons(wear.after.film, wear, fromFeet, toFeet) / bandMicrons(wear.before.film, wear, fromFeet, toFeet)
  )
}

/** Mean film of the played band between two distances. */
export function bandMicrons(film: OilFilm, wear: FieldWear, fromFeet: number, toFeet: number): number {
  let sum = 0
  let cells = 0
  for (let row = 0; row < FILM_ROWS; row++) {
    const metres = (row + 0.5) * FILM_ROW_METRES
    if (metres < feetToMetres(fromFeet) || metres > feetToMetres(toFeet)) continue
    for (let board = 1; board <= FILM_BOARDS; board++) {
      if (Math.abs(board - lineBoard(metresToFeet(metres))) > wear.bandBoards) continue
      sum += film.microns[row * FILM_BOARDS + board - 1]!
      cells++
    }
  }
  return sum / cells
}
