import { beginScenario } from '../../../scenarios/files/scenario/begin-scenario.js'
import type { Scenario } from '../../../scenarios/files/scenario/scenario.js'
import { advance } from '../../world/block/advance.js'
import type { BlockState } from '../../world/block/types.js'
import { choicesFor } from '../grade/fair-grade.js'
import { knownSearch } from '../oracle/known-choice.js'
import { choose, type Policy } from '../policies/policies.js'
import { facesNewRack } from '../view/player-view.js'

/** How much there is to lose on a scenario, in game pins a game on first balls against the best with the oil in sight. */
export interface Hardness {
  /** By one who follows the miss. */
  readonly thumbPins: number
  /** By one who never moves. */
  readonly stayPins: number
}

/** Seeds under which a scenario is weighed. */
export const HARDNESS_SEEDS = ['hard-1', 'hard-2']
/** One game tells how hard a block is; later ones would only take longer. */
const GAMES = 1

/** Plays a few quick blocks by the scripted policies and prices their first balls. */
export function hardnessOf(scenario: Scenario): Hardness {
  return { thumbPins: lostBy('thumb', scenario), stayPins: lostBy('stay', scenario) }
}

function lostBy(policy: Policy, scenario: Scenario): number {
  const lost = HARDNESS_SEEDS.map((seed) => lostInGame(policy, beginScenario(scenario, seed)))
  return lost.reduce((sum, pins) => sum + pins, 0) / lost.length
}

function lostInGame(policy: Policy, begun: BlockState): number {
  let state = begun
  let lost = 0
  while (state.spot && state.spot.game <= GAMES) {
    const decision = choose(policy, state)
    if (state.spot.phase === 'game' && facesNewRack(state)) {
      const { bag } = state.setup
      const search = knownSearch(state.setup, state.lanes[state.spot.lane])
      const ball = bag.findIndex((one) => one.id === decision.ballId)
      lost += Math.max(0, search.best.worth - search.worthOf(ball, decision.aim))
    }
    state = advance(state, decision)
  }
  return lost
}

/** What seeing the oil would be worth on the first throw of a block, in game pins, at the least. */
export function informationAtStart(scenario: Scenario): number {
  const choices = choicesFor(beginScenario(scenario, HARDNESS_SEEDS[0]))
  return choices.kind === 'first-ball' ? choices.informationPins() : 0
}

/** Mean of the two policies' pins up to which a scenario is called gentle, and from which hard: about thirds of the built-in ones. */
const GENTLE_PINS = 18
const HARD_PINS = 23

export function hardnessWord({ thumbPins, stayPins }: Hardness): 'gentle' | 'middling' | 'hard' {
  const pins = (thumbPins + stayPins) / 2
  if (pins <= GENTLE_PINS) return 'gentle'
  return pins >= HARD_PINS ? 'hard' : 'middling'
}
