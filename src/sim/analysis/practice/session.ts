import type { RandomSource } from '../../random.js'
import { isDue } from './ladder.js'
import { type Answered, type Learner, learned, normsOf, profileOf, seenLately } from './learner.js'
import { type Answer, DECIDED_SKILLS, type Kind, type Position, type Skill } from './position.js'
import type { SkillNorms } from './profile.js'
import { difficultyOf } from './rating.js'
import { familyKey, nextPosition, stoodBestLast } from './schedule.js'
import { lossOf, type PracticeLoss } from './scoring.js'

export const SESSION_MINUTES = [5, 10, 20] as const
export type SessionMinutes = (typeof SESSION_MINUTES)[number]

interface Length {
  readonly practice: number
  readonly test: number
}

/** Positions of a session, at about forty seconds each, and how many of them are the test at its end. */
const LENGTHS: Readonly<Record<SessionMinutes, Length>> = {
  5: { practice: 6, test: 2 },
  10: { practice: 11, test: 4 },
  20: { practice: 18, test: 10 },
}
/** Twelve minutes of positions, and then a short block in place of a test by positions. */
const BEFORE_SHORT_BLOCK: Length = { practice: 18, test: 0 }

/** Whether a session asked for so ends with a short block: one of twelve minutes of every kind of position. */
export const endsInShortBlock = ({ minutes, kinds }: Pick<SessionPlan, 'minutes' | 'kinds'>): boolean =>
  minutes === 20 && kinds === null

/** What a session is going to be. */
export interface SessionPlan {
  readonly minutes: SessionMinutes
  /** Two look-alike families, and those that come back today. */
  readonly families: readonly string[]
  readonly comeBack: readonly string[]
  readonly practice: number
  readonly test: number
  readonly kinds: readonly Kind[] | null
  /** Whether it ends with a short block, without grades and on fresh oil of its families. */
  readonly hasShortBlock: boolean
}

/** How much is told before an answer: everything, a hint, or nothing. */
export type Support = 'worked' | 'hint' | 'none'

/** A session as it stands; new ones are made from it, it never changes. */
export interface Session {
  readonly plan: SessionPlan
  readonly store: readonly Position[]
  readonly norms: SkillNorms
  readonly before: Learner
  readonly learner: Learner
  readonly day: number
  /** Positions drawn so far, the one on the screen and those ahead of it among them. */
  readonly drawn: readonly Position[]
  readonly answered: readonly Answered[]
}

const LOOK_BACKS = 2

/** Plans a session: two families that are alike in length or shape, to be told apart, and up to two that are due. */
function planOf(
  store: readonly Position[],
  learner: Learner,
  day: number,
  wanted: { readonly minutes: SessionMinutes; readonly kinds: readonly Kind[] | null },
  draw: RandomSource,
): SessionPlan {
  const counts = new Map<string, number>()
  for (const one of store) counts.set(familyKey(one), (counts.get(familyKey(one)) ?? 0) + 1)
  const hasShortBlock = endsInShortBlock(wanted)
  const { practice, test } = hasShortBlock ? BEFORE_SHORT_BLOCK : LENGTHS[wanted.minutes]
  const comeBack = [...learner.rungs]
    .filter(([key, rung]) => counts.has(key) && isDue(rung, day))
    .sort(([, a], [, b]) => a.dueDay - b.dueDay)
    .slice(0, LOOK_BACKS)
    .map(([key]) => key)
  const fresh = [...counts.keys()].filter((key) => !comeBack.includes(key))
  // The larger the stock of a family, the likelier it is drawn.
  const all = fresh.reduce((sum, key) => sum + (counts.get(key) ?? 0), 0)
  const mark = draw() * all
  let passed = 0
  const first = fresh.find((key) => {
    passed += counts.get(key) ?? 0
    return passed >= mark
  })
  const isAlike = (key: string): boolean => {
    const [length, shape] = (first ?? '').split(' ')
    return key !== first && key.split(' ').some((word) => word === length || word === shape)
  }
  const second = fresh.filter(isAlike).sort((a, b) => (counts.get(b) ?? 0) - (counts.get(a) ?? 0))[0]
  const families = [first, second].filter((key): key is string => key !== undefined)
  return { ...wanted, families, comeBack, practice, test, hasShortBlock }
}

/** A session before its first position. @param perGame how often a position of each skill comes up in a game */
export function beginPractice(
  { store, perGame }: { readonly store: readonly Position[]; readonly perGame: Readonly<Record<string, number>> },
  learner: Learner,
  day: number,
  wanted: { readonly minutes: SessionMinutes; readonly kinds: readonly Kind[] | null },
  draw: RandomSource,
): Session {
  const asked = wanted.kinds ? store.filter(({ kind }) => wanted.kinds?.includes(kind)) : store
  return {
    plan: planOf(asked, learner, day, wanted, draw),
    store: asked,
    norms: normsOf(store, perGame),
    before: learner,
    learner,
    day,
    drawn: [],
    answered: [],
  }
}

export const sessionLength = ({ practice, test }: SessionPlan): number => practice + test

/** Whether the position drawn at a place of the session belongs to the test. */
export const isTest = ({ practice }: SessionPlan, place: number): boolean => place >= practice

const TESTED: ReadonlySet<Skill> = new Set(DECIDED_SKILLS)

/** Draws one more position. Null where the session is full, or nothing is left. */
export function drawnOn(
  session: Session,
  draw: RandomSource,
): { readonly session: Session; readonly position: Position } | null {
  const { plan, store, norms, learner, day, drawn, answered } = session
  if (drawn.length >= sessionLength(plan)) return null
  const isTested = isTest(plan, drawn.length)
  const hasDecisions = store.some(({ skill }) => TESTED.has(skill))
  // What is tested lies on lanes that were not practised on.
  const seeds = new Set(drawn.slice(0, plan.practice).map(({ moment }) => moment.seed))
  const elsewhere = isTested ? store.filter(({ moment }) => !seeds.has(moment.seed)) : store
  const position = nextPosition(
    elsewhere.length > 0 ? elsewhere : store,
    {
      profile: profileOf(learner, norms),
      ratings: learner.ratings,
      seen: seenLately(learner, day),
      asked: drawn,
      rungs: learner.rungs,
      day,
      stoodBest: stoodBestLast([...learner.answers, ...drawn.slice(answered.length)], store),
      families: new Set([...plan.families, ...(isTested ? [] : plan.comeBack)]),
      ...(isTested && hasDecisions ? { skills: TESTED } : {}),
    },
    draw,
  )
  return position && { position, session: { ...session, drawn: [...drawn, position] } }
}

/** How much is told before a position is answered: the first of a new family is solved, the second has a hint, in a test nothing. */
export function supportFor({ plan, learner, answered }: Session, position: Position): Support {
  if (isTest(plan, answered.length)) return 'none'
  const met = learner.met.get(familyKey(position)) ?? 0
  return met === 0 ? 'worked' : met === 1 ? 'hint' : 'none'
}

/** The session after an answer, or after a solved example (no answer). */
export function answeredOn(
  session: Session,
  position: Position,
  said: { readonly answer: Answer; readonly sureShare: number | null } | null,
): { readonly session: Session; readonly answered: Answered; readonly loss: PracticeLoss } {
  const { plan, day, learner } = session
  const { id, kind, skill, family } = position
  const loss = said ? lossOf(position, said.answer) : { pins: 0, blindPins: 0, isSound: true }
  const answered: Answered = {
    id,
    kind,
    skill,
    family,
    mode: said === null ? 'shown' : isTest(plan, session.answered.length) ? 'test' : 'practice',
    ...loss,
    difficulty: difficultyOf(position),
    sureShare: said?.sureShare ?? null,
    day,
  }
  return {
    session: { ...session, learner: learned(learner, answered), answered: [...session.answered, answered] },
    answered,
    loss,
  }
}

/** A session at its end: what moved, what costs most, what comes back when. */
export interface SessionEnd {
  /** The skill whose estimate went down most, with pins a game before and now; null where none of at least a few answers did. */
  readonly moved: { readonly skill: Skill; readonly from: number; readonly to: number; readonly sure: boolean } | null
  readonly dearest: {
    readonly skill: Skill
    readonly pinsAGame: number
    readonly low: number
    readonly high: number
  } | null
  /** Family and in how many days. */
  readonly back: { readonly family: string; readonly days: number } | null
  readonly test: { readonly positions: number; readonly pins: number; readonly sound: number } | null
}

export function endOf({ before, learner, norms, answered, day }: Session): SessionEnd {
  const was = new Map(profileOf(before, norms).map((one) => [one.skill, one]))
  const now = profileOf(learner, norms)
  const practised = new Set(answered.filter(({ mode }) => mode !== 'shown').map(({ skill }) => skill))
  const moves = now
    .filter(({ skill }) => practised.has(skill) && (was.get(skill)?.answers ?? 0) > 0)
    .map((one) => ({
      skill: one.skill,
      from: was.get(one.skill)?.pinsAGame ?? 0,
      to: one.pinsAGame,
      sure: (was.get(one.skill)?.lowAGame ?? 0) > one.highAGame || one.lowAGame > (was.get(one.skill)?.highAGame ?? 0),
    }))
    .sort((a, b) => Math.abs(b.from - b.to) - Math.abs(a.from - a.to))
  const dearest = now.find(({ answers }) => answers > 0)
  const families = new Set(answered.map(familyKey))
  const back = [...learner.rungs]
    .filter(([key]) => families.has(key))
    .map(([family, { dueDay }]) => ({ family, days: dueDay - day }))
    .sort((a, b) => a.days - b.days)[0]
  const test = answered.filter(({ mode }) => mode === 'test')
  return {
    moved: moves[0] ?? null,
    dearest: dearest
      ? { skill: dearest.skill, pinsAGame: dearest.pinsAGame, low: dearest.lowAGame, high: dearest.highAGame }
      : null,
    back: back ?? null,
    test:
      test.length > 0
        ? {
            positions: test.length,
            pins: test.reduce((sum, { pins }) => sum + pins, 0),
            sound: test.filter(({ isSound }) => isSound).length,
          }
        : null,
  }
}
