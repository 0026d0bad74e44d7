import type { JudgedThrow } from '../shots/worth-matrix.js'
import type { Lesson, Probe, Probing } from './probing.js'

/** The probe that is worth most when its lesson counts for every throw to come. */
export function aheadOf({ probes }: Pick<Probing, 'probes'>, throwsToCome: number): Probe {
  const value = ({ worth, lesson }: Probe): number => worth + throwsToCome * lesson.pins
  return probes.reduce((best, one) => (value(one) > value(best) ? one : best))
}

/** The probe that teaches most. */
export function mostTeaching({ probes }: Pick<Probing, 'probes'>): Probe {
  return probes.reduce((best, one) => (one.lesson.pins > best.lesson.pins ? one : best))
}

export interface LessonsCompared {
  readonly probing: Pick<Probing, 'lessonOf'>
  readonly best: Probe | JudgedThrow
  readonly chosen: JudgedThrow
  readonly throwsToCome: number
  /** What the best looking ahead gives up now for its lesson: the best of this throw alone less it. */
  readonly lostByBestNowPins: number
}

/**
 * What a choice loses by its lesson against the best one looking ahead. It can't be more than what learning a throw
 * later costs: the throw between, played as if nothing were to be learned, and the lesson missing on it.
 */
export function lessonBetween(compared: LessonsCompared): { pins: number; standardErrorPins: number } {
  const { probing, best, chosen, throwsToCome, lostByBestNowPins } = compared
  if (throwsToCome === 0) return { pins: 0, standardErrorPins: 0 }
  const bestLesson = 'lesson' in best ? best.lesson : probing.lessonOf(best)
  const chosenLesson = probing.lessonOf(chosen)
  const never = throwsToCome * (bestLesson.pins - chosenLesson.pins)
  const later = Math.max(0, lostByBestNowPins) + bestLesson.pins
  return never <= later
    ? { pins: never, standardErrorPins: throwsToCome * spreadBetween(bestLesson, chosenLesson) }
    : { pins: later, standardErrorPins: spreadBetween(bestLesson, null) }
}

/** One standard error of a lesson, or of the difference of two on the same lanes. */
function spreadBetween(first: Lesson, second: Lesson | null): number {
  const { shares, onEachLane } = first
  let mean = 0
  let square = 0
  const gap = (lane: number): number => onEachLane[lane] - (second?.onEachLane[lane] ?? 0)
  for (let lane = 0; lane < shares.length; lane++) mean += shares[lane] * gap(lane)
  for (let lane = 0; lane < shares.length; lane++) {
    const off = shares[lane] * (gap(lane) - mean)
    square += off * off
  }
  return Math.sqrt(square)
}
