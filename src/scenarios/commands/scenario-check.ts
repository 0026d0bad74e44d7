import {
  DIFFICULTY_SEEDS,
  type Difficulty,
  difficultyOf,
  difficultyWord,
  informationAtStart,
} from '../../sim/analysis/explore/difficulty.js'
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
import { BRIEF_POLICIES, briefLook } from './brief-look.js'
import { type CommandConsole, printText } from './console/console.js'
import { type Progress, progressOn } from './console/progress.js'

/** Seeds under which drawn oil is tried, so that bounds which contradict each other do not wait for a player. */
const TRIED_SEEDS = ['1', '2', '3']

const POLICY_WORDS: Readonly<Record<Policy, string>> = {
  known: 'best if you could see the oil',
  fair: 'best from what is seen',
  thumb: 'rule of thumb',
  memo: 'best of the sheet, never moved',
  stay: 'never moving',
  random: 'anywhere sensible',
}

interface Checked {
  readonly file: string
  /** Who bowls, what is told and how long it is, in a line. */
  readonly about: string
  readonly problems: readonly string[]
  readonly lanes: readonly LaneSummary[]
  readonly difficulty: Difficulty | null
  /** Games each policy played for it. */
  readonly games: number
  /** What each policy's first balls are worth, game pins a game in expectation against the bowler's average first ball. */
  readonly expected: Readonly<Partial<Record<Policy, number>>> | null
  /** Game pins that seeing the oil would be worth on the first throw. */
  readonly informationPins: number | null
}

export interface CheckOptions {
  /** Leaves out how hard a scenario is, which takes seconds. */
  readonly quick?: boolean
  /** Plays more games in full, one who decides best by what is seen among them, which takes a minute. */
  readonly fair?: boolean
  readonly json?: boolean
}

/** Checks scenario files; every fault of every file is a result, and any at all makes the check fail. */
export async function scenarioCheckCommand(
  files: readonly string[],
  options: CheckOptions,
  console: CommandConsole,
): Promise<number> {
  const checked: Checked[] = []
  for (const [index, file] of files.entries()) {
    const progress = progressOn(console, `checking file ${index + 1} of ${files.length}, steps`)
    const one = await checkFile(file, options, progress)
    progress.over()
    checked.push(one)
    if (!options.json) for (const line of linesOf(one)) console.print(line)
  }
  if (options.json) printText(console, jsonText({ checked }))
  return checked.some(({ problems }) => problems.length > 0) ? EXIT.checkFailed : EXIT.fine
}

async function checkFile(file: string, { quick, fair }: CheckOptions, progress: Progress): Promise<Checked> {
  const nothing = { file, about: '', lanes: [], difficulty: null, games: 0, expected: null, informationPins: null }
  try {
    const scenario = await loadScenario(file)
    for (const seed of TRIED_SEEDS) beginScenario(scenario, seed)
    const about = aboutWords(scenario)
    const fine = { ...nothing, about, problems: [], lanes: laneSummaries(scenario, TRIED_SEEDS[0]) }
    if (quick) return fine
    return { ...fine, ...(fair ? inFull(scenario, progress) : briefly(scenario, progress)) }
  } catch (fault) {
    if (fault instanceof ScenarioError && !fault.missing) return { ...nothing, problems: fault.sentences }
    throw fault
  }
}

type Looked = Pick<Checked, 'difficulty' | 'games' | 'expected' | 'informationPins'>

/** Some seconds. */
function briefly(scenario: Scenario, { reached }: Progress): Looked {
  const steps = BRIEF_POLICIES.length + 1
  reached(0, steps)
  const { difficulty, expected } = briefLook(scenario, (games) => reached(games, steps))
  return {
    ...figures(difficulty, scenario),
    games: 1,
    expected: Object.fromEntries(Object.entries(expected).map(([policy, pins]) => [policy, rounded(pins, 1)])),
  }
}

/** A minute. */
function inFull(scenario: Scenario, { reached }: Progress): Looked {
  const steps = POLICIES.length + 1
  reached(0, steps)
  const told = figures(
    difficultyOf((seed) => beginScenario(scenario, seed)),
    scenario,
  )
  const expected: Partial<Record<Policy, number>> = {}
  for (const [index, policy] of POLICIES.entries()) {
    reached(index + 1, steps)
    const games = DIFFICULTY_SEEDS.map((seed) => playPolicyGame(policy, beginScenario(scenario, seed)).expectedPins)
    expected[policy] = rounded(games.reduce((sum, pins) => sum + pins, 0) / games.length, 1)
  }
  return { ...told, games: DIFFICULTY_SEEDS.length, expected }
}

function figures({ thumbPins, memoPins = 0, stayPins }: Difficulty, scenario: Scenario) {
  return {
    difficulty: { thumbPins: rounded(thumbPins, 1), memoPins: rounded(memoPins, 1), stayPins: rounded(stayPins, 1) },
    informationPins: rounded(
      informationAtStart((seed) => beginScenario(scenario, seed)),
      2,
    ),
  }
}

function linesOf({
  file,
  about,
  problems,
  lanes,
  difficulty,
  games,
  expected,
  informationPins,
}: Checked): readonly string[] {
  if (problems.length > 0) return problems
  return [
    `${file}: fine`,
    `  ${about}`,
    ...lanes.map((lane) => `  ${laneWords(lane)}`),
    ...(difficulty && informationPins !== null
      ? [
          `  ${difficultyWord(difficulty)}: on first balls the rule of thumb loses ${difficulty.thumbPins.toFixed(1)} pins a game, the sheet's best line learnt by heart ${(difficulty.memoPins ?? 0).toFixed(1)}, never moving ${difficulty.stayPins.toFixed(1)},`,
          `    against the best if you could see the oil${games === 1 ? ' (one game each, every third first ball priced; --fair looks longer)' : ''}`,
          ...expectedLines(expected),
          `  seeing the oil before the first throw would be worth ${informationPins.toFixed(1)} pins on it`,
        ]
      : []),
  ]
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
