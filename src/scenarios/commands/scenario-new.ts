import type { ScenarioInput } from '../files/schema/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { commentedScenario } from '../library/commented.js'
import { builtInScenario } from '../library/library.js'
import { noBuiltInWords } from '../library/load.js'
import { type OilFigures, withBowler, withOil, withOwnBowler } from '../library/made-to-measure.js'
import { type CommandConsole, printText } from './console/console.js'

export interface NewOptions {
  readonly length?: number
  readonly volume?: number
  readonly ratio?: number
  /** Level, hand and style with commas between. */
  readonly bowler?: string
  readonly ownBowler?: boolean
  readonly title?: string
}

/** A built-in scenario as YAML with comments, to be changed; with other oil or another bowler where asked. */
export function scenarioNewCommand(from: string, options: NewOptions, console: CommandConsole): number {
  const data = builtInScenario(from)
  if (!data) {
    throw new ScenarioError([`${from}: there is ${noBuiltInWords(from)}.`], true)
  }
  const made = changed(data, options)
  const title = options.title ?? madeTitle(made, from, options)
  printText(console, commentedScenario({ ...made, title }))
  return EXIT.fine
}

/** What was made, in its figures; a scenario that is printed as it is keeps its own title. */
function madeTitle({ title }: ScenarioInput, from: string, { length, volume, ratio, bowler }: NewOptions): string {
  const oil = [
    ...(length === undefined ? [] : [`${length} ft`]),
    ...(volume === undefined ? [] : [`${volume} mL`]),
    ...(ratio === undefined ? [] : [`${ratio}:1`]),
  ]
  const who = bowler === undefined ? [] : [`for a ${bowler.split(/[,\s]+/).join(' ')} bowler`]
  const figures = [...(oil.length > 0 ? [oil.join(', ')] : []), ...who]
  return figures.length === 0 ? title : `${figures.join(' ')} (after ${from})`.slice(0, LONGEST_TITLE)
}

const LONGEST_TITLE = 80

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
