import { type BallDynamics, dynamicsOf } from '../ball/dynamics.js'
import { type Launch, newRollOutcome } from '../ball/launch.js'
import { rollBall } from '../ball/motion.js'
import { buildStepTable, type StepTable } from '../ball/step-table.js'
import type { SeeingRules } from '../block/types.js'
import { ARROWS_METRES, type ScratchLaunch, scratchLaunch } from '../bowler/release.js'
import { FILM_ROW_METRES, FILM_ROWS, type OilFilm } from '../lane/film.js'
import { wearFilm } from '../lane/wear.js'
import { FULL_RACK, mirrorMask } from '../pins/leaves.js'
import { type Deliveries, deliveriesOf, straightToArrows } from './deliveries.js'
import { filmAt, type HypothesisSet, mirrorInPlace } from './hypotheses.js'
import { addToBlend, clearBlend, newLaunchBlend, writeBlend } from './launch-blend.js'
import { type LeaveChances, leaveChances } from './leave-chances.js'
import { type Blur, chanceOfSeen } from './observation-model.js'
import { type SeenCells, seenCells } from './seen-cells.js'
import type { ShownThrow } from './shown.js'

/** A past throw as far as it is needed to wear other oil with it. */
export interface PastThrow {
  /** Place of the lane within the set. */
  readonly lane: number
  readonly isLeftHanded: boolean
  readonly ball: BallDynamics
  /** What most likely left the hand. */
  readonly launch: Launch
}

export interface Absorbed {
  /** Chance of what was seen under each hypothesis. */
  readonly likelihoods: Float64Array
  readonly past: PastThrow
}

const outcome = newRollOutcome()
const path = new Float64Array(FILM_ROWS)

/**
 * Judges every hypothesis by one throw and wears its oil, in place, by the path this throw would have taken on it.
 * @param lane place of the throw's lane within the set
 */
export function absorb(set: HypothesisSet, lane: number, shown: ShownThrow, seeing: SeeingRules, blur: Blur): Absorbed {
  const isLeftHanded = shown.bowler.hand === 'left'
  const ball = dynamicsOf(shown.ball)
  const cells = seenCells(shown.observation, seeing)
  const deliveries = deliveriesOf(shown, cells)
  const films = Array.from({ length: set.size }, (_, i) => filmAt(set, lane, i))
  if (isLeftHanded) for (const film of films) mirrorInPlace(film.microns)
  const steps = films.map(buildStepTable)
  const ground = probeFilms(set, films, steps, ball, deliveries.probe)
  const nodes = deliveries.nodesFor(ground.meanDrift, ground.meanLoss)
  const leave = leaveSeen(shown, isLeftHanded, cells)

  const likelihoods = new Float64Array(set.size)
  const launch = scratchLaunch()
  const blend = newLaunchBlend()
  const overall = newLaunchBlend()
  for (let i = 0; i < set.size; i++) {
    if (!ground.isJudged[i]) continue
    const drift = ground.drifts[i] - ground.meanDrift
    const loss = ground.losses[i] - ground.meanLoss
    clearBlend(blend)
    let sum = 0
    for (const node of nodes) {
      moveLaunch(launch, node, drift, loss)
      rollBall(films[i], steps[i], ball, launch, outcome)
      const chance = chanceOfSeen(cells, leave, outcome, blur)
      sum += chance
      addToBlend(blend, launch, chance + LEAST_NODE_SHARE)
    }
    likelihoods[i] = (sum / nodes.length) * deliveries.chanceOf(ground.drifts[i], ground.losses[i])
    writeBlend(blend, launch)
    addToBlend(overall, launch, set.weights[i])
    wearBy(films[i], steps[i], ball, launch, set.wearFactors[i])
  }
  const likely = scratchLaunch()
  writeBlend(overall, likely)
  passOver(set, films, steps, ball, likely, ground.isJudged, likelihoods)
  if (isLeftHanded) for (const film of films) mirrorInPlace(film.microns)
  return { likelihoods, past: { lane, isLeftHanded, ball, launch: likely } }
}

/** Wears the hypotheses that were too unlikely to be judged, and gives them the mean likelihood. */
function passOver(
  set: HypothesisSet,
  films: readonly OilFilm[],
  steps: readonly StepTable[],
  ball: BallDynamics,
  likely: Launch,
  isJudged: Uint8Array,
  likelihoods: Float64Array,
): void {
  let weight = 0
  let mean = 0
  for (let i = 0; i < set.size; i++) {
    if (!isJudged[i]) continue
    weight += set.weights[i]
    mean += set.weights[i] * likelihoods[i]
  }
  for (let i = 0; i < set.size; i++) {
    if (isJudged[i]) continue
    likelihoods[i] = mean / weight
    wearBy(films[i], steps[i], ball, likely, set.wearFactors[i])
  }
}

/** Lets past throws roll over one hypothesis' fresh oil again. */
export function replayPast(set: HypothesisSet, index: number, past: readonly PastThrow[]): void {
  const films = Array.from({ length: set.laneCount }, (_, lane) => filmAt(set, lane, index))
  let facesLeft = false
  let steps = films.map(buildStepTable)
  for (const { lane, isLeftHanded, ball, launch } of past) {
    if (isLeftHanded !== facesLeft) {
      for (const film of films) mirrorInPlace(film.microns)
      steps = films.map(buildStepTable)
      facesLeft = isLeftHanded
    }
    wearBy(films[lane], steps[lane], ball, launch, set.wearFactors[index])
  }
  if (facesLeft) for (const film of films) mirrorInPlace(film.microns)
}

/** Keeps a blend of launches defined where nothing seen is possible. */
const LEAST_NODE_SHARE = 1e-12

/** Hypotheses lighter than this share of an even weight are worn but no longer judged; together they stay below it. */
const LEAST_WEIGHT_SHARE = 0.01

interface Ground {
  readonly isJudged: Uint8Array
  /** How far each film turns the ball to the left before the arrows, in metres. */
  readonly drifts: Float64Array
  /** Speed each film takes before the pins. */
  readonly losses: Float64Array
  readonly meanDrift: number
  readonly meanLoss: number
}

function probeFilms(
  set: HypothesisSet,
  films: readonly OilFilm[],
  steps: readonly StepTable[],
  ball: BallDynamics,
  probe: Deliveries['probe'],
): Ground {
  const drifts = new Float64Array(set.size)
  const losses = new Float64Array(set.size)
  const straight = straightToArrows(probe)
  const isJudged = Uint8Array.from(set.weights, (weight) => (weight * set.size >= LEAST_WEIGHT_SHARE ? 1 : 0))
  let meanDrift = 0
  let meanLoss = 0
  let judgedWeight = 0
  for (let i = 0; i < set.size; i++) {
    if (!isJudged[i]) continue
    judgedWeight += set.weights[i]
    rollBall(films[i], steps[i], ball, probe, outcome, path)
    const drift = atArrows(path) - straight
    drifts[i] = Number.isNaN(drift) ? 0 : drift
    losses[i] = probe.speedMetresPerSecond - outcome.speedAtPinsMetresPerSecond
    meanDrift += set.weights[i] * drifts[i]
    meanLoss += set.weights[i] * losses[i]
  }
  return { isJudged, drifts, losses, meanDrift: meanDrift / judgedWeight, meanLoss: meanLoss / judgedWeight }
}

const ARROWS_ROW = ARROWS_METRES / FILM_ROW_METRES - 0.5

/** Lateral place at the arrows, halfway between the middles of two film rows. */
function atArrows(rolled: Float64Array): number {
  const row = Math.floor(ARROWS_ROW)
  return rolled[row] + (rolled[row + 1] - rolled[row]) * (ARROWS_ROW - row)
}

/** The node's launch on a film that drifts and slows more than the mean one, so that it still shows the same. */
function moveLaunch(launch: ScratchLaunch, node: Launch, drift: number, loss: number): void {
  launch.startMetres = node.startMetres
  launch.lateralMetres = node.lateralMetres - drift
  launch.directionX = node.directionX
  launch.directionY = node.directionY
  launch.speedMetresPerSecond = node.speedMetresPerSecond + loss
  launch.spinRadiansPerSecond = node.spinRadiansPerSecond
  launch.sineRotation = node.sineRotation
  launch.cosineRotation = node.cosineRotation
  launch.sineTilt = node.sineTilt
  launch.cosineTilt = node.cosineTilt
}

function leaveSeen(shown: ShownThrow, isLeftHanded: boolean, cells: SeenCells): LeaveChances | null {
  if (shown.standingBefore !== FULL_RACK || cells.entryBoard === null) return null
  const { standing } = shown.observation
  const speed = (cells.speedMetresPerSecond.from + cells.speedMetresPerSecond.to) / 2
  return leaveChances(isLeftHanded ? mirrorMask(standing) : standing, speed)
}

function wearBy(film: OilFilm, steps: StepTable, ball: BallDynamics, launch: Launch, wearFactor: number): void {
  rollBall(film, steps, ball, launch, outcome, path)
  const { pickupShare, layDownShare } = ball.uptake
  wearFilm(film, {
    path,
    coverUptake: { pickupShare: Math.min(1, pickupShare * wearFactor), layDownShare },
    freshCoverShare: ball.freshCoverShare,
  })
}
