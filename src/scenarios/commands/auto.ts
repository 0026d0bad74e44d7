import { lostOnTrueOil } from '../../sim/analysis/debrief/ledger/throw-worths.js'
import { choose, type Policy } from '../../sim/analysis/policies/policies.js'
import { facesNewRack } from '../../sim/analysis/view/player-view.js'
import { advance } from '../../sim/world/block/advance.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { tally } from '../../sim/world/scoring/game.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { loadScenario } from '../library/load.js'
import { blockStore } from '../store/block-store.js'
import { dataFolder } from '../store/data-folder.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { SHORT_OF_THE_BEST } from '../words/ledger-words.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'
import { seedOf } from './seed.js'

export interface AutoOptions {
  readonly policy: Policy
  readonly seed?: string
  readonly blocks: number
  readonly save?: boolean
  readonly data?: string
  /** Whose the kept records are said to be. */
  readonly player?: string
  readonly json?: boolean
}

/** Balls of a game without a strike, and with a fill ball. */
const MOST_BALLS = 21

interface PlayedBlock {
  readonly seed: string
  readonly games: readonly number[]
  readonly total: number
  readonly strikes: number
  /** First balls in games. */
  readonly firstBalls: number
  readonly givenAwayFirstBalls: number
  readonly givenAwaySpares: number
}

/** Blocks played by a policy: scores, strikes and pins short of the best. The k-th block has seed `seed-k`; a single one `seed` itself. */
export async function autoCommand(name: string, options: AutoOptions, console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(name)
  refuseSealedLane(dataFolder(options.data, console.environment), scenario)
  const first = seedOf(options.seed, scenario)
  const store = blockStore(dataFolder(options.data, console.environment))
  if (options.save) await store.tryOut()
  const blocks: PlayedBlock[] = []
  for (let number = 1; number <= options.blocks; number++) {
    const seed = options.blocks === 1 ? first : `${first}-${number}`
    const open = store.begin({
      scenario,
      begun: beginScenario(scenario, seed),
      player: options.player,
      cameToBe: 'auto',
    })
    const progress = progressOn(console, `block ${number} of ${options.blocks}, throws`)
    const { state, report } = playBlock(open.begun, options.policy, progress.reached)
    progress.over()
    blocks.push(report)
    if (!options.json) console.print(blockLine(report))
    if (options.save) {
      console.tell(`Record kept: ${await open.file(state)}`)
    }
  }
  const summary = summaryOf(blocks)
  if (options.json) printText(console, jsonText({ scenario: name, policy: options.policy, blocks, summary }))
  else if (blocks.length > 1) for (const line of summaryLines(summary)) console.print(line)
  return EXIT.fine
}

/** @param reached is told after each throw: how many there are, and how many at the most there will be */
function playBlock(
  begun: BlockState,
  policy: Policy,
  reached: (throws: number, most: number) => void,
): { state: BlockState; report: PlayedBlock } {
  const { practiceThrows, lanes } = begun.setup
  const most = practiceThrows * lanes.length + begun.setup.games * MOST_BALLS
  let state = begun
  const givenAway = { 'first-ball': 0, spare: 0 }
  while (state.spot) {
    const decision = choose(policy, state)
    if (state.spot.phase === 'game') {
      givenAway[facesNewRack(state) ? 'first-ball' : 'spare'] += lostOnTrueOil(state, decision)
    }
    state = advance(state, decision)
    reached(state.throws.length, most)
  }
  const firstBalls = state.throws.filter((one) => one.spot.phase === 'game' && one.standingBefore === FULL_RACK)
  const games = state.balls.map((balls) => tally(state.setup.scoring, balls).total)
  return {
    state,
    report: {
      seed: begun.seed,
      games,
      total: games.reduce((sum, total) => sum + total, 0),
      strikes: firstBalls.filter((one) => one.standingAfter === 0).length,
      firstBalls: firstBalls.length,
      givenAwayFirstBalls: rounded(givenAway['first-ball'], 2),
      givenAwaySpares: rounded(givenAway.spare, 2),
    },
  }
}

function blockLine({ seed, games, strikes, firstBalls, givenAwayFirstBalls, givenAwaySpares }: PlayedBlock): string {
  return `seed ${seed}: ${games.join(' ')}, ${strikes} strikes of ${firstBalls}, pins ${SHORT_OF_THE_BEST}: ${givenAwayFirstBalls.toFixed(1)} on first balls, ${givenAwaySpares.toFixed(1)} on spares`
}

function summaryOf(blocks: readonly PlayedBlock[]) {
  const games = blocks.flatMap((block) => block.games)
  const perGame = (pins: (block: PlayedBlock) => number) => {
    const values = blocks.map((block) => pins(block) / block.games.length)
    return { mean: rounded(mean(values), 3), standardError: standardError(values) }
  }
  const strikes = blocks.reduce((sum, block) => sum + block.strikes, 0)
  const firstBalls = blocks.reduce((sum, block) => sum + block.firstBalls, 0)
  return {
    games: games.length,
    strikeShare: rounded(strikes / firstBalls, 4),
    score: perGame((block) => block.total),
    givenAwayFirstBalls: perGame((block) => block.givenAwayFirstBalls),
    givenAwaySpares: perGame((block) => block.givenAwaySpares),
  }
}

type Spread = ReturnType<typeof summaryOf>['score']

function summaryLines(summary: ReturnType<typeof summaryOf>): string[] {
  const words = ({ mean: centre, standardError: error }: Spread, decimals: number): string =>
    `${centre.toFixed(decimals)} a game${error === null ? '' : ` (standard error ${error.toFixed(decimals)})`}`
  return [
    '',
    `${summary.games} games: ${words(summary.score, 1)}; strikes ${(summary.strikeShare * 100).toFixed(1)} % of first balls`,
    `pins ${SHORT_OF_THE_BEST}: first balls ${words(summary.givenAwayFirstBalls, 2)}, spares ${words(summary.givenAwaySpares, 2)}`,
  ]
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}

/** Standard error of the mean over blocks, which alone are independent; null for a single block. */
function standardError(values: readonly number[]): number | null {
  if (values.length < 2) return null
  const centre = mean(values)
  const variance = values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1)
  return rounded(Math.sqrt(variance / values.length), 3)
}
