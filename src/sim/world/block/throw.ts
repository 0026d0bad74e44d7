import { arcTangent } from '../../exact-math.js'
import { drawNormal, type StreamKey, stream } from '../../random.js'
import { LANE_WIDTH_METRES, metresToBoard, metresToFeet } from '../../units.js'
import { type BallDynamics, dynamicsOf } from '../ball/dynamics.js'
import { type Launch, newRollOutcome, rollBall } from '../ball/motion.js'
import type { BallSpecification } from '../ball/specification.js'
import { buildStepTable } from '../ball/step-table.js'
import type { BowlerProfile } from '../bowler/profile.js'
import { type Aim, deliveredLaunch, pathAtArrows, straightToArrows } from '../bowler/release.js'
import { FILM_ROWS, mirrorFilm, type OilFilm } from '../lane/film.js'
import { HEADPIN_DISTANCE_METRES, HEADPIN_LATERAL_METRES } from '../lane/geometry.js'
import { type LaneState, wearLane } from '../lane/wear.js'
import { type CarryRung, carryRungAt } from '../pins/carry-ladder.js'
import { mirrorMask } from '../pins/leaves.js'
import { drawRackNature, type RackNature } from '../pins/nature.js'
import { watchThrowAtRack } from '../pins/rack.js'
import { mirrorPicture, type RackPicture } from '../pins/rack-motion.js'
import type { RackThrow } from '../pins/rack-throw.js'
import type { Truth } from './types.js'

/** Racks thrown for one delivery of the player; the keyed rank picks among their ordered results. */
const CARRY_LADDER_RUNGS = 12
/** Nobody compares the luck of the other bowlers: one rack tells what their ball left. */
const FIELD_RUNGS = 1

export interface Delivery {
  readonly lane: LaneState
  readonly ball: BallSpecification
  readonly profile: BowlerProfile
  readonly aim: Aim
  readonly release: 'strike' | 'spare'
  readonly standing: number
  readonly seed: string
  readonly game: number
  readonly frame: number
  readonly ballInFrame: number
  /** Which bowler on the lane throws: 0 the player, 1 and up the field. */
  readonly bowlerIndex: number
  /** What it left, where that is known already: no rack is thrown at then. */
  readonly left?: number
}

export interface Thrown {
  readonly lane: LaneState
  readonly truth: Truth
  readonly standing: number
  /** Lateral place at the arrows (15 ft), in boards from the bowler's own side; 0 or 40 where a gutter had the ball by then. */
  readonly arrowsBoard: number
}

const outcome = newRollOutcome()

/**
 * Delivers one ball with the bowler's keyed error, lets it roll, hit and wear the lane.
 * A left-hander's lane and rack are mirrored here, once; everything further in is a right-hander's.
 */
export function throwBall(delivery: Delivery): Thrown {
  const { profile, lane } = delivery
  const mirrored = profile.hand === 'left'
  const { film, launch, normals, path, dynamics, rackThrow } = rollDelivery(delivery)
  const standingHere = mirrored ? mirrorMask(delivery.standing) : delivery.standing
  const { angleRadians } = rackThrow
  const hit =
    outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES
      ? { standing: standingHere, touched: 0 }
      : delivery.left === undefined
        ? carriedAt(delivery, rackThrow).result
        : { standing: mirrored ? mirrorMask(delivery.left) : delivery.left, touched: null }

  const worn = wearLane(mirrored ? { ...lane, film } : lane, {
    path,
    coverUptake: dynamics.uptake,
    freshCoverShare: dynamics.freshCoverShare,
  })
  const toOwner = (mask: number): number => (mirrored ? mirrorMask(mask) : mask)
  return {
    lane: mirrored ? { ...worn, film: mirrorFilm(worn.film) } : worn,
    standing: toOwner(hit.standing),
    arrowsBoard: boardAtArrows(path, launch),
    truth: {
      path,
      entryBoard: metresToBoard(outcome.lateralAtPinsMetres),
      entryAngleRadians: angleRadians,
      entrySpeedMetresPerSecond: outcome.speedAtPinsMetresPerSecond,
      breakpointBoard: metresToBoard(outcome.breakpointLateralMetres),
      breakpointFeet: metresToFeet(outcome.breakpointMetres),
      hookStartFeet: metresToFeet(outcome.hookStartMetres),
      rollStartFeet: metresToFeet(outcome.rollStartMetres),
      leftLaneFeet: metresToFeet(outcome.leftLaneMetres),
      touched: hit.touched === null ? null : toOwner(hit.touched),
      laneBefore: lane,
      normals,
    },
  }
}

interface Rolled {
  readonly film: OilFilm
  readonly launch: Launch
  readonly normals: number[]
  readonly path: Float64Array
  readonly dynamics: BallDynamics
  /** How it comes to the rack, as a right-hander's; of no meaning where a gutter had it before. */
  readonly rackThrow: RackThrow
}

/** Rolls a delivery down its lane into `outcome`. */
function rollDelivery(delivery: Delivery): Rolled {
  const { profile, lane } = delivery
  const mirrored = profile.hand === 'left'
  const film = mirrored ? mirrorFilm(lane.film) : lane.film
  const normals = deliveryNormals(delivery)
  const launch = deliveredLaunch(profile, delivery.aim, delivery.release, normals)
  const dynamics = dynamicsOf(delivery.ball)
  const path = new Float64Array(FILM_ROWS)
  rollBall(film, buildStepTable(film), dynamics, launch, outcome, path)
  const rackThrow = {
    offsetMetres: HEADPIN_LATERAL_METRES - outcome.lateralAtPinsMetres,
    angleRadians: arcTangent(outcome.tangentAtPins),
    speedMetresPerSecond: outcome.speedAtPinsMetresPerSecond,
    ballMassKilograms: dynamics.massKilograms,
    standing: mirrored ? mirrorMask(delivery.standing) : delivery.standing,
  }
  return { film, launch, normals, path, dynamics, rackThrow }
}

export interface WatchedDelivery {
  /** What is left, by the bowler's own eyes. */
  readonly standing: number
  /** The rack at each instant as the bowler sees it; none where the ball never came to it. */
  readonly pictures: readonly RackPicture[]
}

/**
 * The pins of a delivery at fixed instants since the ball first touched one: the same racks are thrown as by `throwBall`, and
 * the one that counted is watched.
 */
export function watchPins(delivery: Delivery, instantsSeconds: readonly number[]): WatchedDelivery {
  const { rackThrow } = rollDelivery(delivery)
  if (outcome.leftLaneMetres < HEADPIN_DISTANCE_METRES) return { standing: delivery.standing, pictures: [] }
  const { index } = carriedAt(delivery, rackThrow)
  const { result, pictures } = watchThrowAtRack(rackThrow, natureAt(delivery, index), instantsSeconds)
  if (delivery.profile.hand === 'right') return { standing: result.standing, pictures }
  return { standing: mirrorMask(result.standing), pictures: pictures.map((one) => mirrorPicture(one)) }
}

const OWN_GUTTER_BOARD = 0
const FAR_GUTTER_BOARD = 40

function boardAtArrows(path: Float64Array, launch: Launch): number {
  const board = metresToBoard(pathAtArrows(path))
  if (!Number.isNaN(board)) return board
  return straightToArrows(launch) < LANE_WIDTH_METRES / 2 ? OWN_GUTTER_BOARD : FAR_GUTTER_BOARD
}

function deliveryNormals(delivery: Delivery): number[] {
  const source = stream(keyFor(delivery, delivery.bowlerIndex === 0 ? 'delivery' : 'field-delivery'))
  return [drawNormal(source), drawNormal(source), drawNormal(source), drawNormal(source), drawNormal(source)]
}

/**
 * The same keyed racks meet whatever ball comes, and one keyed rank picks among their results ordered from best to
 * worst: each result is thrown live, and a ball that carries better never ends up with a worse leave for its luck.
 */
function carriedAt(delivery: Delivery, rackThrow: RackThrow): CarryRung {
  const rungs = delivery.bowlerIndex === 0 ? CARRY_LADDER_RUNGS : FIELD_RUNGS
  const rank = stream(keyFor(delivery, 'carry-rank'))()
  const place = Math.min(rungs - 1, Math.floor(rank * rungs))
  return carryRungAt(rackThrow, (rung) => natureAt(delivery, rung), rungs, place)
}

const natureAt = (delivery: Delivery, rung: number): RackNature =>
  drawRackNature(stream({ ...keyFor(delivery, 'rack'), index: delivery.bowlerIndex * 100 + rung }))

function keyFor(delivery: Delivery, purpose: StreamKey['purpose']): StreamKey {
  return {
    seed: delivery.seed,
    game: delivery.game,
    frame: delivery.frame,
    ball: delivery.ballInFrame,
    purpose,
    index: delivery.bowlerIndex,
  }
}
