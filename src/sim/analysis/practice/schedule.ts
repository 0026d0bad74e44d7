import type { RandomSource } from '../../random.js'
import { isDue, type Rung } from './ladder.js'
import { type Position, SKILLS, type Skill } from './position.js'
import type { SkillEstimate } from './profile.js'
import { difficultyOf, type Ratings, soundChance } from './rating.js'
import { idealAnswerOf } from './scoring.js'
import { isStandingBest } from './select-positions.js'

/** Sound answers aimed at (75 to 85 % is recommended for learning; Wilson and others 2019 for the theory). */
const AIMED_SHARE = 0.8
/** This part of practice goes evenly over all skills, the rest by the square of what they cost. */
const EVEN_PART = 0.2
/** How many of those nearest to the aim are drawn among. */
const NEAREST = 6
/** A lane that was looked at is left alone for so many positions, for each tells of it. */
const LANE_RESTS = 5

/** How large a part of practice each skill gets. */
export function skillShares(profile: readonly SkillEstimate[]): ReadonlyMap<Skill, number> {
  const squares = profile.map(({ pinsAGame }) => pinsAGame * pinsAGame)
  const all = squares.reduce((sum, one) => sum + one, 0)
  return new Map(
    profile.map(({ skill }, i) => [
      skill,
      EVEN_PART / SKILLS.length + (1 - EVEN_PART) * (all > 0 ? squares[i] / all : 1 / SKILLS.length),
    ]),
  )
}

export const familyKey = ({ family }: Pick<Position, 'family'>): string => `${family.length} ${family.shape}`

/** What an ideal answer is, in so few words that two alike would be noticed: never the same twice running. */
export function answerKey(position: Position): string {
  switch (position.kind) {
    case 'decide': {
      if (isStandingBest(position)) return 'stay'
      const ideal = idealAnswerOf(position)
      return ideal.kind === 'choice' ? `${position.skill} ${ideal.place}` : ''
    }
    case 'read':
      return `${position.question} ${position.ideal.indexOf(Math.max(...position.ideal))}`
    case 'call':
      return `call ${Math.round(position.ideal[Math.floor(position.ideal.length / 2)])}`
    case 'throw-or-lane':
      return `share ${Math.round(4 * position.ideal)}`
  }
}

/** What the next position is chosen by. */
interface Chooser {
  readonly profile: readonly SkillEstimate[]
  readonly ratings: Ratings
  /** Ids that were asked before and are not to come again yet. */
  readonly seen: ReadonlySet<string>
  /** The positions asked last in this sitting, the latest last. */
  readonly asked: readonly Position[]
  /** Where families stand on the ladder, by their key. */
  readonly rungs: ReadonlyMap<string, Rung>
  readonly day: number
  /** Whether changing nothing was best at the last position of each skill. */
  readonly stoodBest: ReadonlyMap<Skill, boolean>
  /** Only of these skills, or families; all where left out. */
  readonly skills?: ReadonlySet<Skill>
  readonly families?: ReadonlySet<string>
}

/**
 * The next position: a skill drawn by its share, then among its positions those of a family that is due first, then those whose chance of a sound
 * answer is nearest to the aim. Neither family nor answer comes twice running where there is another; and within a skill those where
 * changing nothing is best come by turns with the others, or a habit of staying would look like skill.
 *
 * @returns null where there is none left
 */
export function nextPosition(store: readonly Position[], chooser: Chooser, draw: RandomSource): Position | null {
  const { asked, seen, skills, families } = chooser
  const last = asked.at(-1)
  const open = store.filter(
    (one) =>
      !seen.has(one.id) &&
      !asked.some(({ id, moment }) => id === one.id || moment === one.moment) &&
      (skills?.has(one.skill) ?? true),
  )
  const rested = asked.slice(-LANE_RESTS).map(({ moment }) => moment.seed)
  const isFresh = (one: Position): boolean => !rested.includes(one.moment.seed)
  const isOther = (one: Position): boolean => !last || answerKey(one) !== answerKey(last)
  const isOtherFamily = (one: Position): boolean => !last || familyKey(one) !== familyKey(last)
  const isPlanned = (one: Position): boolean => families?.has(familyKey(one)) ?? true
  // What matters most gives way last.
  const candidates = firstNotEmpty([
    open.filter((one) => isOther(one) && isOtherFamily(one) && isPlanned(one) && isFresh(one)),
    open.filter((one) => isOther(one) && isOtherFamily(one) && isPlanned(one)),
    open.filter((one) => isOther(one) && isOtherFamily(one) && isFresh(one)),
    open.filter((one) => isOther(one) && isFresh(one)),
    open.filter(isOther),
    open,
  ])
  const skill = drawnSkill(candidates, chooser, draw)
  const stoodBest = skill === null ? undefined : chooser.stoodBest.get(skill)
  const ofSkill = firstNotEmpty([
    candidates.filter((one) => one.skill === skill && isStandingBest(one) !== stoodBest),
    candidates.filter((one) => one.skill === skill),
  ])
  if (ofSkill.length === 0) return null
  const { rungs, day, ratings } = chooser
  const isOwed = (one: Position): boolean => {
    const rung = rungs.get(familyKey(one))
    return rung !== undefined && isDue(rung, day)
  }
  const owed = ofSkill.filter(isOwed)
  const off = (one: Position): number =>
    Math.abs(soundChance(ratings[one.skill].rating, difficultyOf(one)) - AIMED_SHARE)
  const nearest = (owed.length > 0 ? owed : ofSkill)
    .map((one) => ({ one, off: off(one) }))
    .sort((a, b) => a.off - b.off)
    .slice(0, NEAREST)
  return nearest[Math.floor(draw() * nearest.length)].one
}

/** Whether changing nothing was best at the last position of each skill that was answered. */
export function stoodBestLast(
  answers: readonly { readonly id: string }[],
  store: readonly Position[],
): ReadonlyMap<Skill, boolean> {
  const known = new Map(store.map((one) => [one.id, one]))
  return new Map(
    answers.flatMap(({ id }) => {
      const position = known.get(id)
      return position ? [[position.skill, isStandingBest(position)] as const] : []
    }),
  )
}

const firstNotEmpty = <Item>(lists: readonly (readonly Item[])[]): readonly Item[] =>
  lists.find((list) => list.length > 0) ?? []

function drawnSkill(candidates: readonly Position[], { profile }: Chooser, draw: RandomSource): Skill | null {
  const shares = skillShares(profile)
  const present = SKILLS.filter((skill) => candidates.some((one) => one.skill === skill))
  const all = present.reduce((sum, skill) => sum + (shares.get(skill) ?? 0), 0)
  let mark = draw() * all
  for (const skill of present) {
    mark -= shares.get(skill) ?? 0
    if (mark <= 0) return skill
  }
  return present.at(-1) ?? null
}
