import {
  HARDNESS_SEEDS,
  type Hardness,
  hardnessOf,
  hardnessWord,
  informationAtStart,
} from '../../sim/analysis/explore/hardness.js'
import { playPolicyGame } from '../../sim/analysis/explore/ladder.js'
import { POLICIES, type Policy } from '../../sim/analysis/policies/policies.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { loadScenario } from '../library/load.js'
import { aboutWords, type LaneSummary, laneSummaries, laneWords } from '../library/scenario-summary.js'
import { signedPins } from '../words/words.js'
import type { CommandConsole } from './console/console.js'
import { progressOn } from './console/progress.js'

/** Seeds under which drawn oil is tried, so that bounds which contradict each other do not wait for a player. */
const TRIED_SEEDS = ['1', '2', '3']

const POLICY_WORDS: Readonly<Record<Policy, string>> = {
  known: 'best with the oil in sight',
  fair: 'best by what is seen',
  thumb: 'rule of thumb',
  stay: 'never moving',
  random: 'anywhere sensible',
}

interface Checked {
  readonly file: string
  /** Who bowls, what is told and how long it is, in a line. */
  readonly about: string
  readonly problems: readonly string[]
  readonly lanes: readonly LaneSummary[]
  readonly hardness: Hardness | null
  /** What each policy's first balls are worth, game pins a game in expectation against the bowler's average first ball. */
  readonly expected: Readonly<Partial<Record<Policy, number>>> | null
  /** Game pins that seeing the oil would be worth on the first throw. */
  readonly informationPins: number | null
}

export interface CheckOptions {
  /** Leaves out how hard a scenario is, which takes seconds. */
  readonly quick?: boolean
  /** Also plays one who decides best by what is seen, which takes half a minute. */
  readonly fair?: boolean
  readonly json?: boolean
}

/** Checks scenario files; every fault of every file is a result, and any at all makes the check fail. */
export async function scenarioCheckCommand(
  files: readonly string[],
  options: CheckOptions,
  console: CommandConsole,
): Promise<number> {
  const progress = progressOn(console, 'checking')
  const checked: Checked[] = []
  for (const file of files) {
    const one = await checkFile(file, options, () => progress.reached(checked.length, files.length))
    progress.over()
    checked.push(one)
    if (!options.json) for (const line of linesOf(one)) console.print(line)
  }
  if (options.json) console.print(jsonText({ checked }))
  return checked.some(({ problems }) => problems.length > 0) ? EXIT.checkFailed : EXIT.fine
}

async function checkFile(file: string, { quick, fair }: CheckOptions, working: () => void): Promise<Checked> {
  const nothing = { file, about: '', lanes: [], hardness: null, expected: null, informationPins: null }
  try {
    const scenario = await loadScenario(file)
    for (const seed of TRIED_SEEDS) beginScenario(scenario, seed)
    working()
    const about = aboutWords(scenario)
    const fine = { ...nothing, about, problems: [], lanes: laneSummaries(scenario, TRIED_SEEDS[0]) }
    if (quick) return fine
    const { thumbPins, stayPins } = hardnessOf(scenario)
    return {
      ...fine,
      hardness: { thumbPins: rounded(thumbPins, 1), stayPins: rounded(stayPins, 1) },
      expected: expectedBy(fair ? POLICIES : POLICIES.filter((policy) => policy !== 'fair'), scenario),
      informationPins: rounded(informationAtStart(scenario), 2),
    }
  } catch (fault) {
    if (fault instanceof ScenarioError && !fault.missing) return { ...nothing, problems: fault.sentences }
    throw fault
  }
}

function linesOf({ file, about, problems, lanes, hardness, expected, informationPins }: Checked): readonly string[] {
  if (problems.length > 0) return problems
  return [
    `${file}: fine`,
    `  ${about}`,
    ...lanes.map((lane) => `  ${laneWords(lane)}`),
    ...(hardness && informationPins !== null
      ? [
          `  ${hardnessWord(hardness)}: on first balls the rule of thumb gives away ${hardness.thumbPins.toFixed(1)} pins a game, never moving ${hardness.stayPins.toFixed(1)},`,
          '    against the best with the oil in sight',
          ...expectedLines(expected),
          `  seeing the oil before the first throw would be worth ${informationPins.toFixed(1)} pins on it`,
        ]
      : []),
  ]
}

function expectedBy(policies: readonly Policy[], scenario: Scenario): Partial<Record<Policy, number>> {
  return Object.fromEntries(
    policies.map((policy) => {
      const games = HARDNESS_SEEDS.map((seed) => playPolicyGame(policy, scenario, seed).expectedPins)
      return [policy, rounded(games.reduce((sum, pins) => sum + pins, 0) / games.length, 1)]
    }),
  )
}

function expectedLines(expected: Checked['expected']): string[] {
  if (!expected) return []
  const told = POLICIES.flatMap((policy) => {
    const pins = expected[policy]
    return pins === undefined ? [] : [`${POLICY_WORDS[policy]} ${signedPins(pins)}`]
  })
  return [
    "  first balls in pins a game, in expectation, above or below this bowler's average:",
    `    ${told.join(', ')}`,
  ]
}
