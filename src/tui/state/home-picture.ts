import type { Scenario } from '../../scenarios/files/scenario/scenario.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { type LanePicture, pathTrace } from '../parts/lane.js'
import type { TrainerServices } from './services.js'

const PICTURE_SEED = 'home'

/** A lane to look at: the first scenario whose sheet is posted, freshly oiled, and the ball its opening line means. */
export function homePicture(scenarios: readonly Scenario[], services: TrainerServices): LanePicture | null {
  const scenario = scenarios.find(({ setup }) => setup.posted === 'sheet' && setup.lanes[0].oil.kind === 'pattern')
  if (!scenario) return null
  const block = services.begin(scenario, PICTURE_SEED)
  const decision = services.view(block)?.suggestion
  if (!decision) return null
  return {
    hand: scenario.setup.bowler.hand,
    standing: FULL_RACK,
    oil: block.lanes[0]!.film,
    traces: [pathTrace(services.meantBoards(block, decision), 'last')],
  }
}
