import { buildStepTable } from '../ball/step-table.js'
import type { BlockState, Decision } from '../block/types.js'
import { layPattern } from '../lane/pattern.js'
import { mirrorMask } from '../pins/leaves.js'
import { feetToMetres } from '../units.js'
import { dynamicsOfBag, pricingOf } from './bowler-pricing.js'
import type { FilmInPlay } from './direct-worth.js'
import { searchSpare } from './spare-search.js'

/** An even sheet of oil that stands in for the hidden one: a straight spare ball hardly tells them apart. */
const EVEN_SHEET: FilmInPlay = (() => {
  const film = layPattern({
    name: 'even sheet',
    passes: [
      {
        direction: 'forward',
        fromBoard: 2,
        toBoard: 38,
        microlitresPerBoard: 550,
        fromMetres: 0,
        toMetres: feetToMetres(40),
        taperMetres: feetToMetres(12),
      },
    ],
  })
  return { film, steps: buildStepTable(film) }
})()

/** How the bowler would shoot at what stands by habit, the lane's own oil unseen. */
export function suggestSpare(state: BlockState): Decision {
  const { setup, standing } = state
  const shot = searchSpare({
    inPlay: EVEN_SHEET,
    bag: dynamicsOfBag(setup.bag),
    profile: setup.bowler,
    pricing: pricingOf(setup),
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
  })
  return { ballId: setup.bag[shot.ballIndex].id, aim: shot.aim, release: shot.release }
}
