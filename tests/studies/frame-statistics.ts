import { sampleSkewness } from 'simple-statistics'
import { leaveName } from '../../src/sim/world/pins/leaves.js'
import { type BowledFrame, bowlFirstBalls, bowlFrames, type MatchedBowler } from '../published/frame-bowling.js'
import {
  bowlersOn,
  conversionAfter,
  conversionOf,
  type FrameSheet,
  frameSheet,
  LANE_AGES,
  onEachLane,
} from '../published/frame-figures.js'
import { frozenGames, scoresOf, strikeAutocorrelation } from '../published/frozen-lane.js'

const FRAMES_A_LANE = 1200
const HISTORIES = 3
const LEAVES_SHOWN = 14
const SPARES = [[10], [7], [9], [3, 10], [7, 10], [4, 6, 7, 10]] as const

const percent = (value: number): string => `${(100 * value).toFixed(1)} %`

/**
 * Frame statistics of simulated bowlers on their best lines, to hold against what is published of elite men on television
 * (ESPN The Magazine, February 2011) and of a recreational league team. `npm run study frame-statistics [frames a lane]`.
 */
export async function run(args: readonly string[] = []): Promise<void> {
  const frames = Number(args[0] ?? FRAMES_A_LANE)
  const elite = await bowlersOn('flat-forty-five', 'elite', 'cranker', HISTORIES)
  report('elite cranker, flat 45 ft', elite, frames / 2)
  console.log('  conversions, fresh lane:')
  for (const pins of SPARES) {
    const throws = pins.length === 1 ? 1500 : 1000
    console.log(
      `    ${leaveName(pins.reduce((mask, pin) => mask | (1 << (pin - 1)), 0)).padEnd(22)} ${percent(conversionOf(elite, pins, throws))}`,
    )
  }
  report('elite cranker, house 40 ft (easy)', await bowlersOn('house-forty', 'elite', 'cranker'), frames)
  report('elite cranker, short 35 ft', await bowlersOn('short-thirty-five', 'elite', 'cranker'), frames)
  for (const level of ['200', '160'] as const)
    report(`${level}-average tweener, house 40 ft`, await bowlersOn('house-forty', level, 'tweener'), frames / 2)
  const recreational = await bowlersOn('house-forty', 'recreational', 'tweener')
  report('recreational tweener, house 40 ft', recreational, frames)
  const games = 12_000
  for (const [name, bowler] of [
    ['elite', elite[0]!],
    ['recreational', recreational[0]!],
  ] as const) {
    const bowled = frozenGames(bowler, 'frozen', games)
    const scores = scoresOf(bowled)
    const centre = scores.reduce((sum, score) => sum + score, 0) / games
    console.log(
      `${name}, ${games} games on a frozen lane by the carry table: average ${centre.toFixed(1)}, strike autocorrelation ${strikeAutocorrelation(bowled).toFixed(4)}, skewness of score ${sampleSkewness(scores).toFixed(3)}, of its logarithm ${sampleSkewness(scores.map(Math.log)).toFixed(3)}`,
    )
  }
}

function report(title: string, bowlers: readonly MatchedBowler[], frames: number): void {
  console.log(`\n${title}, ${frames} frames on each of ${bowlers.length} lane states`)
  bowlers.forEach((bowler, index) => {
    const sheet = frameSheet(bowlFirstBalls(bowler, `alone ${index}`, Math.round(frames / 2)))
    const { aim, ballIndex } = bowler.line
    console.log(
      `  after ${LANE_AGES[index % LANE_AGES.length]} throws: ${bowler.bag[ballIndex]!.name}, feet ${aim.feetBoard}, target ${aim.targetBoard}, speed ${aim.speedStep}: board ${sheet.meanBoard.toFixed(2)} ± ${sheet.boardSpread.toFixed(2)}, ${sheet.meanAngleDegrees.toFixed(2)}°, strikes ${percent(sheet.strikeShare)}`,
    )
  })
  const bowled = onEachLane(bowlers, 'study', Math.round(frames), bowlFrames)
  print(frameSheet(bowled), bowled)
}

function print(sheet: FrameSheet, frames: readonly BowledFrame[]): void {
  console.log(
    `  strikes ${percent(sheet.strikeShare)}, 1-3 pocket ${percent(sheet.pocketShare)} (called ${percent(sheet.calledPocketShare)}), carry ${percent(sheet.carryShare)}, spares after 9 ${percent(conversionAfter(frames, 9))}, after 5 ${percent(conversionAfter(frames, 5))}, 4 or fewer ${percent(sheet.shareUpTo(4))}`,
  )
  const rows = sheet.leaveShares.slice(0, LEAVES_SHOWN).map(([mask, share]) => `${leaveName(mask)} ${percent(share)}`)
  console.log(`  leaves: ${rows.join('; ')}`)
  console.log(
    `  7 pin ${percent(sheet.shareOfLeave(7))}, 10 pin ${percent(sheet.shareOfLeave(10))}, 7-10 ${percent(sheet.shareOfLeave(7, 10))}, 4-6-7-10 ${percent(sheet.shareOfLeave(4, 6, 7, 10))}, 3-10 ${percent(sheet.shareOfLeave(3, 10))}, 9 pin ${percent(sheet.shareOfLeave(9))}`,
  )
}
