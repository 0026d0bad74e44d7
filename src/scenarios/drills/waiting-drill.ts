import type { Skill } from '../../sim/analysis/debrief/findings/skills.js'
import { dearestSkill, libraryDrillOf } from '../reports/review/suggested-drill.js'
import type { PastBlock } from '../store/past-blocks.js'
import type { Remembered } from '../store/remembered.js'

/** A drill of the library on what costs most. */
export interface WaitingDrill {
  readonly skill: Skill
  /** What it is called by, as in `dryboard drill library:line`. */
  readonly name: string
  /** How many positions of drills were answered before, so that others come up the next time. */
  readonly answered: number
}

/**
 * The drill that waits for a player: on the skill that cost most in the latest blocks, until a drill is played after the last of them.
 *
 * @param past latest first
 * @returns null where one was played since, nothing costs enough, or there is no drill on what does
 */
export function waitingDrill({ skills }: Pick<Remembered, 'skills'>, past: readonly PastBlock[]): WaitingDrill | null {
  const own = past.filter(({ isOwn }) => isOwn)
  if (own[0]?.kind === 'drill') return null
  const dearest = dearestSkill(skills)
  const name = dearest && libraryDrillOf(dearest.skill)
  if (!name) return null
  return { skill: dearest.skill, name, answered: own.filter(({ kind }) => kind === 'drill').length }
}
