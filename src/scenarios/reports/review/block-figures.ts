import { SKILL_OF, type Skill } from '../../../sim/analysis/debrief/findings/skills.js'
import type { DebriefReport } from '../debrief/debrief-report.js'
import type { Weighed } from './estimate.js'
import type { ReviewedBlock } from './reviewed-block.js'

/** Choices with a price that are the player's own. */
export const ownChoices = ({ throws }: DebriefReport): number =>
  throws.filter(({ fair, counted }) => fair && counted).length

/** Frames with a choice of the player's own; a block left in its first game counts as the part of a game it is. */
export const ownFrames = ({ ledger }: DebriefReport): number => ledger.frames.length

/** A sum of pins over a block as pins a game, counting by its graded choices. */
export function perGame({ report }: Pick<ReviewedBlock, 'report'>, pins: number): Weighed {
  const frames = ownFrames(report)
  return { value: frames === 0 ? 0 : (10 * pins) / frames, weight: ownChoices(report) }
}

export const totalCost = (block: ReviewedBlock): Weighed => perGame(block, block.report.givenAway.total)

/** What findings on one skill cost; with all skills and `untoldPins` it adds up to the block's cost. */
export function pinsOnSkill({ tags }: DebriefReport, skill: Skill): number {
  return tags.reduce((sum, { kind, pins }) => sum + (SKILL_OF[kind] === skill ? pins : 0), 0)
}
