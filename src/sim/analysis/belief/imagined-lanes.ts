import { buildStepTable, EASY_STEPS } from '../../world/ball/step-table.js'
import type { Hand } from '../../world/bowler/profile.js'
import { mirrorFilm } from '../../world/lane/film.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import { type Belief, filmOf, pick } from './belief.js'

/** Lanes as they might be, equally likely, from the bowler's side as a right-hander's; likely ones come more than once. */
export type ImaginedLanes = readonly FilmInPlay[]

/**
 * Draws `count` lanes from a belief in proportion to how likely they are. Different `round`s draw afresh, so that a
 * line found on one set can be judged on another.
 */
export type LaneImaginer = (count: number, round: number) => ImaginedLanes

/** An imaginer of one lane of a belief. A lane that is drawn again is the same object again. */
export function laneImaginer(belief: Belief, lane: number, hand: Hand): LaneImaginer {
  const kept = new Map<number, FilmInPlay>()
  const inPlay = (index: number): FilmInPlay => {
    const known = kept.get(index)
    if (known) return known
    const made = imaginedLane(belief, index, lane, hand)
    kept.set(index, made)
    return made
  }
  return (count, round) => Array.from(pick(belief, count, round), inPlay)
}

/** A lane as one hypothesis of a belief has it. */
export function imaginedLane(belief: Belief, hypothesis: number, lane: number, hand: Hand): FilmInPlay {
  const own = filmOf(belief, hypothesis, lane)
  const film = hand === 'left' ? mirrorFilm(own) : own
  return { film, steps: buildStepTable(film, EASY_STEPS) }
}
