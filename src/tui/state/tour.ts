import type { PlayState } from './play-state.js'

/** The lanes of the guided first frame: a posted sheet and a forgiving oil. */
export const TOUR_SCENARIO = 'house-forty'
export const TOUR_SEED = 'first-frame'

interface TourStep {
  readonly says: readonly [string, string]
  /** What the player has to have done for the guide to go on. */
  readonly isDone: (play: PlayState) => boolean
}

const ball = (play: PlayState) => play.grades.length

/** A guide through one frame, a step a thing done; each step says two lines. */
const TOUR: readonly TourStep[] = [
  {
    says: [
      'The lane from above: you stand left, the pins are right. Its oil is hidden.',
      'Feet are in hand: up and down move them a board; right goes on to the target.',
    ],
    isDone: (play) => play.undo.length > 0 || play.field !== 'feet',
  },
  {
    says: [
      'The dotted line is how the ball starts out; the target is on it, at 15 feet.',
      '[ and ] move both, 2 and 1; b opens the bag; u undoes. Enter throws.',
    ],
    isDone: (play) => play.stage.kind !== 'deciding' || ball(play) > 0,
  },
  {
    says: [
      'What the choice gave away is told first: results say little about choices.',
      'It is held against the best by what had been shown. Now the ball.',
    ],
    isDone: (play) => ball(play) > 0,
  },
  {
    says: [
      'The path is drawn from what you saw, not the truth. Was it hand or lane?',
      'That is the skill. Decide and throw again, until the frame is done.',
    ],
    isDone: (play) => play.stage.kind === 'done',
  },
  {
    says: [
      'That was a frame. Enter lifts the oil and prices every choice.',
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

/** What the guide says now. */
export const tourLines = (step: number): readonly [string, string] => TOUR[step]!.says

/** The tour ends with its first frame, however the block would go on. */
export function isTourOver(play: PlayState): boolean {
  const spot = play.states.at(-1)!.spot
  return play.tour !== null && (spot === null || spot.frame > 1 || spot.game > 1)
}
