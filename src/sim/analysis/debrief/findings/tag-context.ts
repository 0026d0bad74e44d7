import type { BlockSetup } from '../../../world/block/types.js'
import type { FirstBallReading, Reading } from '../reading/reading.js'
import type { Claim, Evidence, PricedClaim } from './tag.js'

/** What every family of findings reads from. */
export interface TagContext {
  readonly setup: BlockSetup
  /** Of the throws that count, in order. */
  readonly readings: readonly Reading[]
}

/** What a finding says, once its throws are settled. */
export interface Telling {
  readonly evidence: readonly Evidence[]
  readonly words: string
  readonly practise: string
}

/** The throws of one finding in order, with their pins; all of one family. */
export interface Told {
  readonly told: readonly PricedClaim[]
  readonly dearest: PricedClaim
  readonly pins: number
}

/** Findings of one sort: what can be claimed of the choices of a block, and how it is told. */
export interface Family {
  readonly claims: (context: TagContext) => readonly Claim[]
  readonly tell: (finding: Told, context: TagContext) => Telling
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

export const framesOf = (told: readonly PricedClaim[]): number[] => told.map(({ claim }) => claim.reading.spot.frame)

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
