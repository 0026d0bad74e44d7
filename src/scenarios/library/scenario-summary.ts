import { metresToFeet } from '../../sim/units.js'
import { patternOf } from '../../sim/world/block/begin.js'
import { layPattern, measurePattern } from '../../sim/world/lane/pattern.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { rounded } from '../files/text/json.js'

/** A lane's oil in the figures it is spoken of in; for drawn oil those of one seed. */
export interface LaneSummary {
  readonly lane: string
  readonly drawn: boolean
  readonly lengthFeet: number
  readonly volumeMillilitres: number
  /** Null where the outside is dry. */
  readonly ratio: number | null
  readonly laneClass: 'sport' | 'challenge' | 'standard'
}

export function laneSummaries({ setup }: Scenario, seed: string): LaneSummary[] {
  return setup.lanes.map(({ name, oil }, index) => {
    const { lengthMetres, volumeMicrolitres, ratio, laneClass } = measurePattern(
      layPattern(patternOf(oil, seed, index)),
    )
    return {
      lane: name,
      drawn: oil.kind === 'limits',
      lengthFeet: rounded(metresToFeet(lengthMetres), 1),
      volumeMillilitres: rounded(volumeMicrolitres / 1000, 1),
      ratio: Number.isFinite(ratio) ? rounded(ratio, 1) : null,
      laneClass,
    }
  })
}

export function laneWords({ lane, drawn, lengthFeet, volumeMillilitres, ratio, laneClass }: LaneSummary): string {
  const figures = `${lengthFeet} ft, ${volumeMillilitres} mL, ${ratio === null ? 'dry outside' : `${ratio}:1`}, ${laneClass}`
  return `${lane}: ${figures}${drawn ? ' (drawn by a seed; others differ)' : ''}`
}

/** What is not oil: who bowls, with whom, what is told and how long it is, in a line. */
export function aboutWords({ setup, data }: Scenario): string {
  const { bowler, field, games, practiceThrows, bag } = setup
  return [
    `for ${bowler.name}, ${bowler.hand}-handed`,
    data.takeBalls === undefined
      ? `${bag.length} ball${bag.length === 1 ? '' : 's'}`
      : `${data.takeBalls} of ${bag.length} balls`,
    POSTED_WORDS[setup.posted],
    ...(field.length > 0 ? [`${field.length} other${field.length === 1 ? '' : 's'} on the lanes`] : []),
    ...(data.fieldFramesBefore > 0 ? [`who have bowled ${data.fieldFramesBefore} frames`] : []),
    practiceThrows === 0 ? 'no practice' : `${practiceThrows} practice throws`,
    games === 1 ? 'one game' : `${games} games`,
  ].join(', ')
}

const POSTED_WORDS = { sheet: 'the sheet posted', length: 'the length posted', nothing: 'nothing posted' } as const
