import { nextRung, type Rung } from './ladder.js'
import { type Family, type Kind, type Position, SKILLS, type Skill } from './position.js'
import { type AnsweredLoss, type SkillEstimate, type SkillNorms, skillProfile } from './profile.js'
import { FIRST_RATINGS, type Ratings, rated } from './rating.js'
import { familyKey } from './schedule.js'
import { blindPinsOf } from './scoring.js'

/** In practice answers are told at once, in a test not; a shown position is a solved example that nobody answered. */
type AnswerMode = 'practice' | 'test' | 'shown'

/** One position as it was answered. */
export interface Answered extends AnsweredLoss {
  readonly id: string
  readonly kind: Kind
  readonly family: Family
  readonly mode: AnswerMode
  readonly difficulty: number
  readonly isSound: boolean
  /** How sure the player said to be, 0 to 1; null where it was not asked. */
  readonly sureShare: number | null
  /** Day it was answered, counted from any fixed day. */
  readonly day: number
}

/** What a player's answers so far come to. */
export interface Learner {
  readonly answers: readonly Answered[]
  readonly ratings: Ratings
  readonly rungs: ReadonlyMap<string, Rung>
  /** How often each family was met. */
  readonly met: ReadonlyMap<string, number>
}

export const NEW_LEARNER: Learner = { answers: [], ratings: FIRST_RATINGS, rungs: new Map(), met: new Map() }

/** The learner after one more position. */
export function learned(learner: Learner, answered: Answered): Learner {
  const key = familyKey(answered)
  const met = new Map(learner.met).set(key, (learner.met.get(key) ?? 0) + 1)
  if (answered.mode === 'shown') return { ...learner, met, answers: [...learner.answers, answered] }
  const rung = nextRung(learner.rungs.get(key) ?? null, answered.day, answered.isSound)
  return {
    answers: [...learner.answers, answered],
    ratings: rated(learner.ratings, answered.skill, answered.difficulty, answered.isSound),
    rungs: new Map(learner.rungs).set(key, rung),
    met,
  }
}

export const learnerFrom = (answers: readonly Answered[]): Learner => answers.reduce(learned, NEW_LEARNER)

/** So many of the latest answers say how a player stands now. */
const LATEST = 240

/** What each skill costs a player, dearest first. */
export function profileOf({ answers }: Pick<Learner, 'answers'>, norms: SkillNorms): SkillEstimate[] {
  return skillProfile(answers.filter(({ mode }) => mode !== 'shown').slice(-LATEST), norms)
}

/** Days before a position that was asked may come again. */
const REST_DAYS = 21

/** Positions asked lately. */
export const seenLately = ({ answers }: Learner, day: number): Set<string> =>
  new Set(answers.filter((one) => day - one.day < REST_DAYS).map(({ id }) => id))

/** Norms of a store of positions. @param perGame how often a position of each skill comes up in a game */
export function normsOf(store: readonly Position[], perGame: Readonly<Record<string, number>>): SkillNorms {
  return Object.fromEntries(
    SKILLS.map((skill: Skill) => {
      const own = store.filter((one) => one.skill === skill)
      const sum = own.reduce((all, one) => all + blindPinsOf(one), 0)
      return [skill, { blindPins: own.length > 0 ? sum / own.length : 1, perGame: perGame[skill] ?? 1 }]
    }),
  ) as unknown as SkillNorms
}

/** Confidence by how sure one was: what was said, and how often it held. */
export interface Calibration {
  readonly sureShare: number
  readonly answers: number
  readonly soundShare: number
}

/** Fewer answers than this make no curve. */
const LEAST_CALIBRATED = 50

/** The reliability curve; null before there are enough answers. */
export function calibrationOf(answers: readonly Answered[]): Calibration[] | null {
  const said = answers.filter((one) => one.sureShare !== null)
  if (said.length < LEAST_CALIBRATED) return null
  const levels = [...new Set(said.map(({ sureShare }) => sureShare as number))].sort((a, b) => a - b)
  return levels.map((sureShare) => {
    const own = said.filter((one) => one.sureShare === sureShare)
    return { sureShare, answers: own.length, soundShare: own.filter(({ isSound }) => isSound).length / own.length }
  })
}
