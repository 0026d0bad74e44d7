import type { Hand } from '../../sim/world/bowler/profile.js'
import type { OilFilm } from '../../sim/world/lane/film.js'
import type { RackPicture } from '../../sim/world/pins/rack-motion.js'

export type TraceLook = 'last' | 'older' | 'oldest' | 'truth' | 'best' | 'known'

/** A path down the lane: boards from the bowler's own side at equal steps of distance; NaN where there is none. */
export interface Trace {
  readonly boards: ArrayLike<number>
  readonly firstFeet: number
  readonly stepFeet: number
  readonly look: TraceLook
}

/** A path as the simulator tells it: boards at the middle of each half foot. */
export const pathTrace = (boards: ArrayLike<number>, look: TraceLook): Trace => ({
  boards,
  firstFeet: 0.25,
  stepFeet: 0.5,
  look,
})

/** Everything the lane's picture shows. Boards count from the bowler's own side; the film lies as the lane does. */
export interface LanePicture {
  readonly hand: Hand
  readonly standing: number
  /** The rack while its pins fall, in place of what stands. */
  readonly falling?: RackPicture
  readonly traces: readonly Trace[]
  readonly aim?: { readonly laydownBoard: number; readonly targetBoard: number }
  readonly breakpoint?: { readonly board: number; readonly feet: number }
  /** Balls on their way, each in the ink of its path. */
  readonly balls?: readonly { readonly board: number; readonly feet: number; readonly look: TraceLook }[]
  readonly oil?: OilFilm
}
