import { advance } from '../../world/block/advance.js'
import type { BlockState } from '../../world/block/types.js'
import { choicesFor } from '../grade/fair-grade.js'
import { blockPricing } from '../grade/lane-baseline.js'
import { fullInformationOn } from '../oracle/oracle.js'
import { choose, type Policy } from '../policies/policies.js'
import { facesNewRack } from '../view/player-view.js'

/** How much there is to lose on a scenario, in game pins a game on first balls against the best with the oil in sight. */
export interface Difficulty {
  /** By one who follows the miss. */
  readonly thumbPins: number
  /** By one who has learnt the sheet's best line by heart; left out where it was not weighed. */
  readonly memoPins?: number
  /** By one who never moves from the starting line. */
  readonly stayPins: number
}

/** Seeds under which a scenario is weighed. */
export const DIFFICULTY_SEEDS = ['hard-1', 'hard-2']
/** One game tells how hard a block is; later ones would only take longer. */
const GAMES = 1

/**
 * Plays a few quick blocks by the scripted policies and prices their first balls.
 *
 * @param begin the block before its first throw under a seed
 */
export function difficultyOf(begin: (seed: string) => BlockState): Difficulty {
  return { thumbPins: lostBy('thumb', begin), memoPins: lostBy('memo', begin), stayPins: lostBy('stay', begin) }
}

function lostBy(policy: Policy, begin: (seed: string) => BlockState): number {
  const lost = DIFFICULTY_SEEDS.map((seed) => lostInGame(policy, begin(seed)))
  return lost.reduce((sum, pins) => sum + pins, 0) / lost.length
}

function lostInGame(policy: Policy, begun: BlockState): number {
  let state = begun
  let lost = 0
  while (state.spot && state.spot.game <= GAMES) {
    const decision = choose(policy, state)
    if (state.spot.phase === 'game' && facesNewRack(state)) {
      const { bag } = state.setup
      const search = fullInformationOn(state.setup, state.lanes[state.spot.lane], blockPricing(state))
      const ball = bag.findIndex((one) => one.id === decision.ballId)
      lost += Math.max(0, search.best.worth - search.worthOf(ball, decision.aim))
    }
    state = advance(state, decision)
  }
  return lost
}

/** What seeing the oil would be worth on the first throw of a block, in game pins, at the least. */
export function informationAtStart(begin: (seed: string) => BlockState): number {
  const choices = choicesFor(begin(DIFFICULTY_SEEDS[0]))
  return choices.kind === 'first-ball' ? choices.information().pins : 0
}

/** Mean of the two policies' pins up to which a scenario is called gentle, and from which hard: about thirds of the built-in ones. */
const GENTLE_PINS = 18
const HARD_PINS = 23

export function difficultyWord({ thumbPins, stayPins }: Difficulty): 'gentle' | 'middling' | 'hard' {
  const pins = (thumbPins + stayPins) / 2
  if (pins <= GENTLE_PINS) return 'gentle'
  return pins >= HARD_PINS ? 'hard' : 'middling'
}
