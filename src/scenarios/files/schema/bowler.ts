import { z } from 'zod'
import { FEET_BOARDS, TARGET_BOARDS } from '../../../sim/world/block/follow-the-miss.js'
import { LEVELS, type Level, levelProfile, STYLES } from '../../../sim/world/bowler/levels.js'
import { type BowlerProfile, checkProfile } from '../../../sim/world/bowler/profile.js'
import { sentenceIssue } from '../text/problems.js'
import { halfFrom, identifier, line, listOf, oneOf, table } from './fields.js'
import { ownBowlerFields, ownProfileFromData } from './own-bowler.js'

const hand = oneOf('right', 'left')
const style = oneOf(...STYLES)

/** Averages are levels too, and YAML reads them as numbers. */
const LEVEL_NUMBERS = LEVELS.map(Number).filter(Number.isFinite)
const level = z.literal([...LEVELS, ...LEVEL_NUMBERS], { error: () => `one of ${LEVELS.join(', ')}` })

/** A bowler as most of a level and style are. */
export const typicalBowler = table({ level, hand, style: style.default('tweener') }, 'a bowler')

const ownBowler = ownBowlerFields.superRefine((own, context) => {
  for (const sentence of checkProfile(ownProfileFromData(own))) context.addIssue(sentenceIssue([], sentence))
})

const ALLOWED_BOWLER =
  'a bowler with level, hand and perhaps style; or with level own and figures, as dryboard scenario new --own-bowler prints'

/** The player's bowler: a typical one of a level, or own figures. */
export const bowler = z.discriminatedUnion('level', [typicalBowler, ownBowler], {
  error: (issue) => (issue.code === 'invalid_union' ? `one of ${[...LEVELS, 'own'].join(', ')}` : ALLOWED_BOWLER),
})

const fieldBowler = table(
  {
    name: line(40),
    hand,
    style: style.default('tweener'),
    level,
    ball: identifier(),
    feet: halfFrom(FEET_BOARDS[0], FEET_BOARDS[1], "boards from the bowler's own side"),
    target: halfFrom(TARGET_BOARDS[0], TARGET_BOARDS[1], "boards from the bowler's own side"),
  },
  'another bowler',
)

export const fieldBowlers = listOf(fieldBowler, 0, 5, 'bowlers')

export type FieldBowlerData = z.output<typeof fieldBowler>

export function bowlerFromData(data: z.output<typeof bowler>): BowlerProfile {
  if (data.level === 'own') return ownProfileFromData(data)
  return levelProfile(String(data.level) as Level, data.style, data.hand)
}

/** A bowler of the field; the place in the list keeps two of one name apart. */
export function fieldProfileFromData(data: FieldBowlerData, place: number): BowlerProfile {
  const profile = levelProfile(String(data.level) as Level, data.style, data.hand)
  return { ...profile, id: `field-${place + 1}`, name: data.name }
}
