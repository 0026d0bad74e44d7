import { beginScenario } from '../../src/scenarios/files/scenario/begin-scenario.js'
import { DEMO_NAMES } from '../../src/scenarios/library/library.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { choose, type Policy } from '../../src/sim/analysis/policies/policies.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { type GoldenFigures, goldenFigures } from './digest.js'

export interface GoldenBlock {
  readonly name: string
  readonly scenario: string
  readonly policy: Policy
  readonly seed: string
  /** The block is left after so many throws. */
  readonly throws: number
}

const WHOLE = Number.POSITIVE_INFINITY
/** Practice and the first frames; the other seed is played to the end. */
const OPENING_THROWS = 8
/** Searching is dear, and believing dearer: a few throws of the one, two of the other. */
const KNOWN_THROWS = 6
const FAIR_THROWS = 2

const blockOf = (scenario: string, policy: Policy, seed: string, throws: number): GoldenBlock => ({
  name: `${scenario}, ${policy}, seed ${seed}`,
  scenario,
  policy,
  seed,
  throws,
})

/**
 * Every demo scenario by every quick policy, under one seed to the end and under another as far as the opening, and
 * one begun by the policy that sees the oil and one by the policy that reads it.
 */
export const GOLDEN_BLOCKS: readonly GoldenBlock[] = [
  ...DEMO_NAMES.flatMap((scenario) =>
    (['thumb', 'stay', 'random'] as const).flatMap((policy) => [
      blockOf(scenario, policy, '1', WHOLE),
      blockOf(scenario, policy, 'thistle', OPENING_THROWS),
    ]),
  ),
  blockOf('flat-forty-five', 'known', '1', KNOWN_THROWS),
  blockOf('house-forty', 'fair', '1', FAIR_THROWS),
]

export async function playGolden({ scenario, policy, seed, throws }: GoldenBlock): Promise<GoldenFigures> {
  let state = beginScenario(await loadScenario(scenario), seed)
  while (state.spot && state.throws.length < throws) state = advance(state, choose(policy, state))
  return goldenFigures(state)
}
