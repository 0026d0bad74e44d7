import type { CoverUptake } from '../lane/wear.js'
import { carriedFilmShare, coverFriction, coverUptake } from './cover.js'
import { coreOf, freshCoverShare, spinRadiusOfGyration, trackGap } from './flare.js'
import { type PreparedFriction, prepareFriction } from './friction.js'
import { BALL_RADIUS_METRES, type BallSpecification } from './specification.js'

/** All a path needs of a ball, worked out once per ball and bowler. */
export interface BallDynamics {
  readonly massKilograms: number
  /** 1 + R²/rg²: how much slip a loss of one m/s of speed takes away with it. */
  readonly slipFactor: number
  readonly friction: PreparedFriction
  /** Share of the film carried on the track that adds to the lane's film: what did not soak in, on cover met before. */
  readonly carriedFilmShare: number
  /** Share of the cover under the ball that is fresh, 0 (no flare) to 1. */
  readonly freshCoverShare: number
  readonly uptake: CoverUptake
}

/**
 * The dynamics of a ball thrown with its spin axis `pinAngleRadians` from the pin.
 * @param pinAngleRadians the bowler's own angle where it differs from the layout's.
 */
export function dynamicsOf(ball: BallSpecification, pinAngleRadians: number = ball.pinAngleRadians): BallDynamics {
  const core = coreOf(
    ball.radiusOfGyrationMetres,
    ball.differentialMetres,
    ball.intermediateDifferentialMetres,
    pinAngleRadians,
  )
  const spinRadius = spinRadiusOfGyration(core)
  const fresh = freshCoverShare(trackGap(core, BALL_RADIUS_METRES))
  return {
    massKilograms: ball.massKilograms,
    slipFactor: 1 + (BALL_RADIUS_METRES * BALL_RADIUS_METRES) / (spinRadius * spinRadius),
    friction: prepareFriction(coverFriction(ball.cover, ball.surfaceGrit, ball.polished)),
    carriedFilmShare: carriedFilmShare(ball.cover) * (1 - fresh),
    freshCoverShare: fresh,
    uptake: coverUptake(ball.cover, ball.surfaceGrit, ball.polished),
  }
}
