import { exponential } from '../../exact-math.js'
import { feetToMetres, metresToBoard } from '../../units.js'
import {
  copyFilm,
  FILM_BOARDS,
  FILM_ROW_METRES,
  FILM_ROWS,
  filmVolumeMicrolitres,
  MICROLITRES_PER_MICRON_CELL,
  type OilFilm,
} from './film.js'
import { FOOTPRINT_REACH_BOARDS, FOOTPRINT_WIDTH_BOARDS, footprintWeight } from './footprint.js'

/** A lane's oil and its book: film + wiped = laid. */
export interface LaneState {
  readonly film: OilFilm
  readonly laidMicrolitres: number
  /** Taken off the lane with the balls and wiped away between throws. */
  readonly wipedMicrolitres: number
}

/** What a cover does to oil, whatever the core turns towards the lane. Shares from 0 to 1. */
export interface CoverUptake {
  /** Share of the film under the middle of the track that one pass lifts onto the cover; more for rough, thirsty covers. */
  readonly pickupShare: number
  /**
   * Share of the lifted oil that stays loose on the cover instead of soaking in: near 1 for plastic, about 0.6 for
   * thirsty resin. It is what a ball without flare would lay down again; flare is counted apart.
   */
  readonly layDownShare: number
}

/** One ball's trip over the oil. */
export interface WearingPass {
  /** Metres from the right edge at the middle of each of the 120 rows; NaN where the ball does not touch the lane. */
  readonly path: Float64Array
  readonly coverUptake: CoverUptake
  /** Share of the cover that is clean when it meets the lane: near 0 without flare, near 1 when each lap is a fresh ring. */
  readonly freshCoverShare: number
}

/** Loose oil runs out over this distance of travel (chosen, see the field checks of the oil tests). */
const LAY_DOWN_METRES = feetToMetres(6)
const LAID_DOWN_PER_ROW = 1 - exponential(-FILM_ROW_METRES / LAY_DOWN_METRES)

/** Share of the film difference between two boards that crosses over when a ball presses on both with full weight (chosen). */
const LEVELLED_SHARE = 0.02

/** The state of a lane nobody has played on. */
export function freshLane(film: OilFilm): LaneState {
  return { film, laidMicrolitres: filmVolumeMicrolitres(film), wipedMicrolitres: 0 }
}

/** The lane after one more ball, which is wiped before it comes back. The state passed in stays as it was. */
export function wearLane(lane: LaneState, pass: WearingPass): LaneState {
  const film = copyFilm(lane.film)
  const wiped = wearFilm(film, pass)
  return { film, laidMicrolitres: lane.laidMicrolitres, wipedMicrolitres: lane.wipedMicrolitres + wiped }
}

const pressed = new Float64Array(2 * FOOTPRINT_REACH_BOARDS + 1)

/**
 * Wears a film in place, for those who keep many of them.
 *
 * In every row the ball lifts a share of the film under its footprint. Part of that soaks into the cover, and what flare
 * turns away from the lane comes back clean; the rest stays loose on the track and runs out further on, past the end of the
 * pattern too, which is carrydown. The same law therefore gives loss along the whole lane to a ball that flares, and loss in
 * the heads with gain further on to one that does not. It is a model of our own: no such law is published.
 *
 * @returns microlitres that left the lane on the ball.
 */
export function wearFilm(film: OilFilm, pass: WearingPass): number {
  const { microns } = film
  const { pickupShare, layDownShare } = pass.coverUptake
  const looseShare = layDownShare * (1 - pass.freshCoverShare)
  let loose = 0
  let lost = 0
  for (let row = 0; row < FILM_ROWS; row++) {
    const board = metresToBoard(pass.path[row]!)
    if (Number.isNaN(board)) continue
    const first = Math.max(Math.ceil(board - FOOTPRINT_REACH_BOARDS), 1)
    const last = Math.min(Math.floor(board + FOOTPRINT_REACH_BOARDS), FILM_BOARDS)
    if (first > last) continue
    const start = row * FILM_BOARDS + first - 1
    const count = last - first + 1

    let lifted = 0
    let pressedSum = 0
    for (let i = 0; i < count; i++) {
      const weight = footprintWeight(Math.abs(first + i - board))
      const taken = pickupShare * weight * microns[start + i]!
      microns[start + i]! -= taken
      lifted += taken
      pressed[i] = weight
      pressedSum += weight
    }
    loose += looseShare * lifted
    lost += (1 - looseShare) * lifted
    const laidDownAtFullWeight = (loose * LAID_DOWN_PER_ROW) / FOOTPRINT_WIDTH_BOARDS
    loose -= laidDownAtFullWeight * pressedSum

    let squeezedIn = 0
    for (let i = 0; i < count; i++) {
      const squeezedOut =
        i + 1 < count
          ? LEVELLED_SHARE * Math.min(pressed[i]!, pressed[i + 1]!) * (microns[start + i]! - microns[start + i + 1]!)
          : 0
      microns[start + i]! += laidDownAtFullWeight * pressed[i]! + squeezedIn - squeezedOut
      squeezedIn = squeezedOut
    }
  }
  return (lost + loose) * MICROLITRES_PER_MICRON_CELL
}
