import { COMPARED_POLICIES, type ComparedPolicy, type SameLuckScores } from '../../sim/analysis/explore/same-luck.js'

/** Whoever a block is held against, in a line of their own and where there is little room. */
export const COMPARED_WORDS: Readonly<Record<ComparedPolicy, readonly [whole: string, short: string]>> = {
  thumb: ['rule of thumb', 'rule of thumb'],
  fair: ['best from what you had seen', 'best as seen'],
  known: ['best if you could see the oil', 'oil seen'],
}

/** What the player and the others scored on the same luck, on one line. */
export function sameLuckLine(scores: SameLuckScores, length: 'whole' | 'short'): string {
  const others = COMPARED_POLICIES.map(
    (policy) => `${COMPARED_WORDS[policy][length === 'whole' ? 0 : 1]} ${scores.others[policy]}`,
  )
  const after = scores.isWhole ? '' : ` after ${scores.frames} ${scores.frames === 1 ? 'frame' : 'frames'}`
  return `Same luck${after}: you ${scores.you}, ${others.join(', ')}.`
}

/** What such scores tell, and what they do not. */
export const SAME_LUCK_ABOUT =
  'All of them had your bowler, your oil, your misses and your pins; only the choices differ. One game is one sample: a better choice can score less.'

/** What is told of the choices beside the scores. */
export const CHOICES_ALONE_ABOUT =
  'Choices alone: expected pins behind the best if you could see the oil, with all luck left out.'

/** Where a day's lane and seed come from. */
export const LANE_OF_THE_DAY_ABOUT =
  'Its lane and its seed come from the date and the version of the lane rules alone: the same oil and luck for everyone.'
