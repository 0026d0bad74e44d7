import { type Scenario, scenarioFrom } from '../../scenarios/files/scenario/scenario.js'
import type { ScenarioData } from '../../scenarios/files/schema/scenario.js'
import { locateNowhere } from '../../scenarios/files/text/source-text.js'
import type { Fitting } from '../state/services.js'

const SEEING: Readonly<Record<'finer' | 'coarser', ScenarioData['seeing']>> = {
  finer: { arrowsBoards: 0.5, breakpointBoards: 0.5, breakpointFeet: 1, speedMph: 0.1 },
  coarser: { arrowsBoards: 2, breakpointBoards: 2, breakpointFeet: 4, speedMph: 0.5 },
}

/**
 * The scenario with the player's choices in it. Balls of the scenario's bag that only the others throw from now on go
 * into the others' bag.
 *
 * @throws ScenarioError
 */
export function fitScenario(scenario: Scenario, { bowler, bag, seeing }: Fitting): Scenario {
  if (!bowler && !bag && seeing === 'scenario') return scenario
  const { data } = scenario
  const fitted = {
    ...data,
    ...(bowler ? { bowler } : {}),
    ...(bag ? bags(data, bag) : {}),
    ...(seeing === 'scenario' ? {} : { seeing: SEEING[seeing] }),
  }
  return scenarioFrom(scenario.name, locateNowhere(scenario.name, fitted))
}

/** The own bag, with ids that tell its balls from those the others throw. */
function bags(data: ScenarioData, own: NonNullable<Fitting['bag']>): Pick<ScenarioData, 'bag' | 'fieldBag'> {
  const isThrown = (id: string) => data.field.some((other) => other.ball === id)
  const bag = own.map((ball) => (isThrown(ball.id) ? { ...ball, id: `own-${ball.id}` } : ball))
  return { bag, fieldBag: [...data.fieldBag, ...data.bag].filter(({ id }) => isThrown(id)) }
}
