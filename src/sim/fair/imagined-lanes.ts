import { buildStepTable } from '../ball/step-table.js'
import { type Belief, filmOf, pick } from '../belief/belief.js'
import type { BlockSetup } from '../block/types.js'
import type { FilmInPlay } from '../decision/direct-worth.js'
import { mirrorFilm } from '../lane/film.js'

/** Lanes as they might be, equally likely, from the bowler's side as a right-hander's. */
export type ImaginedLanes = readonly FilmInPlay[]

/**
 * `count` lanes drawn from a belief in proportion to how likely they are. Different `round`s draw afresh, so that a
 * line found on one set can be judged on another.
 */
export function imagineLanes(
  setup: BlockSetup,
  belief: Belief,
  lane: number,
  count: number,
  round: number,
): ImaginedLanes {
  const kept = new Map<number, FilmInPlay>()
  return Array.from(pick(belief, count, round), (index) => {
    const known = kept.get(index)
    if (known) return known
    const own = filmOf(belief, index, lane)
    const film = setup.bowler.hand === 'left' ? mirrorFilm(own) : own
    const inPlay = { film, steps: buildStepTable(film) }
    kept.set(index, inPlay)
    return inPlay
  })
}
