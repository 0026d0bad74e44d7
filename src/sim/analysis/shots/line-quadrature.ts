import type { BallDynamics } from '../../world/ball/dynamics.js'
import { newRollOutcome, rollBalls } from '../../world/ball/motion.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import { type Aim, deliverInto, meantThrow, scratchLaunch } from '../../world/bowler/release.js'
import type { Pricing } from '../value/pricing.js'
import { lookUpWorth } from '../value/value-table.js'
import { ANGLE_NODE_STEP, ANGLE_NODES, angleNodes, angleWeights, NARROW_SIGMA } from './angle-mixture.js'
import type { FilmInPlay } from './direct-worth.js'
import { LATERAL_NODES, LATERAL_WEIGHTS, shareAbove } from './line-value.js'

/** Angle nodes at which speed, spin and rotation are missed by one standard deviation; between them it goes linearly. */
const STATIONS = [2, 5, 8] as const
const STATION_STEP = STATIONS[1] - STATIONS[0]
/** Places among the laydown's nodes: the one without a miss, and the others. */
const MIDDLE = 1
const SIDES = [0, 2] as const
/** Places among a delivery's normal numbers. */
const LAYDOWN = 0
const ANGLE = 1
const OTHERS = [2, 3, 4] as const

const launches = Array.from({ length: ANGLE_NODES }, scratchLaunch)
const outcomes = Array.from({ length: ANGLE_NODES }, newRollOutcome)
const normals = new Float64Array(5)
const laterals = new Float64Array(ANGLE_NODES)
const tangents = new Float64Array(ANGLE_NODES)
const outermost = new Float64Array(ANGLE_NODES)
const varianceOfOthers = new Float64Array(STATIONS.length)

/**
 * Expected worth of one line on one film: the misses of laydown and angle are rolled node by node, the others smear the
 * place at the pins by as much as they move it. As good as hundreds of rolled misses for the cost of a few dozen, and
 * free of their noise, but not exact: for comparing lanes, not for the last word.
 */
export function quadratureWorth(
  { film, steps }: FilmInPlay,
  ball: BallDynamics,
  profile: BowlerProfile,
  aim: Aim,
  pricing: Pricing,
): number {
  const meant = meantThrow(profile, aim, 'strike')
  const rollAngles = (sidestep: number): void => {
    normals.fill(0)
    normals[LAYDOWN] = sidestep
    for (let b = 0; b < ANGLE_NODES; b++) {
      normals[ANGLE] = angleNodes[b]
      deliverInto(launches[b], meant, normals)
    }
    rollBalls(film, steps, ball, launches, outcomes, ANGLE_NODES)
    for (let b = 0; b < ANGLE_NODES; b++) {
      laterals[b] = outcomes[b].lateralAtPinsMetres
      tangents[b] = outcomes[b].tangentAtPins
      outermost[b] = outcomes[b].breakpointLateralMetres
    }
  }
  rollAngles(0)
  let rolled = 0
  for (const node of STATIONS)
    for (const other of OTHERS) {
      normals.fill(0)
      normals[ANGLE] = angleNodes[node]
      normals[other] = 1
      deliverInto(launches[rolled++], meant, normals)
    }
  rollBalls(film, steps, ball, launches, outcomes, rolled)
  for (let station = 0; station < STATIONS.length; station++) {
    varianceOfOthers[station] = 0
    for (let other = 0; other < OTHERS.length; other++) {
      const { lateralAtPinsMetres } = outcomes[station * OTHERS.length + other]
      const moved = lateralAtPinsMetres - laterals[STATIONS[station]]
      varianceOfOthers[station] += moved * moved
    }
  }
  let worth = LATERAL_WEIGHTS[MIDDLE] * worthOfAngles(aim, pricing)
  for (const side of SIDES) {
    rollAngles(LATERAL_NODES[side])
    worth += LATERAL_WEIGHTS[side] * worthOfAngles(aim, pricing)
  }
  return worth
}

function worthOfAngles(aim: Aim, pricing: Pricing): number {
  const table = pricing.tables[aim.speedStep + 1]
  let sum = 0
  for (let b = 0; b < ANGLE_NODES; b++) {
    const before = Math.max(0, b - 1)
    const after = Math.min(ANGLE_NODES - 1, b + 1)
    const narrow = NARROW_SIGMA / ((after - before) * ANGLE_NODE_STEP)
    const onLane = shareAbove(outermost[b], Math.abs((outermost[after] - outermost[before]) * narrow))
    let worth = (1 - onLane) * pricing.gutterWorth
    if (onLane > 0) {
      const byAngle = (laterals[after] - laterals[before]) * narrow
      worth +=
        onLane *
        lookUpWorth(table, laterals[b], tangents[b], Math.sqrt(byAngle * byAngle + atNode(varianceOfOthers, b)))
    }
    sum += angleWeights[b] * worth
  }
  return sum
}

/** A figure of the stations at an angle node, held beyond the outer ones. */
function atNode(stationValues: Float64Array, node: number): number {
  const along = Math.min(STATIONS.length - 1, Math.max(0, (node - STATIONS[0]) / STATION_STEP))
  const first = Math.min(STATIONS.length - 2, Math.floor(along))
  return stationValues[first] + (stationValues[first + 1] - stationValues[first]) * (along - first)
}
