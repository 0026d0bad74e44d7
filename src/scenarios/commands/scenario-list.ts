import { hardnessWord } from '../../sim/analysis/explore/hardness.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { BUILT_IN_HARDNESS } from '../library/hardness-data.js'
import { builtInNames } from '../library/library.js'
import { loadScenario } from '../library/load.js'
import { type LaneSummary, laneSummaries } from '../library/scenario-summary.js'
import { wrapped } from '../words/wrapped.js'
import type { CommandConsole } from './console/console.js'

const SEED = '1'

/** The built-in scenarios with what lies on their lanes and how hard they are; of some words only those they are said of, in full. */
export async function scenarioListCommand(
  words: readonly string[],
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const listed: Listed[] = []
  for (const name of builtInNames()) {
    const one = listedAs(await loadScenario(name))
    if (words.every((word) => searchedText(one).includes(word.toLowerCase()))) listed.push(one)
  }
  if (listed.length === 0) {
    throw new ScenarioError([
      `There is no built-in scenario of which all of this is said: ${words.join(', ')}; dryboard scenario list names them all.`,
    ])
  }
  if (options.json) {
    console.print(jsonText({ scenarios: listed }))
    return EXIT.fine
  }
  console.print('                                                pins lost a game*')
  console.print('name                 feet    mL     class      thumb  stay            what')
  for (const one of listed) {
    console.print(rowOf(one))
    if (words.length > 0) for (const line of wrapped(one.purpose, '  ')) console.print(line)
  }
  console.print('')
  console.print(
    '* on first balls, against the best with the oil in sight: by following the rules of thumb, and by never moving.',
  )
  console.print(
    '  With words, such as "dryboard scenario list long sport", only those they are said of, with what they are for.',
  )
  return EXIT.fine
}

type Listed = ReturnType<typeof listedAs>

function listedAs(scenario: Scenario) {
  const hardness = BUILT_IN_HARDNESS[scenario.name]
  return {
    name: scenario.name,
    title: scenario.title,
    purpose: scenario.purpose,
    lanes: laneSummaries(scenario, SEED),
    besides: besides(scenario),
    hardness: hardness ? { word: hardnessWord(hardness), ...hardness } : null,
  }
}

function searchedText({ name, title, purpose, besides: more, lanes, hardness }: Listed): string {
  return [name, title, purpose, ...more, classes(lanes), hardness?.word ?? ''].join(' ').toLowerCase()
}

function rowOf({ name, title, lanes, besides: more, hardness }: Listed): string {
  const lost = (pins: number | undefined): string => (pins === undefined ? '' : pins.toFixed(0))
  return [
    name.padEnd(20),
    figures(lanes, 'lengthFeet').padEnd(7),
    figures(lanes, 'volumeMillilitres').padEnd(6),
    classes(lanes).padEnd(10),
    lost(hardness?.thumbPins).padStart(5),
    lost(hardness?.stayPins).padStart(5),
    ` ${(hardness?.word ?? '').padEnd(9)}`,
    `${title}${more.length > 0 ? ` (${more.join(', ')})` : ''}`,
  ].join(' ')
}

function figures(lanes: readonly LaneSummary[], figure: 'lengthFeet' | 'volumeMillilitres'): string {
  if (lanes.some(({ drawn }) => drawn)) return 'drawn'
  return lanes.map((lane) => lane[figure].toFixed(0)).join('/')
}

function classes(lanes: readonly LaneSummary[]): string {
  if (lanes.some(({ drawn }) => drawn)) return 'any'
  return [...new Set(lanes.map(({ laneClass }) => laneClass))].join('/')
}

function besides({ data }: Scenario): string[] {
  return [
    ...(data.bowler.hand === 'left' ? ['left-handed'] : []),
    ...(data.field.length > 0 ? [`${data.field.length} other${data.field.length > 1 ? 's' : ''}`] : []),
    ...(data.fieldFramesBefore > 0 ? [`${data.fieldFramesBefore} frames bowled before`] : []),
    ...(data.takeBalls === undefined ? [] : [`take ${data.takeBalls} of ${data.bag.length} balls`]),
    ...(data.games > 1 ? [`${data.games} games`] : []),
  ]
}
