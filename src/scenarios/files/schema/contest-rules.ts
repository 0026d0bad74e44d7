import { z } from 'zod'
import { LOCAL_TIME } from '../text/local-time.js'
import { sentenceIssue } from '../text/problems.js'
import { line, listOf, numberFrom, oneOf, prose, table, wholeFrom } from './fields.js'

export const CONTEST_RULES_VERSION = 1

/** What places are given by. */
const RANKINGS = ['luck-adjusted', 'cost', 'score'] as const
export type Ranking = (typeof RANKINGS)[number]

/** What may part two entries that the ranking does not: the first of the ladder that differs does. */
const TIE_STEPS = ['score', 'best-game', 'last-game', 'strikes', 'luck-adjusted'] as const
export type TieStep = (typeof TIE_STEPS)[number]

/** What an entrant may choose of the bowler. */
const BOWLERS = ['as-set', 'own-hand', 'own-hand-and-level'] as const

const TIME_WORDS = 'a local time with the offset of its zone, such as "2026-03-08T19:04:11+01:00"'
/** A moment as clocks show it, with the offset of its zone. */
export const moment = () => z.string({ error: () => TIME_WORDS }).regex(LOCAL_TIME, TIME_WORDS)

const handicap = table(
  {
    base: wholeFrom(100, 300, 'pins a game').describe(
      'The average from which the difference is taken, such as 220: above the best average of the club.',
    ),
    percent: wholeFrom(1, 100, 'percent').describe('How much of the difference is given.'),
  },
  'a handicap',
).describe('Pins a game given to lower averages: percent of base less average, cut to whole pins, never below 0.')

/** Rules as an organiser writes them. */
const contestRulesFields = {
  title: line(80).describe('What the contest is called.'),
  notes: prose(1000).default('').describe('What entrants are told before they begin.'),
  games: wholeFrom(1, 12).optional().describe("Games to bowl; the scenario's own number where it is left out."),
  bowlers: oneOf(...BOWLERS)
    .default('own-hand')
    .describe('Whether entrants play the bowler as the scenario sets it, with their own hand, or with hand and level.'),
  ranking: oneOf(...RANKINGS)
    .default('luck-adjusted')
    .describe(
      'luck-adjusted: the score with the luck of delivery and of carry taken out; cost: pins the choices cost; score: pins as they fell.',
    ),
  handicap: handicap.optional(),
  ties: listOf(oneOf(...TIE_STEPS), 0, TIE_STEPS.length, 'steps')
    .default(['score', 'best-game'])
    .describe(
      'What parts entries that the ranking cannot tell apart, the first step that differs; else they share the place.',
    ),
  tries: wholeFrom(1, 10)
    .default(1)
    .describe('How many starts an entrant has; all of them on the same lane and luck. The first one finished counts.'),
  opens: moment().optional().describe('When play may begin.'),
  deadline: moment().describe('When the last ball must have been thrown. From then on grades and oil are shown.'),
}

/** A file of contest rules. */
export const contestRulesSchema = table(
  {
    $schema: z.string({ error: () => 'the address of a schema' }).optional(),
    version: z
      .literal(CONTEST_RULES_VERSION, { error: () => String(CONTEST_RULES_VERSION) })
      .describe('Of the file format.'),
    scenario: line(200).describe('A built-in lane, or a scenario file beside this one.'),
    ...contestRulesFields,
  },
  'contest rules',
).superRefine((rules, context) => {
  if (rules.ranking === 'cost' && rules.handicap)
    context.addIssue(
      sentenceIssue(['handicap'], 'A handicap is added to a score, and costs are none; leave it out or rank by score.'),
    )
  if (rules.opens !== undefined && Date.parse(rules.opens) >= Date.parse(rules.deadline))
    context.addIssue(sentenceIssue(['deadline'], 'The deadline is not after the time it opens.'))
})

/** Rules as a pack carries them. */
export const packRules = table(contestRulesFields, "a contest's rules")
export type ContestRules = z.output<typeof packRules>

export const ENTRANTS_VERSION = 1

/** The organiser's list of who entered. */
export const entrantsSchema = table(
  {
    version: z.literal(ENTRANTS_VERSION, { error: () => String(ENTRANTS_VERSION) }).describe('Of the file format.'),
    entrants: listOf(
      table(
        {
          name: line(60).describe('As it stands in the record.'),
          code: line(40).optional().describe('The entry code that the entrant was shown at the start.'),
          average: numberFrom(0, 300, 'pins a game').optional().describe('For the handicap.'),
        },
        'an entrant',
      ),
      0,
      1000,
      'entrants',
    ).describe('Everybody who entered.'),
  },
  'a list of entrants',
)
export type Entrant = z.output<typeof entrantsSchema>['entrants'][number]
