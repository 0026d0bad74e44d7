import { isSame } from '../../sim/analysis/debrief/ledger/throw-worths.js'
import type { Decision } from '../../sim/world/block/types.js'
import type { PlayState, ThrowGrade } from './play-state.js'

/** The lanes of the guided first frame: a posted sheet and a forgiving oil. */
export const TOUR_SCENARIO = 'house-forty'
export const TOUR_SEED = 'first-frame'

interface TourStep {
  readonly says: readonly [string, string]
  /** What the player has to have done for the guide to go on. */
  readonly isDone: (play: PlayState) => boolean
}

const ball = (play: PlayState) => play.grades.length
const isThrown = (play: PlayState): boolean => play.stage.kind !== 'deciding' || ball(play) > 0

/** A guide through one frame, a step a thing done; each step says two lines. */
const TOUR: readonly TourStep[] = [
  {
    says: [
      'Welcome. You choose, your bowler throws, and misses as people do.',
      'You stand left, the pins are right, the oil is hidden. Up, down: your slide.',
    ],
    isDone: (play) => play.undo.length > 0 || play.field !== 'feet' || isThrown(play),
  },
  {
    says: [
      'The dotted line is how the ball starts out; the mark on it is your target.',
      'Left, right: the next field. [ and ] move 2 and 1; u undoes. Enter throws.',
    ],
    isDone: isThrown,
  },
  {
    says: [
      'First what the choice cost, before the pins can flatter it: it is held',
      'against the best from what you had seen.',
    ],
    isDone: (play) => ball(play) > 0,
  },
  {
    says: [
      'The path is what you saw, not the truth. A bad ball: you or the lane?',
      'Finding that out is the game. Pins left? A spare line is set; Enter throws.',
    ],
    isDone: (play) => play.stage.kind === 'done',
  },
  {
    says: [
      'That was a frame. Enter shows the oil and prices every choice.',
      'Esc goes home, to blocks of your own; ? names the keys anywhere.',
    ],
    isDone: () => false,
  },
]

/** The tour as far as what was done has brought it. */
export function tourOn(play: PlayState): PlayState {
  if (play.tour === null) return play
  let tour = play.tour
  while (tour < TOUR.length - 1 && TOUR[tour]!.isDone(play)) tour++
  return tour === play.tour ? play : { ...play, tour }
}

/** A grade of the guided frame: whoever throws what the guide set up is charged nothing for it. @param offered null in a block of one's own */
export function guided(grade: ThrowGrade, offered: Decision | null, decision: Decision): ThrowGrade {
  if (!grade || grade.kind === 'practice' || !offered || !isSame(offered, decision)) return grade
  return { ...grade, best: decision, bestWorth: grade.choiceWorth, lostPins: 0, givenAwayPins: 0 }
}

/** What the guide says now. */
export const tourLines = (step: number): readonly [string, string] => TOUR[step]!.says

/** The tour ends with its first frame, however the block would go on. */
export function isTourOver(play: PlayState): boolean {
  const spot = play.states.at(-1)!.spot
  return play.tour !== null && (spot === null || spot.frame > 1 || spot.game > 1)
}
