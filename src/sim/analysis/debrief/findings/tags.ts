import { moveSize } from './move-size.js'
import { skippedProbe } from './skipped-probe.js'
import { spareChoice } from './spare.js'
import type { Candidate, Tag, TagPart } from './tag.js'
import type { TagContext } from './tag-context.js'
import { timing } from './timing.js'
import { wrongBall } from './wrong-ball.js'
import { wrongLine } from './wrong-line.js'

export const MOST_TAGS_PER_GAME = 3
/** What costs no more, all its throws together, is a sound choice and not worth a finding. */
const LEAST_TAG_PINS = 0.5
/** How much dearer a plain finding must be to go before one that says more, per step of rank. */
const RANK_WORTH = 0.15

/** Everything that could be said of the choices; most of it overlaps. */
export function tagCandidates(context: TagContext): Candidate[] {
  return [wrongBall, wrongLine, timing, moveSize, skippedProbe, spareChoice]
    .flatMap((family) => family(context))
    .filter(({ parts }) => total(parts) > LEAST_TAG_PINS)
}

/**
 * The few findings worth saying: the dearest first, at most three a game. A throw is in one finding only; what a dearer
 * finding has claimed is taken out of the others.
 */
export function tagsOf(context: TagContext): Tag[] {
  const weigh = ({ parts, rank }: Candidate): number => total(parts) * (1 + RANK_WORTH * rank)
  let left = tagCandidates(context)
  const chosen: Tag[] = []
  while (left.length > 0) {
    const best = left.reduce((most, one) => (weigh(one) > weigh(most) ? one : most))
    const tag = best.tell(best.parts)
    if (chosen.filter(({ game }) => game === tag.game).length < MOST_TAGS_PER_GAME) chosen.push(tag)
    left = left.flatMap((one) => (one === best ? [] : withoutThrows(one, tag.throws)))
  }
  return chosen
}

function total(parts: readonly TagPart[]): number {
  return parts.reduce((sum, { pins }) => sum + pins, 0)
}

/** What is left of a candidate; nothing where what is left is too close to call. */
function withoutThrows(one: Candidate, throws: readonly number[]): Candidate[] {
  const parts = one.parts.filter(({ reading }) => !throws.includes(reading.index))
  if (parts.length === one.parts.length) return [one]
  const isWorthSaying = parts.some(({ pins, reading }) => pins > reading.verdict.tooCloseToCallPins)
  return isWorthSaying && total(parts) > LEAST_TAG_PINS ? [{ ...one, parts }] : []
}
