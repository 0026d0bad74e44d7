import type { BallSpecification } from '../../world/ball/specification.js'
import { throwBall } from '../../world/block/throw.js'
import type { BlockSetup } from '../../world/block/types.js'
import type { Aim } from '../../world/bowler/release.js'
import type { LaneState } from '../../world/lane/wear.js'
import { blockPricing } from '../grade/lane-baseline.js'
import { fullInformationOn } from '../oracle/oracle.js'

/** Balls that only wear the lane are thrown at an empty deck, which costs nothing. */
const NO_PINS = 0
/** Throws after which a bowler who sees the oil looks for a better line. */
const THROWS_A_LINE = 10

export interface WearingLine {
  readonly ball: BallSpecification
  readonly aim: Aim
  readonly release: 'strike' | 'spare'
}

/** Which throws of a line: the first and the last, both counted. */
interface WearingThrows {
  readonly seed: string
  readonly from?: number
  readonly to: number
  /** Told after each throw: how many were thrown, and how many will be. */
  readonly reached?: (thrown: number, of: number) => void
}

/** A lane after throws `from` to `to` of one line, each with the bowler's own misses under the seed. */
export function wornByLine(
  setup: BlockSetup,
  lane: LaneState,
  line: WearingLine,
  { seed, from = 1, to, reached }: WearingThrows,
): LaneState {
  let worn = lane
  for (let number = from; number <= to; number++) {
    const delivery = { lane: worn, ...line, profile: setup.bowler, standing: NO_PINS }
    worn = throwBall({ ...delivery, seed, game: 0, frame: number, ballInFrame: 1, bowlerIndex: 0 }).lane
    reached?.(number, to)
  }
  return worn
}

/** A lane after so many throws by the scenario's bowler, who sees the oil and takes the best line anew every ten throws. */
export function wornByBestLines(
  setup: BlockSetup,
  lane: LaneState,
  { seed, to, reached }: Omit<WearingThrows, 'from'>,
): LaneState {
  let worn = lane
  for (let from = 1; from <= to; from += THROWS_A_LINE) {
    const { best } = fullInformationOn(setup, worn, blockPricing({ setup, seed }))
    const line = { ball: setup.bag[best.ballIndex], aim: best.aim, release: 'strike' as const }
    worn = wornByLine(setup, worn, line, { seed, from, to: Math.min(to, from + THROWS_A_LINE - 1) })
    reached?.(Math.min(to, from + THROWS_A_LINE - 1), to)
  }
  return worn
}
