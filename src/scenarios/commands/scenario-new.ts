import type { ScenarioInput } from '../files/schema/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { commentedScenario } from '../library/commented.js'
import { builtInScenario } from '../library/library.js'
import { noBuiltInWords } from '../library/load.js'
import { type OilFigures, withBowler, withOil, withOwnBowler } from '../library/made-to-measure.js'
import type { CommandConsole } from './console/console.js'

export interface NewOptions {
  readonly length?: number
  readonly volume?: number
  readonly ratio?: number
  /** Level, hand and style with commas between. */
  readonly bowler?: string
  readonly ownBowler?: boolean
}

/** A built-in scenario as YAML with comments, to be changed; with other oil or another bowler where asked. */
export function scenarioNewCommand(from: string, options: NewOptions, console: CommandConsole): number {
  const data = builtInScenario(from)
  if (!data) {
    throw new ScenarioError([`${from}: there is ${noBuiltInWords(from)}.`], true)
  }
  console.print(commentedScenario(changed(data, options)))
  return EXIT.fine
}

function changed(data: ScenarioInput, { length, volume, ratio, bowler, ownBowler }: NewOptions): ScenarioInput {
  const oil: OilFigures = {
    ...(length === undefined ? {} : { lengthFeet: length }),
    ...(volume === undefined ? {} : { millilitres: volume }),
    ...(ratio === undefined ? {} : { ratio }),
  }
  const onIt = bowler ? withBowler(data, bowler) : data
  const oiled = Object.keys(oil).length > 0 ? withOil(onIt, oil) : onIt
  return ownBowler ? withOwnBowler(oiled) : oiled
}
