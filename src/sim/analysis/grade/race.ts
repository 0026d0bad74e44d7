import type { LaneImaginer } from '../belief/imagined-lanes.js'
import type { PricedLine } from '../shots/best-line.js'
import { meanOf } from '../shots/direct-worth.js'
import { type Bench, judgingOn, worthOnEachLane } from '../shots/worth-matrix.js'

/** So many of the best lines are rolled on so many fresh lanes, with so many delivery errors on each. */
export interface RaceRound {
  readonly lines: number
  readonly lanes: number
  readonly deliveries: number
}

/** Draws of lanes, one a round, and where each round's delivery errors start in the sequence of all. */
const LANE_DRAWS = [1, 2, 9, 11] as const
const ERROR_STARTS = [200_000, 250_000, 300_000, 350_000] as const

interface Racer {
  readonly line: PricedLine
  /** Sum over all that was rolled so far. */
  readonly worthOfRolls: number
  readonly rolls: number
}

/**
 * Races lines by direct rolling, fewer of them and on more lanes round by round (sequential halving: Karnin, Koren &
 * Somekh 2013). What a line showed in earlier rounds counts on, roll for roll. The best line of every ball
 * stays in until the last round.
 * @param entrants all run in the first round, however many it says; @param rounds at most four
 * @returns the lines of the last round, best first, then the others that came far; `worth` over all that each was rolled
 */
export function race(
  bench: Bench,
  imagine: LaneImaginer,
  entrants: readonly PricedLine[],
  rounds: readonly RaceRound[],
): PricedLine[] {
  let running: readonly Racer[] = entrants.map((line) => ({ line, worthOfRolls: 0, rolls: 0 }))
  let leftBehind: readonly Racer[] = []
  rounds.forEach(({ lines, lanes, deliveries }, at) => {
    const isLast = at === rounds.length - 1
    const staying = at === 0 ? running : isLast ? running.slice(0, lines) : withBestOfEachBall(running, lines)
    leftBehind = isLast ? running.slice(staying.length) : []
    const judging = judgingOn(bench, imagine(lanes, LANE_DRAWS[at]), deliveries, ERROR_STARTS[at])
    running = staying
      .map(({ line, worthOfRolls, rolls }) => ({
        line,
        worthOfRolls: worthOfRolls + lanes * deliveries * meanOf(worthOnEachLane(judging, line)),
        rolls: rolls + lanes * deliveries,
      }))
      .sort((a, b) => meanWorth(b) - meanWorth(a))
  })
  return [...running, ...leftBehind].map((one) => ({ ...one.line, worth: meanWorth(one) }))
}

const meanWorth = ({ worthOfRolls, rolls }: Racer): number => worthOfRolls / rolls

/** The first `count`, and the first of each ball besides. */
function withBestOfEachBall(running: readonly Racer[], count: number): Racer[] {
  const ballOf = ({ line }: Racer): number => line.ballIndex
  return running.filter((one, at) => at < count || running.findIndex((other) => ballOf(other) === ballOf(one)) === at)
}
