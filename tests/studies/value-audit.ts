import { mean } from 'simple-statistics'
import { deliveryNodes, ERROR_DIMENSIONS } from '../../src/sim/analysis/shots/delivery-nodes.js'
import { deliverAll, firstBallWorth, meanOf } from '../../src/sim/analysis/shots/direct-worth.js'
import { pricingOf } from '../../src/sim/analysis/value/bowler-pricing.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { LEVELS } from '../../src/sim/world/bowler/levels.js'
import { type Aim, meantThrow } from '../../src/sim/world/bowler/release.js'
import { aloneOn, FITTED, freshOn, HELD_OUT } from '../facts/lessons/lanes.js'
import { bowlerOf, search } from '../facts/lessons/measures.js'
import { bowl } from '../facts/opened-up.js'

/**
 * What a first ball is said to be worth on known oil, by table over 2,048 deliveries, against live throws at live racks:
 * `npm run study value-audit [FIRST] [CASES] [THROWS]`. Cases go through lanes, levels and balls, plastic among them; every second
 * line is the ball's best, the others are a board off it.
 */
const DELIVERIES = 2048
const NODES_START = 1_000_000
const nodes = deliveryNodes(DELIVERIES, NODES_START)
const worths = new Float64Array(nodes.length / ERROR_DIMENSIONS)
const PATTERNS = Object.values({ ...FITTED, ...HELD_OUT })

interface Case {
  readonly words: string
  readonly told: number
  readonly live: number
  readonly error: number
  readonly isPlastic: boolean
}

function caseOf(number: number, throws: number): Case {
  const pattern = PATTERNS[number % PATTERNS.length]!
  const level = LEVELS[(number * 5) % LEVELS.length]!
  const setup = aloneOn(pattern, bowlerOf(level))
  const lane = freshOn(pattern)
  const ball = setup.bag[(number * 7 + 5) % setup.bag.length]!
  const { best } = search({ ...setup, bag: [ball] }, lane)
  const aside = number % 2 === 0 ? 0 : number % 4 === 1 ? 1 : -1
  const aim: Aim = { ...best.aim, targetBoard: best.aim.targetBoard + aside }
  const pricing = pricingOf(setup)
  const inPlay = { film: lane.film, steps: buildStepTable(lane.film) }
  const meant = meantThrow(setup.bowler, aim, 'strike')
  deliverAll(inPlay, dynamicsOf(ball), meant, nodes, firstBallWorth(pricing), worths)
  const live = Array.from({ length: throws }, (_, shot) =>
    pricing.worthOfLeave(bowl(setup, lane, ball, aim, `value-audit-${number}`, shot + 1).standing),
  )
  const middle = mean(live)
  const variance = live.reduce((sum, worth) => sum + (worth - middle) ** 2, 0) / (throws - 1)
  return {
    words: `${pattern.name}, ${level}, ${ball.name}, ${aim.feetBoard}/${aim.targetBoard}/${aim.speedStep}`,
    told: meanOf(worths),
    live: middle,
    error: Math.sqrt(variance / throws),
    isPlastic: ball.cover === 'plastic',
  }
}

export function run(args: readonly string[]): void {
  const [first = 0, count = 40, throws = 2500] = args.map(Number)
  const cases = Array.from({ length: count }, (_, k) => caseOf(first + k, throws))
  for (const { words, told, live, error } of cases)
    process.stdout.write(`${words}: told ${told.toFixed(2)}, live ${live.toFixed(2)} (${error.toFixed(2)})\n`)
  const say = (name: string, of: readonly Case[]): void => {
    if (of.length === 0) return
    const misses = of.map(({ told, live }) => told - live)
    const squares = mean(misses.map((miss) => miss * miss))
    const noise = mean(of.map(({ error }) => error * error))
    process.stdout.write(
      `${name}: ${of.length} cases, bias ${mean(misses).toFixed(3)} (${Math.sqrt(noise / of.length).toFixed(3)}), rms ${Math.sqrt(squares).toFixed(3)}, of which the live throws' own noise ${Math.sqrt(noise).toFixed(3)}\n`,
    )
  }
  say('all', cases)
  say(
    'plastic',
    cases.filter(({ isPlastic }) => isPlastic),
  )
}
