import { difficultyWord } from '../../sim/analysis/explore/difficulty.js'
import type { Posted } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { BUILT_IN_DIFFICULTY } from '../library/difficulty-data.js'
import { builtInNames } from '../library/library.js'
import { loadScenario } from '../library/load.js'
import { type LaneSummary, laneSummaries } from '../library/scenario-summary.js'
import { wrapped } from '../words/wrapped.js'
import { type CommandConsole, printText } from './console/console.js'

const SEED = '1'
/** Where the scenario posts nothing of it, so that the list does not either. */
const NOT_POSTED = '-'

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
    printText(console, jsonText({ scenarios: listed }))
    return EXIT.fine
  }
  console.print('                                                pins lost a game*')
  console.print('name                   ft    mL     class      thumb  stay            what')
  for (const one of listed) {
    console.print(rowOf(one))
    if (words.length > 0) for (const line of wrapped(one.purpose, '  ')) console.print(line)
  }
  console.print('')
  console.print(
    '* on first balls, against the best if you could see the oil: by following the rules of thumb, and by never moving.',
  )
  console.print(
    '  With words, such as "dryboard scenario list long sport", only those they are said of, with what they are for.',
  )
  return EXIT.fine
}

type Listed = ReturnType<typeof listedAs>

function listedAs(scenario: Scenario) {
  const difficulty = BUILT_IN_DIFFICULTY[scenario.name]
  return {
    name: scenario.name,
    title: scenario.title,
    purpose: scenario.purpose,
    lanes: laneSummaries(scenario, SEED).map((lane) => asPosted(lane, scenario.setup.posted)),
    besides: besides(scenario),
    difficulty: difficulty ? { word: difficultyWord(difficulty), ...difficulty } : null,
  }
}

/** A lane with the figures that are posted for it and no others. */
type PostedLane = Omit<LaneSummary, 'lengthFeet' | 'volumeMillilitres' | 'laneClass'> & {
  readonly lengthFeet: number | null
  readonly volumeMillilitres: number | null
  readonly laneClass: LaneSummary['laneClass'] | null
}

function asPosted(lane: LaneSummary, posted: Posted): PostedLane {
  if (posted === 'sheet') return lane
  const lengthFeet = posted === 'length' ? lane.lengthFeet : null
  return { ...lane, lengthFeet, volumeMillilitres: null, ratio: null, laneClass: null }
}

function searchedText({ name, title, purpose, besides: more, lanes, difficulty }: Listed): string {
  return [name, title, purpose, ...more, classes(lanes), difficulty?.word ?? ''].join(' ').toLowerCase()
}

function rowOf({ name, title, lanes, besides: more, difficulty }: Listed): string {
  const lost = (pins: number | undefined): string => (pins === undefined ? '' : pins.toFixed(0))
  return [
    name.padEnd(20),
    figures(lanes, 'lengthFeet').padEnd(7),
    figures(lanes, 'volumeMillilitres').padEnd(6),
    classes(lanes).padEnd(10),
    lost(difficulty?.thumbPins).padStart(5),
    lost(difficulty?.stayPins).padStart(5),
    ` ${(difficulty?.word ?? '').padEnd(9)}`,
    `${title}${more.length > 0 ? ` (${more.join(', ')})` : ''}`,
  ].join(' ')
}

function figures(lanes: readonly PostedLane[], figure: 'lengthFeet' | 'volumeMillilitres'): string {
  if (lanes.some(({ drawn }) => drawn)) return 'drawn'
  return lanes.map((lane) => lane[figure]?.toFixed(0) ?? NOT_POSTED).join('/')
}

function classes(lanes: readonly PostedLane[]): string {
  if (lanes.some(({ drawn }) => drawn)) return 'any'
  return [...new Set(lanes.map(({ laneClass }) => laneClass ?? NOT_POSTED))].join('/')
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
