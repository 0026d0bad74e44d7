import { existsSync } from 'node:fs'
import { dirname, isAbsolute, join } from 'node:path'
import { type Scenario, scenarioFrom } from '../../files/scenario/scenario.js'
import {
  CONTEST_RULES_VERSION,
  type ContestRules,
  contestRulesSchema,
  ENTRANTS_VERSION,
  type Entrant,
  entrantsSchema,
} from '../../files/schema/contest-rules.js'
import { refuseNewer } from '../../files/text/newer-version.js'
import { problemSentences } from '../../files/text/problems.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { locateNowhere, readSourceText } from '../../files/text/source-text.js'
import { builtInScenario } from '../../library/library.js'
import { loadScenario } from '../../library/load.js'

/** Contest rules as read, and the lane they name with as many games as they say. */
interface RulesFile {
  readonly rules: ContestRules
  readonly scenario: Scenario
}

/** @throws ScenarioError with every fault of the rules, or of the scenario */
export async function readRules(path: string): Promise<RulesFile> {
  const source = readSourceText(path, await readTextFile(path))
  refuseNewer(source, CONTEST_RULES_VERSION)
  const checked = contestRulesSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  const { $schema: _schema, version: _version, scenario: named, ...rules } = checked.data
  const loaded = await loadScenario(besideOrBuiltIn(path, named))
  const { data, name } = loaded
  if (data.takeBalls !== undefined)
    throw new ScenarioError([
      `${source.place(['scenario'], 'value').text} scenario: ${named} lets players choose their balls, and in a contest all have the same bag; take takeBalls out of it.`,
    ])
  const games = rules.games ?? data.games
  return { rules: { ...rules, games }, scenario: scenarioFrom(name, locateNowhere(name, { ...data, games })) }
}

function besideOrBuiltIn(rulesPath: string, named: string): string {
  if (builtInScenario(named) || isAbsolute(named)) return named
  const beside = join(dirname(rulesPath), named)
  return existsSync(beside) ? beside : named
}

/** Who entered, as the organiser wrote it. @throws ScenarioError */
export async function readEntrants(path: string): Promise<readonly Entrant[]> {
  const source = readSourceText(path, await readTextFile(path))
  refuseNewer(source, ENTRANTS_VERSION)
  const checked = entrantsSchema.safeParse(source.data)
  if (!checked.success) throw new ScenarioError(problemSentences(source, checked.error.issues))
  return checked.data.entrants
}
