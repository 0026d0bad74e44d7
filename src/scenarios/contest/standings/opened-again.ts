import { scenarioFrom } from '../../files/scenario/scenario.js'
import type { ScenarioData } from '../../files/schema/scenario.js'
import { locateNowhere } from '../../files/text/source-text.js'
import type { OpenedPack } from '../pack/pack.js'

/** An opened pack as it goes to a thread of its own: data alone. */
export interface PackToHand extends Omit<OpenedPack, 'scenario'> {
  readonly scenario: ScenarioData
}

export const handedOver = ({ scenario, ...rest }: OpenedPack): PackToHand => ({ ...rest, scenario: scenario.data })

export const openedAgain = ({ scenario, ...rest }: PackToHand): OpenedPack => ({
  ...rest,
  scenario: scenarioFrom(rest.pack.scenario, locateNowhere(rest.pack.scenario, scenario)),
})
