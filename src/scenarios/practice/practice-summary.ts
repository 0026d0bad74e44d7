import { type Calibration, calibrationOf, learnerFrom } from '../../sim/analysis/practice/learner.js'
import { rounded } from '../files/text/json.js'
import { SKILL_WORDS } from '../words/practice-words.js'
import { practiceProfile } from './desk.js'
import { readyPositions } from './position-set.js'
import { practiceLogPath, readPracticeLog } from './practice-log.js'

/** A skill as practice has it, for reports: pins a game, with the middle four fifths. */
interface PracticeLine {
  readonly skill: string
  readonly answers: number
  readonly mean: number
  readonly low: number | null
  readonly high: number | null
}

/** What practice says of a player, for reports. */
export interface PracticeSummary {
  /** Dearest first. */
  readonly skills: readonly PracticeLine[]
  /** How often answers were sound against how sure the player was; null before there are enough. */
  readonly calibration: readonly Calibration[] | null
}

/** Null where nothing was practised. @throws ScenarioError where the log is no such log */
export async function practiceSummary(data: string, player: string | undefined): Promise<PracticeSummary | null> {
  const log = await readPracticeLog(practiceLogPath(data, player))
  if (log.answers.length === 0) return null
  const skills = practiceProfile(log, await readyPositions())
    .filter(({ answers }) => answers > 0)
    .map(({ skill, answers, pinsAGame, lowAGame, highAGame }) => ({
      skill: SKILL_WORDS[skill],
      answers,
      mean: rounded(pinsAGame, 2),
      low: rounded(lowAGame, 2),
      high: rounded(highAGame, 2),
    }))
  return { skills, calibration: calibrationOf(learnerFrom(log.answers).answers) }
}
