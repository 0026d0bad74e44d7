import { buildStepTable } from '../../world/ball/step-table.js'
import type { BlockSetup, BlockState, Decision, Spot } from '../../world/block/types.js'
import { mirrorFilm } from '../../world/lane/film.js'
import type { LaneState } from '../../world/lane/wear.js'
import { mirrorMask } from '../../world/pins/leaves.js'
import { type LineSearch, type PricedLine, searchLines } from '../shots/best-line.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import type { PricedSpare, SpareSituation } from '../shots/spare-choice.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'

const searches = new WeakMap<LaneState, { readonly setup: BlockSetup; readonly search: LineSearch }>()

/** A lane as the block's bowler sees it: mirrored for a left-hander, so that everything further in is right-handed. */
export function laneInPlay(setup: BlockSetup, lane: LaneState): FilmInPlay {
  const film = setup.bowler.hand === 'left' ? mirrorFilm(lane.film) : lane.film
  return { film, steps: buildStepTable(film) }
}

/** All first-ball lines on a lane with its oil in sight; worked out once a lane state. */
export function knownSearch(setup: BlockSetup, lane: LaneState): LineSearch {
  const kept = searches.get(lane)
  if (kept && kept.setup === setup) return kept.search
  const { film } = laneInPlay(setup, lane)
  const search = searchLines(film, dynamicsOfBag(setup.bag), setup.bowler, pricingOf(setup))
  searches.set(lane, { setup, search })
  return search
}

export function decisionOf(setup: BlockSetup, shot: PricedLine | PricedSpare): Decision {
  return { ballId: setup.bag[shot.ballIndex].id, aim: shot.aim, release: 'release' in shot ? shot.release : 'strike' }
}

/** What the coming spare attempt has to work with. */
export function spareSituationOf(state: BlockState): SpareSituation {
  const { setup, standing } = state
  return {
    inPlay: laneInPlay(setup, state.lanes[spotOf(state).lane]),
    bag: dynamicsOfBag(setup.bag),
    profile: setup.bowler,
    pricing: pricingOf(setup),
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
  }
}

export function spotOf(state: BlockState): Spot {
  if (!state.spot) throw new RangeError('The block is over; there is nothing left to decide.')
  return state.spot
}
