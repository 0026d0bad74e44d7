import { loadScenario } from '../../src/scenarios/library/load.js'
import type { Level, Style } from '../../src/sim/world/bowler/levels.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { layPattern } from '../../src/sim/world/lane/pattern.js'
import { countPins, maskOf } from '../../src/sim/world/pins/leaves.js'
import { type BowledFrame, conversionRate, type FirstBall, type MatchedBowler, matchLines } from './frame-bowling.js'

/**
 * Own first balls already thrown on the lane states that frames are bowled on: fresh, and half a game and a game later.
 * Televised finals are bowled on fresh oil, a game or so to a lane; common practice, no source.
 */
export const LANE_AGES = [0, 6, 12] as const

/** A bowler on a built-in scenario's lane with its bag, matched to the lane at each age of so many histories of wear. */
export async function bowlersOn(
  scenarioName: string,
  level: Level,
  style: Style,
  histories = 1,
): Promise<MatchedBowler[]> {
  const { setup } = await loadScenario(scenarioName)
  const [{ oil }] = setup.lanes
  if (oil.kind !== 'pattern') throw new RangeError(`The oil of ${scenarioName} is drawn, not written.`)
  const film = layPattern(oil.pattern)
  const profile = levelProfile(level, style)
  return Array.from({ length: histories }, (_, index) =>
    matchLines(film, profile, setup.bag, LANE_AGES, `history ${index}`),
  ).flat()
}

export interface FrameSheet {
  readonly frames: number
  readonly strikeShare: number
  /** Of all leaves, by mask; listed in falling order. */
  readonly leaveShares: readonly (readonly [mask: number, share: number])[]
  readonly shareOfLeave: (...pins: number[]) => number
  /** First balls that struck the 1-3 pocket. */
  readonly pocketShare: number
  /** First balls that a block would call pocket. */
  readonly calledPocketShare: number
  /** Strikes among pocket hits. */
  readonly carryShare: number
  /** First balls that felled so many or fewer. */
  readonly shareUpTo: (felled: number) => number
  readonly meanAngleDegrees: number
  readonly meanBoard: number
  /** Standard deviation of the board at the headpin's row. */
  readonly boardSpread: number
}

const share = <T>(all: readonly T[], is: (one: T) => boolean): number => all.filter(is).length / all.length
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

const felled = ({ leave }: FirstBall): number => 10 - countPins(leave)

/** Counts what first balls came to. */
export function frameSheet(frames: readonly FirstBall[]): FrameSheet {
  const leaves = frames.filter(({ leave }) => leave !== 0)
  const counts = new Map<number, number>()
  for (const { leave } of leaves) counts.set(leave, (counts.get(leave) ?? 0) + 1)
  const pocket = frames.filter(({ struckPocket }) => struckPocket)
  const boards = frames.map(({ entry }) => entry.board)
  const meanBoard = mean(boards)
  return {
    frames: frames.length,
    strikeShare: share(frames, ({ leave }) => leave === 0),
    leaveShares: [...counts]
      .map(([mask, count]) => [mask, count / leaves.length] as const)
      .sort((a, b) => b[1] - a[1] || a[0] - b[0]),
    shareOfLeave: (...pins) => (counts.get(maskOf(pins)) ?? 0) / leaves.length,
    pocketShare: pocket.length / frames.length,
    calledPocketShare: share(frames, ({ calledPocket }) => calledPocket),
    carryShare: share(pocket, ({ leave }) => leave === 0),
    shareUpTo: (pins) => share(frames, (frame) => felled(frame) <= pins),
    meanAngleDegrees: (mean(frames.map(({ entry }) => entry.angleRadians)) * 180) / Math.PI,
    meanBoard,
    boardSpread: Math.sqrt(mean(boards.map((board) => (board - meanBoard) ** 2))),
  }
}

/** Spares made among frames whose first ball felled so many. */
export const conversionAfter = (frames: readonly BowledFrame[], pins: number): number =>
  share(
    frames.filter((frame) => felled(frame) === pins),
    ({ standing }) => standing === 0,
  )

/** What `bowl` gives for each lane state, taken together. */
export const onEachLane = <T>(
  bowlers: readonly MatchedBowler[],
  seed: string,
  count: number,
  bowl: (bowler: MatchedBowler, seed: string, count: number) => readonly T[],
): T[] => bowlers.flatMap((bowler, index) => bowl(bowler, `${seed} ${index}`, count))

/** Conversion of listed pins, by so many spare balls on the fresh lane. */
export const conversionOf = (bowlers: readonly MatchedBowler[], pins: readonly number[], throws: number): number =>
  conversionRate(bowlers[0]!, maskOf(pins), `spares at ${pins.join('-')}`, throws)
