import { arcTangent } from '../../exact-math.js'
import { stream } from '../../random.js'
import { boardToMetres } from '../../units.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import type { RollOutcome } from '../../world/ball/motion.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, meantThrow, type ReleaseKind } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import { countPins } from '../../world/pins/leaves.js'
import { drawRackNature, type RackNature } from '../../world/pins/nature.js'
import { throwAtRack } from '../../world/pins/rack.js'
import { spareCurveAt } from '../carry/spare-odds.js'
import type { Pricing } from '../value/pricing.js'
import { weighSecondBall } from '../value/worth.js'
import { deliveryNodes } from './delivery-nodes.js'
import { deliverAll, type FilmInPlay, meanOf } from './direct-worth.js'

const HEADPIN_LATERAL_METRES = boardToMetres(20)

/** A way to shoot at what stands. */
export interface SpareShot {
  readonly ballIndex: number
  readonly aim: Aim
  readonly release: ReleaseKind
}

export interface PricedSpare extends SpareShot {
  readonly worth: number
}

/** Deliveries summed per shot while searching, and again, with live racks, for the shots compared at the end. */
const SEARCH_NODES = deliveryNodes(48)
const FINAL_NODES = deliveryNodes(96, 5000)
const searchWorths = new Float64Array(48)

/** Racks that the final comparison throws at: the same for every shot, and never one of the block's own. */
const finalNatures: readonly RackNature[] = Array.from({ length: 96 }, (_, index) =>
  drawRackNature(stream({ seed: 'spare-racks', game: 0, frame: 0, ball: 0, purpose: 'solver', index })),
)

export interface SpareSituation {
  readonly inPlay: FilmInPlay
  readonly bag: readonly BallDynamics[]
  readonly profile: BowlerProfile
  readonly pricing: Pricing
  readonly standing: number
}

/** Worth of a shot by the table of straight spare balls: quick, for searching. */
export function tabulatedSpareWorth(situation: SpareSituation, shot: SpareShot): number {
  deliverShot(situation, shot, SEARCH_NODES, (rolled) => tabulatedWorth(situation, rolled), searchWorths)
  return meanOf(searchWorths)
}

/** Worth of a shot, delivery by delivery, each thrown at a live rack; `into` gets one figure a delivery, for pairing. */
export function liveSpareWorth(situation: SpareSituation, shot: SpareShot, into: Float64Array): number {
  let node = 0
  deliverShot(
    situation,
    shot,
    FINAL_NODES,
    (rolled) => rackWorth(situation, shot.ballIndex, rolled, finalNatures[node++]),
    into,
  )
  return meanOf(into)
}

/** Worth of one rolled ball by the table of straight spare balls. */
export function tabulatedWorth(situation: SpareSituation, rolled: RollOutcome): number {
  if (rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES) return 0
  const curve = spareCurveAt(situation.standing, HEADPIN_LATERAL_METRES - rolled.lateralAtPinsMetres)
  return secondBallWorth(situation, curve.conversion, curve.meanPins)
}

/** Worth of one rolled ball by throwing it at a live rack. */
export function rackWorth(
  situation: SpareSituation,
  ballIndex: number,
  rolled: RollOutcome,
  nature: RackNature,
): number {
  if (rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES) return 0
  const { standing, bag } = situation
  const after = throwAtRack(
    {
      offsetMetres: HEADPIN_LATERAL_METRES - rolled.lateralAtPinsMetres,
      angleRadians: arcTangent(rolled.tangentAtPins),
      speedMetresPerSecond: rolled.speedAtPinsMetresPerSecond,
      ballMassKilograms: bag[ballIndex].massKilograms,
      standing,
    },
    nature,
  ).standing
  return secondBallWorth(situation, after === 0 ? 1 : 0, countPins(standing) - countPins(after))
}

/** Deliveries in a live comparison. */
export const LIVE_SPARE_DELIVERIES = 96

function secondBallWorth({ pricing, standing }: SpareSituation, conversion: number, meanPins: number): number {
  return weighSecondBall(pricing.weights, 10 - countPins(standing), conversion, meanPins)
}

/** Rolls a shot with every error of `nodes` and writes what each delivery is worth. */
export function deliverShot(
  { inPlay, bag, profile }: SpareSituation,
  shot: SpareShot,
  nodes: Float64Array,
  worthOf: (outcome: RollOutcome) => number,
  into: Float64Array,
): void {
  deliverAll(inPlay, bag[shot.ballIndex], meantThrow(profile, shot.aim, shot.release), nodes, worthOf, into)
}
