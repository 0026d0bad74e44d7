import type { FirstBallReading, Reading } from '../reading/reading.js'
import type { Claim, PricedClaim, Tag } from './tag.js'

/** What every family of findings reads from. */
export interface TagContext {
  /** Of the throws that count, in order. */
  readonly readings: readonly Reading[]
}

/** What a finding stands on, once its throws are settled. */
export type Telling = Pick<Tag, 'evidence' | 'at' | 'before' | 'mend' | 'mendsAll'>

/** The throws of one finding in order, with their pins; all of one family. */
export interface Told {
  readonly told: readonly PricedClaim[]
  readonly dearest: PricedClaim
  readonly pins: number
}

/** Findings of one sort: what can be claimed of the choices of a block, and how it is told. */
export interface Family {
  readonly claims: (context: TagContext) => readonly Claim[]
  readonly tell: (finding: Told) => Telling
}

/** First balls that were charged. */
export function chargedFirstBalls({ readings }: TagContext): FirstBallReading[] {
  return firstBalls(readings).filter(({ verdict }) => verdict.givenAwayPins > 0)
}

export function firstBalls(readings: readonly Reading[]): FirstBallReading[] {
  return readings.filter((reading) => reading.kind === 'first-ball')
}

/** A reading of a told claim, known by its family to be of a first ball. */
export function firstBallOf({ claim: { reading } }: PricedClaim): FirstBallReading {
  if (reading.kind !== 'first-ball') throw new RangeError('This finding is about first balls.')
  return reading
}

/** One throw's finding whose mend is the best that was shown. */
export const mendedByBest = ({ claim: { reading } }: PricedClaim): Omit<Telling, 'evidence'> => ({
  at: reading.index,
  before: reading.kind === 'first-ball' ? (reading.staying?.index ?? null) : null,
  mend: reading.verdict.best,
  mendsAll: true,
})

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
