import { type LineRoom, lineRooms, type Room, roomPrice } from '../../sim/analysis/explore/room.js'
import { wornByBestLines } from '../../sim/analysis/explore/worn-lane.js'
import { fullInformationOn } from '../../sim/analysis/oracle/oracle.js'
import { pricingOf } from '../../sim/analysis/value/bowler-pricing.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { ballPlace, laneIndex } from '../files/scenario/choose-ball.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { loadScenario } from '../library/load.js'
import { dataFolder } from '../store/data-folder.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { boardWords, SPEED_WORDS } from '../words/words.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'
import { seedOf } from './seed.js'

export interface RoomOptions {
  readonly ball?: string
  /** From 1. */
  readonly lane: number
  readonly after: number
  readonly seed?: string
  readonly json?: boolean
}

/** Lines worth this much less than the best are left out of the table. */
const TOLD_PINS = 4

/** Every line of one ball on one lane, the oil in sight: what it is worth and how far it can be missed. */
export async function roomCommand(name: string, asked: RoomOptions, console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(name)
  refuseSealedLane(dataFolder(undefined, console.environment), scenario)
  const options = { ...asked, seed: seedOf(asked.seed, scenario) }
  const { setup } = scenario
  const fresh = beginScenario(scenario, options.seed).lanes[laneIndex(scenario, options.lane)]
  const progress = progressOn(console, 'throws that wear the lane')
  const worn = wornByBestLines(setup, fresh, { seed: options.seed, to: options.after, reached: progress.reached })
  progress.over()
  // Against the bowler's average over lanes, so that two lanes' worths compare.
  const search = fullInformationOn(setup, worn, pricingOf(setup))
  const place = options.ball === undefined ? search.best.ballIndex : ballPlace(scenario, options.ball)
  const rooms = lineRooms(setup, search, place)
  const price = roomPrice(rooms.map(({ worth }) => worth))
  const report = {
    scenario: scenario.name,
    lane: setup.lanes[options.lane - 1].name,
    ball: setup.bag[place].id,
    bestBall: setup.bag[search.best.ballIndex].id,
    best: {
      ball: setup.bag[search.best.ballIndex].id,
      feet: search.best.aim.feetBoard,
      target: search.best.aim.targetBoard,
      speed: SPEED_WORDS[search.best.aim.speedStep],
    },
    after: options.after,
    seed: options.seed,
    pricePins: rounded(price, 3),
    lines: rooms.map(lineReport),
  }
  if (options.json) {
    printText(console, jsonText(report))
    return EXIT.fine
  }
  const most = Math.max(...rooms.map(({ worth }) => worth))
  const wear = options.after === 0 ? 'as oiled' : `after ${options.after} throws on the best lines`
  console.print(`${setup.bag[place].name} on ${report.lane}, ${wear}, the oil shown`)
  if (place !== search.best.ballIndex) {
    const behind = (search.best.worth - most).toFixed(1)
    console.print(`The ${setup.bag[search.best.ballIndex].name} has a line worth ${behind} pins more.`)
  }
  console.print('')
  for (const row of tableOf(rooms, most)) console.print(row)
  console.print('')
  console.print(
    `Worth is expected game pins a throw against this bowler's average first ball on no lane in particular, misses included. Room is how many boards the target, or slide and target together, can be off (out, in) and ${price === 0 ? 'still beat that average' : 'still beat the second-best line, since none here beats that average'}.`,
  )
  return EXIT.fine
}

function lineReport({ aim, laydownBoard, worth, target, parallel }: LineRoom) {
  return {
    feet: aim.feetBoard,
    laydown: rounded(laydownBoard, 2),
    target: aim.targetBoard,
    speed: SPEED_WORDS[aim.speedStep],
    worth: rounded(worth, 3),
    targetRoom: target,
    parallelRoom: parallel,
  }
}

function tableOf(rooms: readonly LineRoom[], most: number): string[] {
  const told = rooms.filter(({ worth }) => worth > most - TOLD_PINS)
  const header = 'slide  target  speed   worth   target room   together'
  const rows = told.map(({ aim, worth, target, parallel }) =>
    [
      boardWords(aim.feetBoard).padStart(5),
      boardWords(aim.targetBoard).padStart(8),
      `  ${SPEED_WORDS[aim.speedStep].padEnd(8)}`,
      worth.toFixed(2).padStart(5),
      words(target).padStart(14),
      words(parallel).padStart(11),
    ].join(''),
  )
  return [header, ...rows]
}

const words = ({ outBoards, inBoards }: Room): string => `${outBoards.toFixed(1)}, ${inBoards.toFixed(1)}`
