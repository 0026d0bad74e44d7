import type { Skill } from '../../../sim/analysis/debrief/findings/skills.js'

/** Below so many pins a game nothing is worth a drill of its own. */
const LEAST_PINS = 0.3

interface SkillCost {
  readonly skill: Skill
  readonly mean: number
}

interface SkillFinding {
  readonly skill: Skill
  readonly record: string
  readonly pins: number
  readonly practise: string
}

export interface SuggestedDrill {
  readonly skill: Skill
  readonly pinsPerGame: number
  /** What to practise, as the dearest finding on it says. */
  readonly practise: string
  /** The drill of the library on this skill; null where there is none. */
  readonly library: string | null
  /** The record its moments can be taken from, by `dryboard drill new`. */
  readonly record: string
}

/** Drills of the library by the skill of a finding. */
const LIBRARY: Partial<Readonly<Record<Skill, string>>> = {
  ball: 'library:ball',
  line: 'library:line',
  'timing of moves': 'library:timing',
  'size of moves': 'library:move-size',
  'throw or lane': 'library:hand-or-lane',
  spares: 'library:spare',
}

/** The drill of the library on a skill; null where there is none. */
export const libraryDrillOf = (skill: Skill): string | null => LIBRARY[skill] ?? null

/** The skill that costs most, in pins a game; null where nothing costs enough for a drill of its own. */
export function dearestSkill(skills: readonly SkillCost[]): SkillCost | null {
  const [dearest] = [...skills].sort((a, b) => b.mean - a.mean)
  return dearest && dearest.mean >= LEAST_PINS ? dearest : null
}

/** The drill for what costs most; null where nothing costs enough. */
export function suggestedDrill(skills: readonly SkillCost[], findings: readonly SkillFinding[]): SuggestedDrill | null {
  const dearest = dearestSkill(skills)
  if (!dearest) return null
  const [finding] = findings.filter(({ skill }) => skill === dearest.skill).sort((a, b) => b.pins - a.pins)
  if (!finding) return null
  return {
    skill: dearest.skill,
    pinsPerGame: dearest.mean,
    practise: finding.practise,
    library: libraryDrillOf(dearest.skill),
    record: finding.record,
  }
}
