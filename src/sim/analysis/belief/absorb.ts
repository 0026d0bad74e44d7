import { type BallDynamics, dynamicsOf } from '../../world/ball/dynamics.js'
import { type Launch, newRollOutcome } from '../../world/ball/launch.js'
import { rollBall, rollBalls } from '../../world/ball/motion.js'
import { buildStepTable, EASY_STEPS, type StepTable } from '../../world/ball/step-table.js'
import type { SeeingRules } from '../../world/block/types.js'
import { pathAtArrows, type ScratchLaunch, scratchLaunch, straightToArrows } from '../../world/bowler/release.js'
import { FILM_ROWS, type OilFilm } from '../../world/lane/film.js'
import { wearFilm } from '../../world/lane/wear.js'
import { FULL_RACK, mirrorMask } from '../../world/pins/leaves.js'
import { blendOutcomes, forEachBetween } from './between-throws.js'
import { BLUR, TRUST } from './credit.js'
import { type Deliveries, deliveriesOf } from './deliveries.js'
import { knownLineNodes, unseenLineNodes } from './delivery-nodes.js'
import { filmAt, type HypothesisSet, mirrorInPlace } from './hypotheses.js'
import { addToBlend, clearBlend, newLaunchBlend, writeBlend } from './launch-blend.js'
import { type LeaveChances, leaveChances } from './leave-chances.js'
import { chanceOfSeen } from './observation-model.js'
import { type SeenCells, seenCells } from './seen-cells.js'
import type { ShownThrow } from './shown.js'

/** A throw as far as it is needed to judge oil by it, and to wear it. */
export interface TakenThrow {
  /** Place of the lane within the set. */
  readonly lane: number
  readonly isLeftHanded: boolean
  readonly ball: BallDynamics
  readonly cells: SeenCells
  readonly leave: LeaveChances | null
  /** How much of what it says counts. */
  readonly trust: number
  readonly deliveries: Deliveries
  /** What may have left the hand, on oil that turns and slows the ball as the set's did in the mean. */
  readonly nodes: readonly Launch[]
  readonly meanDrift: number
  readonly meanLoss: number
}

export interface Absorbed {
  /** Chance of what was seen under each hypothesis. */
  readonly likelihoods: Float64Array
  readonly taken: TakenThrow
}

const outcome = newRollOutcome()
const path = new Float64Array(FILM_ROWS)

/**
 * Judges every hypothesis by one throw and wears its oil, in place, by the path this throw would have taken on it.
 * @param lane place of the throw's lane within the set
 */
export function absorb(set: HypothesisSet, lane: number, shown: ShownThrow, seeing: SeeingRules): Absorbed {
  const isLeftHanded = shown.bowler.hand === 'left'
  const ball = dynamicsOf(shown.ball)
  const cells = seenCells(shown.observation, seeing)
  const deliveries = deliveriesOf(shown, cells)
  const films = Array.from({ length: set.size }, (_, i) => filmAt(set, lane, i))
  if (isLeftHanded) for (const film of films) mirrorInPlace(film.microns)
  const steps = films.map((film) => buildStepTable(film, EASY_STEPS))
  const pulls = films.map((film, i) => pullOf(film, steps[i], ball, deliveries.probe))
  const meanDrift = pulls.reduce((sum, { drift }, i) => sum + set.weights[i] * drift, 0)
  const meanLoss = pulls.reduce((sum, { loss }, i) => sum + set.weights[i] * loss, 0)
  const taken: TakenThrow = {
    lane,
    isLeftHanded,
    ball,
    cells,
    leave: leaveSeen(shown, isLeftHanded, cells),
    trust: shown.line ? TRUST.lineTold : TRUST.lineUntold,
    deliveries,
    nodes: deliveries.nodesFor(meanDrift, meanLoss),
    meanDrift,
    meanLoss,
  }
  const likelihoods = Float64Array.from(films, (film, i) =>
    judgeAndWear(taken, film, steps[i], pulls[i], set.wearFactors[i]),
  )
  if (isLeftHanded) for (const film of films) mirrorInPlace(film.microns)
  return { likelihoods, taken }
}

/** The chance of what was seen of a throw on some film, as seen from its bowler's hand; the throw then wears the film. */
export function judgeOn(film: OilFilm, taken: TakenThrow, wearFactor: number): number {
  const steps = buildStepTable(film, EASY_STEPS)
  return judgeAndWear(taken, film, steps, pullOf(film, steps, taken.ball, taken.deliveries.probe), wearFactor)
}

/** Keeps a blend of launches defined where nothing seen is possible. */
const LEAST_NODE_SHARE = 1e-12

const MOST_NODES = Math.max(knownLineNodes.nodes.length, unseenLineNodes.nodes.length)
const launches = Array.from({ length: MOST_NODES }, scratchLaunch)
const rolled = Array.from({ length: MOST_NODES }, newRollOutcome)
const nodeShares = new Float64Array(MOST_NODES)
const launch = scratchLaunch()
const blend = newLaunchBlend()

function judgeAndWear(taken: TakenThrow, film: OilFilm, steps: StepTable, pull: Pull, wearFactor: number): number {
  const { ball, cells, leave, deliveries, nodes } = taken
  const drift = pull.drift - taken.meanDrift
  const loss = pull.loss - taken.meanLoss
  for (let k = 0; k < nodes.length; k++) {
    moveLaunch(launches[k], nodes[k], drift, loss)
    nodeShares[k] = LEAST_NODE_SHARE
  }
  rollBalls(film, steps, ball, launches, rolled, nodes.length)
  let sum = 0
  let count = 0
  forEachBetween(nodes.length, deliveries.between, (k, next, share) => {
    blendOutcomes(rolled[k], rolled[next], share, outcome)
    const chance = chanceOfSeen(cells, leave, outcome, BLUR)
    sum += chance
    count++
    nodeShares[k] += (1 - share) * chance
    nodeShares[next] += share * chance
  })
  clearBlend(blend)
  for (let k = 0; k < nodes.length; k++) addToBlend(blend, launches[k], nodeShares[k])
  writeBlend(blend, launch)
  wearBy(film, steps, ball, launch, wearFactor)
  return (sum / count) * deliveries.chanceOf(pull.drift, pull.loss)
}

/** How far a film turns the ball to the left before the arrows, in metres, and the speed it takes before the pins. */
interface Pull {
  readonly drift: number
  readonly loss: number
}

function pullOf(film: OilFilm, steps: StepTable, ball: BallDynamics, probe: Launch): Pull {
  rollBall(film, steps, ball, probe, outcome, path)
  const drift = pathAtArrows(path) - straightToArrows(probe)
  return {
    drift: Number.isNaN(drift) ? 0 : drift,
    loss: probe.speedMetresPerSecond - outcome.speedAtPinsMetresPerSecond,
  }
}

/** The node's launch on a film that drifts and slows more than the mean one, so that it still shows the same. */
function moveLaunch(moved: ScratchLaunch, node: Launch, drift: number, loss: number): void {
  moved.startMetres = node.startMetres
  moved.lateralMetres = node.lateralMetres - drift
  moved.directionX = node.directionX
  moved.directionY = node.directionY
  moved.speedMetresPerSecond = node.speedMetresPerSecond + loss
  moved.spinRadiansPerSecond = node.spinRadiansPerSecond
  moved.sineRotation = node.sineRotation
  moved.cosineRotation = node.cosineRotation
  moved.sineTilt = node.sineTilt
  moved.cosineTilt = node.cosineTilt
}

function leaveSeen(shown: ShownThrow, isLeftHanded: boolean, cells: SeenCells): LeaveChances | null {
  if (shown.standingBefore !== FULL_RACK || cells.entryBoard === null) return null
  const { standing } = shown.observation
  const speed = (cells.speedMetresPerSecond.from + cells.speedMetresPerSecond.to) / 2
  return leaveChances(isLeftHanded ? mirrorMask(standing) : standing, speed)
}

function wearBy(film: OilFilm, steps: StepTable, ball: BallDynamics, thrown: Launch, wearFactor: number): void {
  rollBall(film, steps, ball, thrown, outcome, path)
  const { pickupShare, layDownShare } = ball.uptake
  wearFilm(film, {
    path,
    coverUptake: { pickupShare: Math.min(1, pickupShare * wearFactor), layDownShare },
    freshCoverShare: ball.freshCoverShare,
  })
}
