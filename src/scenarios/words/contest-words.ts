import type { ContestRules, Ranking, TieStep } from '../files/schema/contest-rules.js'

/** What places are given by, as a heading. */
const RANKING_WORDS: Readonly<Record<Ranking, string>> = {
  'luck-adjusted': 'score without luck',
  cost: 'cost',
  score: 'score',
}

/** The same at the head of a column. */
export const RANKING_HEADS: Readonly<Record<Ranking, string>> = {
  'luck-adjusted': 'without luck',
  cost: 'cost',
  score: 'pins',
}

/** A moment for people: date and time as that place's clocks show them. */
export const momentWords = (moment: string): string => `${moment.slice(0, 10)} ${moment.slice(11, 16)}`

export const TIE_WORDS: Readonly<Record<TieStep, string>> = {
  score: 'score',
  'best-game': 'best game',
  'last-game': 'last game',
  strikes: 'strikes',
  'luck-adjusted': 'score without luck',
}

/** Why score and ranking differ, for under a table. */
export const WHY_THEY_DIFFER: Readonly<Record<Ranking, string>> = {
  'luck-adjusted':
    'Places go by the score without luck: what the choices were worth on this lane. The score is what fell; the two differ by the luck of delivery and of carry, which nobody chose.',
  cost: 'Places go by what the choices cost against the best from what each player had seen. The score is what fell; it has in it the luck of delivery and of carry, and how the oil suited a choice, which nobody chose.',
  score:
    'Places go by the score as the pins fell. All had the same luck to begin with, but other choices meet it otherwise, so a few pins more say little.',
}

/** What a secrecy on the players' own machines is worth, said wherever a contest is sealed or opened. */
export const HONOUR_WORDS =
  "On a player's own machine the lane is there once the passphrase is known: until then it is sealed, from then on secrecy rests on honour. A host (dryboard contest host) keeps it from everybody until the ball is thrown."

export const HELD_BACK_WORDS = 'Grades and oil are held back until the contest is over.'

/** A rule sheet, a line a rule. */
export function rulesLines(rules: ContestRules): string[] {
  const { games, ranking, handicap, ties, tries, opens, deadline, bowlers } = rules
  const choice = {
    'as-set': 'All play the bowler that is set.',
    'own-hand': 'Each plays with their own hand.',
    'own-hand-and-level': 'Each plays with their own hand and level.',
  }[bowlers]
  return [
    `${games === 1 ? 'One game' : `${games} games`}. ${choice} ${tries === 1 ? 'One try' : `${tries} tries`} each.`,
    `Places go by ${RANKING_WORDS[ranking]}; ties by ${[...ties.map((step) => TIE_WORDS[step]), 'else shared'].join(', then ')}.`,
    ...(handicap ? [`Handicap: ${handicap.percent} % of ${handicap.base} less the average, a game.`] : []),
    `${opens === undefined ? '' : `It opens at ${momentWords(opens)}. `}The last ball is thrown before ${momentWords(deadline)}.`,
    'All have the same lane and the same luck; a choice of another line meets the same luck elsewhere.',
  ]
}

/** What each test for play that knows too much looks at. */
export const EVIDENCE_WORDS = {
  oil: 'the oil suited the choices, mean pins a first ball (below 0: better than what had been seen could tell)',
  'coming-miss': 'aim against the miss to come, rank correlation (below 0: as if it were known)',
  'exactly-best': 'choices exactly the best from what had been seen, share',
} as const

export const EVIDENCE_CAUTION =
  'Evidence, never a verdict. A small p says that chance seldom does this; with many entries and three tests each some are small by chance. Frames on one lane lean the same way, so read the first p as a lower bound. Talk to the player first.'
