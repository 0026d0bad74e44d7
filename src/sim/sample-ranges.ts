/** A stretch of the one low-discrepancy sequence that delivery errors are taken from (`deliveryNodes`). */
interface SampleRange {
  readonly start: number
  /** How many deliveries may be taken from it. */
  readonly room: number
}

/**
 * Who takes which stretch of the sequence. As with a draw's `Purpose`, each use has its own, so that what is chosen by some
 * deliveries is counted by others. A new use gets a new stretch; what is here stays, since every figure depends on it.
 */
export const SAMPLE_RANGES = {
  spareSearch: { start: 0, room: 5000 },
  spareFinalists: { start: 5000, room: 2000 },
  sensitivity: { start: 7000, room: 3000 },
  bestLine: { start: 30_000, room: 10_000 },
  knownGrade: { start: 40_000, room: 10_000 },
  ledger: { start: 90_000, room: 5000 },
  ledgerSpares: { start: 95_000, room: 5000 },
  contactChances: { start: 120_000, room: 10_000 },
  whatIf: { start: 130_000, room: 10_000 },
  /** On the spares' first stretch: full racks only, where no spare is chosen. */
  readings: { start: 600_000, room: 20_000 },
  spareRacksToChoose: { start: 600_000, room: 20_000 },
  spareTableToChoose: { start: 620_000, room: 30_000 },
  spareRacksToJudge: { start: 650_000, room: 20_000 },
  spareTableToJudge: { start: 670_000, room: 30_000 },
  oracleFirst: { start: 700_000, room: 10_000 },
  oracleLast: { start: 710_000, room: 10_000 },
  startingLine: { start: 140_000, room: 1000 },
  responses: { start: 720_000, room: 10_000 },
  neighbours: { start: 800_000, room: 50_000 },
  baseline: { start: 900_000, room: 10_000 },
  vanished: { start: 910_000, room: 10_000 },
} as const satisfies Readonly<Record<string, SampleRange>>

export type SampleUse = keyof typeof SAMPLE_RANGES

/**
 * Where a use's deliveries start in the sequence.
 *
 * @throws RangeError when `count` deliveries would run on into somebody else's
 */
export function samplesFrom(use: SampleUse, count: number): number {
  const { start, room } = SAMPLE_RANGES[use]
  if (count > room) throw new RangeError(`${use} has room for ${room} deliveries, not for ${count}.`)
  return start
}
