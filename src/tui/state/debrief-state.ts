import type { Command } from '../keys.js'
import { type PlayState, pinsGiven } from './play-state.js'

/** Looking back at a block: which throw, and whether its oil or the change of the oil since the start is shown. */
export interface DebriefState {
  readonly chosen: number
  readonly shows: 'oil' | 'wear'
  /** Stepping through the throws by itself. */
  readonly running: boolean
}

/** What a grade must exceed for a throw to be worth jumping to. */
const COSTLY_PINS = 0.5

export const debriefOf = (play: PlayState): DebriefState => ({
  chosen: Math.max(0, mostCostly(play)),
  shows: 'oil',
  running: false,
})

export function reduceDebrief(debrief: DebriefState, command: Command, play: PlayState): DebriefState {
  const count = play.grades.length
  const still = { ...debrief, running: false }
  switch (command) {
    case 'left':
      return { ...still, chosen: Math.max(0, debrief.chosen - 1) }
    case 'right':
      return { ...still, chosen: Math.min(count - 1, debrief.chosen + 1) }
    case 'costly':
      return { ...still, chosen: nextCostly(play, debrief.chosen) }
    case 'wear':
      return { ...still, shows: debrief.shows === 'oil' ? 'wear' : 'oil' }
    case 'run':
      if (debrief.running) return still
      return { ...debrief, running: true, chosen: debrief.chosen >= count - 1 ? 0 : debrief.chosen }
    default:
      return debrief
  }
}

/** The next throw of a running replay; the replay stops at the last one. */
export function runOn(debrief: DebriefState, count: number): DebriefState {
  const chosen = Math.min(count - 1, debrief.chosen + 1)
  return { ...debrief, chosen, running: chosen < count - 1 }
}

const givenAway = (play: PlayState, index: number): number => pinsGiven(play.grades[index])

function mostCostly(play: PlayState): number {
  return play.grades.reduce((most, _, index) => (givenAway(play, index) > givenAway(play, most) ? index : most), 0)
}

function nextCostly(play: PlayState, from: number): number {
  const count = play.grades.length
  for (let ahead = 1; ahead <= count; ahead++) {
    const index = (from + ahead) % count
    if (givenAway(play, index) >= COSTLY_PINS) return index
  }
  return from
}
