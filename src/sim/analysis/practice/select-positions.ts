import { DECIDED_SKILLS, type DecidePosition, type Position, type ReadQuestion, type Skill } from './position.js'
import { leadOf } from './scoring.js'
import type { Found } from './walk.js'

/** How many positions of each skill are wanted. */
const WANTED: Readonly<Record<Skill, number>> = {
  line: 24,
  ball: 24,
  'move-size': 24,
  timing: 24,
  spare: 24,
  'throw-or-lane': 48,
  read: 30,
  call: 20,
}
/** Decisions taken at one moment, and questions about what was seen there. */
const MOST_DECIDED_AT_ONCE = 2
const MOST_SEEN_AT_ONCE = 2
/** Of one lane at most so many of a kind, which ask for much the same. */
const MOST_OF_A_WALK = 3
/** At most this share of a skill's decisions have the standing line for their best. */
const MOST_STANDING = 0.5

/** Units of the score by which knowing must beat not knowing: feet, millilitres, ratio, squared shares, boards. */
const LEAST_LEADS: Readonly<Record<ReadQuestion | 'call' | 'throw-or-lane', number>> = {
  shape: 0.1,
  length: 0.1,
  lengthFeet: 1,
  volumeMillilitres: 1,
  ratio: 0.5,
  call: 1,
  'throw-or-lane': 0.0225,
}

/** Whether a question has something to know: one who knows nothing answers it clearly worse. */
function isWorthKnowing(one: Position): boolean {
  if (one.kind === 'decide') return isStandingBest(one) || standingCost(one) >= LEAST_STANDING_PINS
  return leadOf(one) >= LEAST_LEADS[one.kind === 'read' ? one.question : one.kind]
}

/** Where the standing line is not the best it costs at least this, so that there is a reason to leave it. */
const LEAST_STANDING_PINS = 0.5
const standingCost = ({ answers, standing }: DecidePosition): number =>
  standing === null ? Number.POSITIVE_INFINITY : answers[standing].costPins

interface Selection {
  readonly positions: readonly Position[]
  /** Skills of which more are wanted. */
  readonly missing: readonly Skill[]
  /** Moments in a game at which a skill was to be decided, over all walks. */
  readonly perGame: Readonly<Record<string, number>>
}

/**
 * Chooses among what walks found, in order: of each moment the skills that are furthest behind, half of the decisions at least with
 * another best than the standing line. The same walks give the same choice.
 */
export function selectPositions(walks: readonly (readonly Found[])[], wanted = WANTED): Selection {
  const taken: Position[] = []
  const counts = new Map<string, number>()
  const count = (key: string): number => counts.get(key) ?? 0
  const cameUp = new Map<Skill, number>()
  const groupOf = (one: Position): string =>
    one.kind === 'throw-or-lane' ? 'share' : one.kind === 'decide' ? one.skill : one.kind
  const wantedOf = (one: Position): number =>
    one.skill === 'throw-or-lane' ? wanted[one.skill] / 2 : wanted[one.skill]
  const isOpen = (one: Position): boolean =>
    isWorthKnowing(one) &&
    count(groupOf(one)) < wantedOf(one) &&
    !(isStandingBest(one) && count(`${groupOf(one)} standing`) >= MOST_STANDING * wantedOf(one))
  const take = (one: Position): void => {
    taken.push(one)
    counts.set(groupOf(one), count(groupOf(one)) + 1)
    if (isStandingBest(one)) counts.set(`${groupOf(one)} standing`, count(`${groupOf(one)} standing`) + 1)
  }
  const behind = (a: Position, b: Position): number => count(groupOf(a)) / wantedOf(a) - count(groupOf(b)) / wantedOf(b)
  for (const walk of walks) {
    const before = new Map(counts)
    const isVaried = (one: Position): boolean => count(groupOf(one)) - (before.get(groupOf(one)) ?? 0) < MOST_OF_A_WALK
    for (const { positions } of walk) {
      for (const skill of new Set(positions.map((one) => one.skill))) cameUp.set(skill, (cameUp.get(skill) ?? 0) + 1)
      const open = positions.filter((one) => isOpen(one) && isVaried(one))
      for (const one of open
        .filter(({ kind }) => kind === 'decide')
        .sort(behind)
        .slice(0, MOST_DECIDED_AT_ONCE))
        take(one)
      for (const one of open
        .filter(({ kind }) => kind !== 'decide')
        .sort(behind)
        .slice(0, MOST_SEEN_AT_ONCE))
        take(one)
    }
  }
  const groups = [...DECIDED_SKILLS, 'share', 'read', 'call'] as const
  const missing = groups.filter((group) => {
    const skill: Skill = group === 'share' ? 'throw-or-lane' : group
    return count(group) < (skill === 'throw-or-lane' ? wanted[skill] / 2 : wanted[skill])
  })
  return {
    positions: taken,
    missing: missing.map((group) => (group === 'share' ? 'throw-or-lane' : group)),
    perGame: Object.fromEntries(
      [...cameUp].map(([skill, times]) => [skill, Math.round((100 * times) / walks.length) / 100]),
    ),
  }
}

/** Whether the answer that changes nothing costs nothing. */
export const isStandingBest = (one: Position): boolean =>
  one.kind === 'decide' && one.standing !== null && one.answers[one.standing].costPins === 0
