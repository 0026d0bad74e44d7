import type { LaneImaginer } from '../belief/imagined-lanes.js'
import type { PricedLine } from '../shots/best-line.js'
import { meanOf } from '../shots/direct-worth.js'
import { type Bench, judgingBy, worthOnEachLane } from '../shots/worth-matrix.js'

/** So many of the best lines run on so many fresh lanes. */
export interface RaceRound {
  readonly lines: number
  readonly lanes: number
}

/** Draws of lanes, one a round. */
const LANE_DRAWS = [1, 2, 9, 11] as const

interface Racer {
  readonly line: PricedLine
  /** Sum over all lanes so far. */
  readonly worthOfLanes: number
  readonly lanesRun: number
}

/**
 * Races lines, fewer of them and on more lanes round by round (sequential halving: Karnin, Koren &
 * Somekh 2013). What a line showed in earlier rounds counts on, lane for lane. The best line of every ball
 * stays in until the last round.
 * @param entrants all run in the first round, however many it says; @param rounds at most four
 * @returns the lines of the last round, best first, then the others that came far; `worth` over all lanes that each ran on
 */
export function race(
  bench: Bench,
  imagine: LaneImaginer,
  entrants: readonly PricedLine[],
  rounds: readonly RaceRound[],
): PricedLine[] {
  let running: readonly Racer[] = entrants.map((line) => ({ line, worthOfLanes: 0, lanesRun: 0 }))
  let leftBehind: readonly Racer[] = []
  rounds.forEach(({ lines, lanes }, at) => {
    const isLast = at === rounds.length - 1
    const staying = at === 0 ? running : isLast ? running.slice(0, lines) : withBestOfEachBall(running, lines)
    leftBehind = isLast ? running.slice(staying.length) : []
    const judging = judgingBy(bench, imagine(lanes, LANE_DRAWS[at]))
    running = staying
      .map(({ line, worthOfLanes, lanesRun }) => ({
        line,
        worthOfLanes: worthOfLanes + lanes * meanOf(worthOnEachLane(judging, line)),
        lanesRun: lanesRun + lanes,
      }))
      .sort((a, b) => meanWorth(b) - meanWorth(a))
  })
  return [...running, ...leftBehind].map((one) => ({ ...one.line, worth: meanWorth(one) }))
}

const meanWorth = ({ worthOfLanes, lanesRun }: Racer): number => worthOfLanes / lanesRun

/** The first `count`, and the first of each ball besides. */
function withBestOfEachBall(running: readonly Racer[], count: number): Racer[] {
  const ballOf = ({ line }: Racer): number => line.ballIndex
  return running.filter((one, at) => at < count || running.findIndex((other) => ballOf(other) === ballOf(one)) === at)
}
