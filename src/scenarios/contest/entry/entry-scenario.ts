import { type Scenario, scenarioFrom } from '../../files/scenario/scenario.js'
import type { ScenarioData } from '../../files/schema/scenario.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { locateNowhere } from '../../files/text/source-text.js'
import { scenarioHash } from '../../store/hashes.js'
import type { OpenedPack } from '../pack/pack.js'

/** What an entrant says of their bowler; what is left out stays as the contest has it. */
export interface BowlerChoice {
  readonly hand?: 'right' | 'left' | undefined
  readonly level?: string | undefined
}

/**
 * The contest's lane with the entrant's bowler, as far as the rules let them choose.
 *
 * @throws ScenarioError where they do not, or there is no such level
 */
export function entryScenario({ pack, scenario }: OpenedPack, { hand, level }: BowlerChoice): Scenario {
  const { bowlers } = pack.rules
  if (hand !== undefined && bowlers === 'as-set')
    throw new ScenarioError([`${pack.rules.title}: all play the bowler that is set; leave --hand out.`])
  if (level !== undefined && bowlers !== 'own-hand-and-level')
    throw new ScenarioError([`${pack.rules.title}: all play at the same level; leave --level out.`])
  if (hand === undefined && level === undefined) return scenario
  const { bowler } = scenario.data
  const style = 'style' in bowler ? bowler.style : 'tweener'
  const chosen = level === undefined ? { ...bowler, hand } : { level, hand: hand ?? bowler.hand, style }
  return scenarioFrom(scenario.name, locateNowhere(scenario.name, { ...scenario.data, bowler: chosen }))
}

/** Whether a scenario is the contest's own with a bowler whom its rules allow. */
export function isEntryScenario({ pack, scenario }: OpenedPack, played: ScenarioData): boolean {
  if (scenarioHash(played) === scenarioHash(scenario.data)) return true
  const own = scenario.data.bowler
  const { bowler } = played
  const lane = { ...played, bowler: own }
  if (pack.rules.bowlers === 'as-set' || scenarioHash(lane) !== scenarioHash(scenario.data)) return false
  if (pack.rules.bowlers === 'own-hand') return scenarioHash({ ...own, hand: bowler.hand }) === scenarioHash(bowler)
  if (bowler.level === 'own')
    return own.level === 'own' && scenarioHash({ ...own, hand: bowler.hand }) === scenarioHash(bowler)
  const style = 'style' in own ? own.style : 'tweener'
  const { level, hand } = bowler
  const asMade = own.level !== 'own' && level === own.level ? { ...own, hand } : { level, hand, style }
  return [asMade, { level, hand, style }].some((one) => scenarioHash(one) === scenarioHash(bowler))
}
