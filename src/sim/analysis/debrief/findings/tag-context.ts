import type { BlockSetup } from '../../../world/block/types.js'
import type { FirstBallReading, Instead, Reading } from '../reading/reading.js'
import type { Candidate, Evidence, TagKind } from './tag.js'

/** What every family of tags reads from. */
export interface TagContext {
  readonly setup: BlockSetup
  /** Of the throws that count, in order. */
  readonly readings: readonly Reading[]
}

/** How much a kind says beyond what was wrong with one choice; see Candidate.rank. */
const RANKS: Readonly<Record<TagKind, number>> = {
  'blamed-the-lane': 4,
  'missed-a-change': 4,
  'moved-too-early': 3,
  'moved-too-late': 3,
  'skipped-a-probe': 3,
  'move-too-small': 2,
  'move-too-far': 2,
  'moved-the-wrong-way': 2,
  'wrong-ball': 1,
  'wrong-speed': 1,
  'wrong-target': 0,
  'wrong-feet': 0,
  'wrong-line': 0,
  'spare-ball': 0,
  'spare-line': 0,
}

/** What a finding says, once its throws are settled. */
export interface Telling {
  readonly evidence: readonly Evidence[]
  readonly words: string
  readonly practise: string
}

/**
 * A candidate about one reading or several of one game. What each cost is what the alternative saves, but no more than the
 * grade charges, so that findings never add up to more than the grades.
 */
export function candidate<T extends Reading>(
  kind: TagKind,
  readings: readonly T[],
  savedBy: (reading: T) => number,
  telling: (readings: readonly T[], pins: number) => Telling,
): Candidate {
  const pinsOf = (reading: T): number => Math.min(savedBy(reading), reading.verdict.givenAwayPins)
  return {
    kind,
    rank: RANKS[kind],
    parts: readings.map((reading) => ({ reading, pins: pinsOf(reading) })),
    tell: (parts) => {
      const told = readings.filter((reading) => parts.some((part) => part.reading === reading))
      const pins = told.reduce((sum, reading) => sum + pinsOf(reading), 0)
      return {
        kind,
        throws: told.map(({ index }) => index),
        game: told[0].spot.game,
        frames: [...new Set(told.map(({ spot }) => spot.frame))],
        pins,
        ...telling(told, pins),
      }
    },
  }
}

/** The reading that cost most. */
export function dearestOf<T>(readings: readonly T[], pinsOf: (reading: T) => number): T {
  return readings.reduce((most, one) => (pinsOf(one) > pinsOf(most) ? one : most))
}

/** Readings of one game that have something in common, in order. */
export function alike<T extends Reading>(readings: readonly T[], commonOf: (reading: T) => string): T[][] {
  const groups = new Map<string, T[]>()
  for (const reading of readings) {
    const key = `${reading.spot.game} ${commonOf(reading)}`
    groups.set(key, [...(groups.get(key) ?? []), reading])
  }
  return [...groups.values()]
}

export function firstBalls({ readings }: TagContext): FirstBallReading[] {
  return readings.filter((reading) => reading.kind === 'first-ball')
}

/** Whether an alternative saves more than is too close to call and goes on doing so when the physics is doubted. */
export function counts(instead: Instead | null, reading: FirstBallReading): instead is Instead {
  if (instead === null) return false
  return instead.stands && instead.saved.pins > reading.verdict.tooCloseToCallPins
}

/** Neighbouring readings of one game that belong together, cut where `together` says no. */
export function runsOf<T extends Reading>(readings: readonly T[], together: (a: T, b: T) => boolean): T[][] {
  const runs: T[][] = []
  for (const reading of readings) {
    const run = runs.at(-1)
    const last = run?.at(-1)
    if (run && last && last.spot.game === reading.spot.game && together(last, reading)) run.push(reading)
    else runs.push([reading])
  }
  return runs
}
