import { hardnessWord } from '../hardness.js'
import { jsonText } from '../json.js'
import { BUILT_IN_HARDNESS } from '../library/hardness-data.js'
import { builtInNames } from '../library/library.js'
import { loadScenario } from '../load.js'
import type { Scenario } from '../scenario.js'
import { type LaneSummary, laneSummaries } from '../scenario-summary.js'
import type { CommandConsole } from './console.js'
import { EXIT } from './exit-codes.js'

const SEED = '1'

/** The built-in scenarios with what lies on their lanes and how hard they are. */
export async function scenarioListCommand(
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const listed = []
  for (const name of builtInNames()) {
    const scenario = await loadScenario(name)
    const hardness = BUILT_IN_HARDNESS[name]
    listed.push({
      name,
      title: scenario.title,
      purpose: scenario.purpose,
      lanes: laneSummaries(scenario, SEED),
      besides: besides(scenario),
      hardness: hardness ? { word: hardnessWord(hardness), ...hardness } : null,
    })
  }
  if (options.json) {
    console.print(jsonText({ scenarios: listed }))
    return EXIT.fine
  }
  console.print('name                 feet    mL     class      lost*          what')
  for (const { name, title, lanes, besides: more, hardness } of listed) {
    const lost = hardness ? `${hardness.thumbPins.toFixed(0)}/${hardness.stayPins.toFixed(0)} ${hardness.word}` : ''
    console.print(
      `${name.padEnd(20)} ${figures(lanes, 'lengthFeet').padEnd(7)} ${figures(lanes, 'volumeMillilitres').padEnd(6)} ${classes(lanes).padEnd(10)} ${lost.padEnd(15)}${title}${more.length > 0 ? ` (${more.join(', ')})` : ''}`,
    )
  }
  console.print('')
  console.print(
    '* pins a game given away on first balls by the rule of thumb / by never moving, against the best with the oil in sight',
  )
  return EXIT.fine
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
