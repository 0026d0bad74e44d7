import { trueOilPrices } from '../../../src/sim/analysis/debrief/ledger/throw-worths.js'
import { bestFairChoice, gradeFair } from '../../../src/sim/analysis/grade/fair-grade.js'
import { choose, POLICIES } from '../../../src/sim/analysis/policies/policies.js'
import { facesNewRack, playerView } from '../../../src/sim/analysis/view/player-view.js'
import { startingLine } from '../../../src/sim/analysis/view/starting-line.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../src/sim/world/block/begin.js'
import type { BlockState, Decision } from '../../../src/sim/world/block/types.js'
import { keepLines, keptLines } from '../../sim/analysis/grade/kept-lines.js'
import { plastic, sandedSolid, urethane } from '../../sim/world/ball/bag-for-tests.js'
import { meanAndError, OILS, type Oil, setupOf, told } from './blocks.js'

const BLIND = ['urethane', 'plastic', 'deepest', 'alternate', 'enter'] as const
const PLAYERS = [...POLICIES, ...BLIND] as const
type Player = (typeof PLAYERS)[number]

interface Played {
  readonly oil: Oil
  readonly block: number
  readonly player: Player
  /** First balls of the game on the oil as it was, luck removed, in pins against the bowler's average. */
  readonly expected: number
  /** What a blind strategy was charged; null where nobody asked. */
  readonly charged: number | null
}

/** Plays one game a block by every policy and blind strategy, on both kinds of oil. */
export function playLadder(first: number, count: number, folder: string | undefined): void {
  const keep = keepLines<Played>(folder, first, count)
  for (let block = first; block < first + count; block++)
    for (const oil of OILS) for (const player of PLAYERS) keep(play(oil, block, player))
}

function play(oil: Oil, block: number, player: Player): Played {
  const isBlind = (BLIND as readonly string[]).includes(player)
  let state = beginBlock(setupOf(oil, block), `ladder ${block}`)
  let expected = 0
  let charged = 0
  while (state.spot) {
    const before = state
    const decision = choiceOf(player, before)
    if (before.spot?.phase === 'game' && facesNewRack(before)) {
      expected += trueOilPrices(before).ofChoice(decision)
      if (isBlind) charged += gradeFair(before, decision).givenAwayPins ?? 0
    }
    state = advance(before, decision)
  }
  return { oil, block, player, expected, charged: isBlind ? charged : null }
}

/** Blind strategies: one line of one ball whatever is seen, or what lies there when Enter is pressed. */
function choiceOf(player: Player, state: BlockState): Decision {
  const view = playerView(state)!
  if (!facesNewRack(state)) return player === 'fair' ? bestFairChoice(state) : choose('stay', state)
  const start = startingLine(state.setup, view.posted)
  const deeper = (feet: number, target: number): Decision['aim'] => ({
    ...start.aim,
    feetBoard: start.aim.feetBoard + feet,
    targetBoard: start.aim.targetBoard + target,
  })
  switch (player) {
    case 'urethane':
      return { ...start, ballId: urethane.id }
    case 'plastic':
      return { ...start, ballId: plastic.id, aim: { feetBoard: 24, targetBoard: 16, speedStep: 0 } }
    case 'deepest':
      return { ...start, ballId: sandedSolid.id, aim: deeper(8, 4.5) }
    case 'alternate': {
      const { bag } = state.setup
      return { ...start, ballId: bag[state.throws.length % bag.length]!.id }
    }
    case 'enter':
      return view.suggestion
    default:
      return choose(player, state)
  }
}

/** The ladder of what was played. */
export function sumLadder(folder: string | undefined): void {
  if (folder === undefined) throw new RangeError('Say in which folder the results lie.')
  const all = keptLines<Played>(folder)
  for (const oil of OILS) {
    const of = (player: Player): Played[] =>
      all.filter((one) => one.oil === oil && one.player === player).sort((a, b) => a.block - b.block)
    const fair = new Map(of('fair').map((one) => [one.block, one.expected]))
    console.log(`${oil}, ${fair.size} blocks: pins a game; behind the belief-optimal player; charged`)
    for (const player of PLAYERS) {
      const played = of(player).filter(({ block }) => fair.has(block))
      if (played.length === 0) continue
      const behind = meanAndError(played.map(({ block, expected }) => fair.get(block)! - expected))
      const cost = played.every(({ charged }) => charged !== null)
        ? `, charged ${told(meanAndError(played.map(({ charged }) => charged ?? 0)))}`
        : ''
      console.log(
        `  ${player.padEnd(10)} ${told(meanAndError(played.map((one) => one.expected)))}; ${told(behind)}${cost}`,
      )
    }
  }
}
