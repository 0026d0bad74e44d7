import {
  type BagOnLane,
  bagOnLane,
  fewestBalls,
  gainedBySurface,
  lostWith,
  type Surface,
  THROWS_A_GAME,
} from '../../sim/analysis/explore/bag-worth.js'
import { wornByBestLines } from '../../sim/analysis/explore/worn-lane.js'
import { blockPricing } from '../../sim/analysis/grade/lane-baseline.js'
import type { BlockSetup } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { loadScenario } from '../library/load.js'
import { dataFolder } from '../store/data-folder.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { signedPins } from '../words/words.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'
import { seedOf } from './seed.js'

export interface BagOptions {
  readonly after: number
  readonly seed?: string
  readonly json?: boolean
}

/** A bag so near the whole one is as good. */
const AS_GOOD_PINS = 0.5

/** What a bag would lose without each of its balls, over the lanes of several scenarios, as oiled and worn. */
export async function bagCommand(
  names: readonly string[],
  asked: BagOptions,
  console: CommandConsole,
): Promise<number> {
  const scenarios: Scenario[] = []
  for (const name of names) scenarios.push(await loadScenario(name))
  for (const one of scenarios) refuseSealedLane(dataFolder(undefined, console.environment), one)
  const options = { ...asked, seed: seedOf(asked.seed, scenarios[0]) }
  const { bag, bowler } = scenarios[0].setup
  const setups = scenarios.map(({ setup }): BlockSetup => ({ ...setup, bag, bowler }))
  const work = setups.flatMap((setup, index) =>
    beginScenario(scenarios[index], options.seed).lanes.flatMap((lane, place) =>
      (options.after > 0 ? [0, options.after] : [0]).map((throws) => ({ setup, lane, place, throws })),
    ),
  )
  const progress = progressOn(console, 'lanes')
  const lanes: BagOnLane[] = []
  for (const { setup, lane, throws } of work) {
    progress.reached(lanes.length, work.length)
    const worn = wornByBestLines(setup, lane, { seed: options.seed, to: throws })
    lanes.push(bagOnLane(setup, worn, blockPricing({ setup, seed: options.seed })))
  }
  progress.over()
  const told = work.map(({ setup, place, throws }) => ({
    scenario: setup.name,
    lane: setup.lanes[place].name,
    after: throws,
  }))
  const report = reportOf({ names, bag, lanes, told }, options)
  if (options.json) printText(console, jsonText(report))
  else for (const line of reportLines(report, bag)) console.print(line)
  return EXIT.fine
}

export type BagReport = ReturnType<typeof reportOf>

interface ToldLane {
  readonly scenario: string
  readonly lane: string
  readonly after: number
}

interface WeighedBag {
  readonly names: readonly string[]
  readonly bag: BlockSetup['bag']
  readonly lanes: readonly BagOnLane[]
  readonly told: readonly ToldLane[]
}

function reportOf({ names, bag, lanes, told }: WeighedBag, options: BagOptions) {
  const all = bag.map((_, place) => place)
  const idsOf = (places: readonly number[]) => places.map((place) => bag[place].id)
  const pins = (value: number) => rounded(value, 2)
  const pairs = all.flatMap((one) => all.filter((other) => other > one).map((other) => [one, other]))
  const fewest = fewestBalls(lanes, AS_GOOD_PINS)
  return {
    scenarios: names,
    seed: options.seed,
    after: options.after,
    lanes: lanes.map((lane, index) => {
      const [best, next] = ranked(lane, all)
      return {
        ...told[index],
        bestBall: bag[best].id,
        abovePins: pins(lostAgainst(lane, best, 0)),
        nextBall: next === undefined ? null : bag[next].id,
        behindPins: next === undefined ? null : pins(lostAgainst(lane, best, lane.bestOfBall[next])),
      }
    }),
    without: all
      .filter(() => bag.length > 1)
      .map((place) => ({
        ball: bag[place].id,
        lostPins: pins(
          lostWith(
            lanes,
            all.filter((other) => other !== place),
          ),
        ),
      })),
    alone: all.map((place) => ({ ball: bag[place].id, lostPins: pins(lostWith(lanes, [place])) })),
    withPairOnly: pairs
      .map((pair) => ({ balls: idsOf(pair), lostPins: pins(lostWith(lanes, pair)) }))
      .sort((a, b) => a.lostPins - b.lostPins),
    withSurface: lanes[0].bestResurfaced
      .map(({ place, surface }) => ({
        ball: bag[place].id,
        ...surface,
        gainedPins: pins(gainedBySurface(lanes, place, surface)),
      }))
      .sort((a, b) => b.gainedPins - a.gainedPins),
    fewest: { withinPins: AS_GOOD_PINS, balls: idsOf(fewest.places), lostPins: pins(fewest.lostPins) },
  }
}

/** Balls by what their best line on a lane is worth, best first. */
const ranked = ({ bestOfBall }: BagOnLane, all: readonly number[]): number[] =>
  [...all].sort((a, b) => bestOfBall[b] - bestOfBall[a])

/** Game pins by which a ball's best line on a lane is ahead of a worth a throw. */
const lostAgainst = ({ bestOfBall }: BagOnLane, place: number, worth: number): number =>
  THROWS_A_GAME * (bestOfBall[place] - worth)

const TOLD_PAIRS = 5
const TOLD_SURFACES = 4

/** The report in words, for a bag of these balls. */
export function reportLines(report: BagReport, bag: BlockSetup['bag']): string[] {
  const nameOf = (id: string): string => bag.find((ball) => ball.id === id)?.name ?? id
  const figure = (pins: number): string => pins.toFixed(1).padStart(6)
  const signed = (pins: number): string => signedPins(pins).padStart(6)
  const worn = report.after > 0 ? `, half as oiled and half after ${report.after} throws` : ', as oiled'
  return [
    `First balls on ${report.scenarios.join(', ')}${worn}; the oil shown, pins a game.`,
    '',
    'ball                                 without it   with it alone',
    ...report.alone.map(
      ({ ball, lostPins }, index) =>
        `  ${nameOf(ball).padEnd(34)}${figure(report.without[index]?.lostPins ?? lostPins).padStart(10)}${figure(lostPins).padStart(16)}`,
    ),
    ...section(
      "The best ball on each lane: pins above the bowler's average, and by how much the next one is behind",
      report.lanes,
      ({ scenario, lane, after, bestBall, abovePins, nextBall, behindPins }) =>
        `  ${`${scenario}, ${lane}${after > 0 ? `, after ${after}` : ''}`.padEnd(40)}${signed(abovePins)}  ${nameOf(bestBall)}${nextBall === null || behindPins === null ? '' : `; ${nameOf(nextBall)} ${behindPins.toFixed(1)} behind`}`,
    ),
    ...section(
      'Two balls only, the best pairs: pins lost',
      report.withPairOnly.slice(0, TOLD_PAIRS),
      ({ balls, lostPins }) => `  ${figure(lostPins)}  ${balls.map(nameOf).join(' and ')}`,
    ),
    ...section(
      'Another surface on one ball: pins gained',
      report.withSurface.slice(0, TOLD_SURFACES),
      ({ ball, gainedPins, ...surface }) => `  ${signed(gainedPins)}  ${nameOf(ball)} at ${surfaceWords(surface)}`,
    ),
    '',
    `${report.fewest.balls.length === 1 ? 'One ball is' : `${report.fewest.balls.length} balls are`} within ${AS_GOOD_PINS} pins a game of the whole bag: ${report.fewest.balls.map(nameOf).join(', ')} (${report.fewest.lostPins.toFixed(1)} lost). First balls only: a ball kept for spares comes on top.`,
  ]
}

function section<Row>(title: string, rows: readonly Row[], tell: (row: Row) => string): string[] {
  return rows.length === 0 ? [] : ['', title, ...rows.map(tell)]
}

const surfaceWords = ({ grit, polished }: Surface): string => `${grit} grit${polished ? ', polished' : ''}`
