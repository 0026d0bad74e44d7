import { type Level, levelProfile } from '../../sim/world/bowler/levels.js'
import { ownFigures } from '../files/scenario/own-figures.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { typicalBowler } from '../files/schema/bowler.js'
import type { ScenarioInput } from '../files/schema/scenario.js'
import { problemSentences } from '../files/text/problems.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { oilSheet } from './oil-sheet.js'
import { type LaneSummary, laneSummaries } from './scenario-summary.js'

/** Oil as it is spoken of; what is left out stays as it is. */
export interface OilFigures {
  readonly lengthFeet?: number
  readonly millilitres?: number
  /** Middle over outside. */
  readonly ratio?: number
}

/** Below this ratio a sheet needs oil on the first board and a crown wider at its foot to come out. */
const FLAT_RATIO = 2.5
/** How far a made sheet may measure off what was asked, as a share. */
const MOST_OFF = 0.05

/**
 * A scenario with another oil on all its lanes, passes worked out for it.
 *
 * @throws ScenarioError where no sheet comes out as asked, or where figures are left out that the scenario has none of
 */
export function withOil(data: ScenarioInput, wanted: OilFigures): ScenarioInput {
  const [now] = laneSummaries(loaded(data), '1')
  const lengthFeet = wanted.lengthFeet ?? known(now, now.lengthFeet, '--length')
  const millilitres = wanted.millilitres ?? known(now, now.volumeMillilitres, '--volume')
  const ratio = wanted.ratio ?? known(now, now.ratio, '--ratio')
  const shape = ratio < FLAT_RATIO ? { crown: [6, 15] as const, edge: 1 } : {}
  const passes = oilSheet({ lengthFeet, millilitres, ratio, ...shape })
  const notes = `${lengthFeet} feet, ${millilitres} mL, ${ratio} times as much in the middle as outside.`
  const made = { ...data, notes, lanes: data.lanes.map(({ name }) => ({ name, passes })) }
  const [measured] = laneSummaries(loaded(made), '1')
  const off = (found: number | null, asked: number): boolean => found === null || Math.abs(found / asked - 1) > MOST_OFF
  if (
    off(measured.lengthFeet, lengthFeet) ||
    off(measured.volumeMillilitres, millilitres) ||
    off(measured.ratio, ratio)
  ) {
    throw new ScenarioError([
      `There is no sheet of ${lengthFeet} feet, ${millilitres} mL and ${ratio}:1; the nearest measures ${measured.lengthFeet} feet, ${measured.volumeMillilitres} mL and ${measured.ratio ?? 'nothing outside, so no number'}:1.`,
    ])
  }
  return made
}

/** The scenario with its bowler written out figure by figure, to be changed. */
export function withOwnBowler(data: ScenarioInput): ScenarioInput {
  const { bowler } = data
  if (bowler.level === 'own') return data
  const profile = levelProfile(String(bowler.level) as Level, bowler.style, bowler.hand)
  return { ...data, bowler: ownFigures(profile, profile.name) }
}

/**
 * The scenario for another typical bowler.
 *
 * @param words level, hand and style with commas between, such as "180,left,stroker"; hand and style may be left out
 * @throws ScenarioError
 */
export function withBowler(data: ScenarioInput, words: string): ScenarioInput {
  const [level, hand = 'right', style = 'tweener'] = words.split(/[,\s]+/)
  const checked = typicalBowler.safeParse({ level, hand, style })
  if (!checked.success) {
    throw new ScenarioError(problemSentences(locateNowhere('--bowler', { level, hand, style }), checked.error.issues))
  }
  return { ...data, bowler: checked.data }
}

const loaded = (data: ScenarioInput): Scenario => scenarioFrom('the scenario', locateNowhere('the scenario', data))

function known({ drawn }: LaneSummary, figure: number | null, option: string): number {
  if (drawn || figure === null) {
    throw new ScenarioError([
      `This scenario's oil ${drawn ? 'is drawn by a seed' : 'has nothing outside'} and has no such figure to keep; say ${option} too.`,
    ])
  }
  return figure
}
