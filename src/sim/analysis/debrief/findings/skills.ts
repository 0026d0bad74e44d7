import type { TagKind } from './tag.js'

/** What a choice takes, as a coach would divide it. */
export const SKILLS = [
  'ball',
  'line',
  'speed',
  'timing of moves',
  'size of moves',
  'direction of moves',
  'throw or lane',
  'probing',
  'spares',
] as const
export type Skill = (typeof SKILLS)[number]

/** The skill that each kind of finding is about. */
export const SKILL_OF: Readonly<Record<TagKind, Skill>> = {
  'wrong-ball': 'ball',
  'wrong-target': 'line',
  'wrong-feet': 'line',
  'wrong-line': 'line',
  'wrong-speed': 'speed',
  'moved-too-late': 'timing of moves',
  'moved-too-early': 'timing of moves',
  'move-too-small': 'size of moves',
  'move-too-far': 'size of moves',
  'moved-the-wrong-way': 'direction of moves',
  'blamed-the-lane': 'throw or lane',
  'missed-a-change': 'throw or lane',
  'skipped-a-probe': 'probing',
  'spare-ball': 'spares',
  'spare-line': 'spares',
}
