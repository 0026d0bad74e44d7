import type { Decision } from '../../../world/block/types.js'
import { SPEED_STEPS } from '../../shots/best-line.js'
import type { FirstBallJudge } from './first-ball-judge.js'

/** What it takes to change the speed or the ball, counted in boards of feet, when the shortest change is looked for. */
const SPEED_CHANGE_BOARDS = 2
const BALL_CHANGE_BOARDS = 3
/** Candidates that are judged before the best line itself is taken. */
const TRIES = 6

/** How far one choice is from another: boards of feet and target, with a change of speed or ball counted as some. */
export function distanceBetween(a: Decision, b: Decision): number {
  return (
    Math.abs(a.aim.feetBoard - b.aim.feetBoard) +
    Math.abs(a.aim.targetBoard - b.aim.targetBoard) +
    (a.aim.speedStep === b.aim.speedStep ? 0 : SPEED_CHANGE_BOARDS) +
    (a.ballId === b.ballId ? 0 : BALL_CHANGE_BOARDS)
  )
}

/**
 * The choice nearest to `from` that is as good as the best within `tolerancePins`. Good lines lie on long ridges, so the
 * best one may be far away while a step or two would do; what is taught is the step or two.
 *
 * @param best what to be as good as
 * @param ballId looks at that ball alone
 */
export function nearestAsGood(
  judge: FirstBallJudge,
  from: Decision,
  best: Decision,
  tolerancePins: number,
  ballId?: string,
): Decision {
  const { sweeps, lines } = judge.search
  const candidates: { decision: Decision; distance: number; worth: number }[] = []
  const leastWorth = leastSweptWorth(judge, tolerancePins, ballId)
  const farthest = distanceBetween(from, best)
  for (const { ballIndex, worth } of sweeps) {
    const id = judge.setup.bag[ballIndex].id
    if (ballId !== undefined && id !== ballId) continue
    for (let at = 0; at < worth.length; at++) {
      if (worth[at] < leastWorth) continue
      const { feetBoard, targetBoard } = lines[Math.floor(at / SPEED_STEPS.length)]
      const speedStep = SPEED_STEPS[at % SPEED_STEPS.length]
      const decision: Decision = { ballId: id, aim: { feetBoard, targetBoard, speedStep }, release: 'strike' }
      const distance = distanceBetween(from, decision)
      if (distance < farthest) candidates.push({ decision, distance, worth: worth[at] })
    }
  }
  candidates.sort((a, b) => a.distance - b.distance || b.worth - a.worth)
  const found = spreadOut(candidates, TRIES).find(({ decision }) => judge.gap(best, decision).pins <= tolerancePins)
  return found?.decision ?? best
}

/** The sweep looks at few lanes, so a line must look as good there before it is worth judging. */
function leastSweptWorth({ search, setup }: FirstBallJudge, tolerancePins: number, ballId?: string): number {
  let most = Number.NEGATIVE_INFINITY
  for (const { ballIndex, worth } of search.sweeps) {
    if (ballId !== undefined && setup.bag[ballIndex].id !== ballId) continue
    for (let at = 0; at < worth.length; at++) if (worth[at] > most) most = worth[at]
  }
  return most - tolerancePins
}

/** Up to `count` of a sorted list at equal steps, the first among them. */
function spreadOut<T>(sorted: readonly T[], count: number): T[] {
  if (sorted.length <= count) return [...sorted]
  return Array.from({ length: count }, (_, k) => sorted[Math.floor((k * sorted.length) / count)])
}
