import { ScenarioError } from '../text/scenario-error.js'
import { locateNowhere } from '../text/source-text.js'
import { ballPlace } from './choose-ball.js'
import { type Scenario, scenarioFrom } from './scenario.js'

/**
 * The scenario with only the balls taken along, where it lets one take fewer than there are. What is left behind stays out of the
 * record too; other bowlers keep their balls.
 *
 * @param named ids or places of the balls, or undefined where none were named
 * @throws ScenarioError when the number of balls is not the scenario's
 */
export function withBallsTaken(scenario: Scenario, named: readonly string[] | undefined): Scenario {
  const { name, data } = scenario
  const { takeBalls, ...rest } = data
  const ids = data.bag.map(({ id }) => id).join(', ')
  if (takeBalls === undefined) {
    if (named === undefined) return scenario
    throw new ScenarioError([`${name}: the whole bag comes along; there is nothing to take.`])
  }
  const places = [...new Set((named ?? []).map((one) => ballPlace(scenario, one)))]
  if (places.length !== takeBalls) {
    throw new ScenarioError([
      `${name}: ${named === undefined ? 'say which balls you take' : `found ${places.length} balls`}; allowed are ${takeBalls} of ${ids}, as in --take ${data.bag
        .slice(0, takeBalls)
        .map(({ id }) => id)
        .join(',')}.`,
    ])
  }
  const bag = data.bag.filter((_, place) => places.includes(place))
  const left = data.bag.filter(
    (ball, place) => !places.includes(place) && data.field.some((one) => one.ball === ball.id),
  )
  return scenarioFrom(name, locateNowhere(name, { ...rest, bag, fieldBag: [...data.fieldBag, ...left] }))
}
