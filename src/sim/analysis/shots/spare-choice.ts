import { arcTangent } from '../../exact-math.js'
import { samplesFrom } from '../../sample-ranges.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import type { RollOutcome } from '../../world/ball/launch.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, meantThrow, type ReleaseKind } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES, HEADPIN_LATERAL_METRES } from '../../world/lane/geometry.js'
import { countPins } from '../../world/pins/leaves.js'
import type { RackNature } from '../../world/pins/nature.js'
import { throwAtRack } from '../../world/pins/rack.js'
import { spareCurveAt } from '../carry/spare-odds.js'
import type { Pricing } from '../value/pricing.js'
import { weighSecondBall } from '../value/worth.js'
import { deliveryNodes } from './delivery-nodes.js'
import { deliverAll, type FilmInPlay, meanOf } from './direct-worth.js'

/** A way to shoot at what stands. */
export interface SpareShot {
  readonly ballIndex: number
  readonly aim: Aim
  readonly release: ReleaseKind
}

export interface PricedSpare extends SpareShot {
  readonly worth: number
}

/** Deliveries summed per shot while searching. */
const SEARCH_NODES = deliveryNodes(48, samplesFrom('spareSearch', 48))
const searchWorths = new Float64Array(48)

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

/** Chance of clearing what stands, by the table of straight spare balls. */
export function chanceByTable({ standing }: SpareSituation, rolled: RollOutcome): number {
  return spareCurveAt(standing, HEADPIN_LATERAL_METRES - rolled.lateralAtPinsMetres).conversion
}

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
