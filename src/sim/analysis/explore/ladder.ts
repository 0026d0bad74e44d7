import { beginScenario } from '../../../scenarios/files/scenario/begin-scenario.js'
import type { Scenario } from '../../../scenarios/files/scenario/scenario.js'
import { advance } from '../../world/block/advance.js'
import { tally } from '../../world/scoring/game.js'
import { worthOnTrueOil } from '../debrief/ledger/throw-worths.js'
import { choose, type Policy } from '../policies/policies.js'
import { facesNewRack } from '../view/player-view.js'

/** The first game of a block as a policy plays it. */
export interface PolicyGame {
  /**
   * What its first balls at full racks were worth on the oil as it was, against the bowler's average first ball: game pins in
   * expectation over the bowler's misses and the pins, so that two policies under one seed differ by their choices alone.
   */
  readonly expectedPins: number
  readonly score: number
}

/** Plays the first game of a scenario by a policy; later ones would only take longer to say the same. */
export function playPolicyGame(policy: Policy, scenario: Scenario, seed: string): PolicyGame {
  let state = beginScenario(scenario, seed)
  let expectedPins = 0
  while (state.spot && state.spot.game <= 1) {
    const before = state
    state = advance(before, choose(policy, before))
    if (before.spot?.phase !== 'game' || !facesNewRack(before)) continue
    const record = state.throws[state.throws.length - 1]
    expectedPins += worthOnTrueOil(before, record)(record.decision)
  }
  return { expectedPins, score: tally(scenario.setup.scoring, state.balls[0] ?? []).total }
}
