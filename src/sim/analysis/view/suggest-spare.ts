import { keptWith } from '../../kept-with.js'
import { feetToMetres } from '../../units.js'
import { buildStepTable } from '../../world/ball/step-table.js'
import type { BlockSetup, BlockState, Decision } from '../../world/block/types.js'
import type { OilPass } from '../../world/lane/oil-pass.js'
import { layPattern } from '../../world/lane/pattern.js'
import { mirrorMask } from '../../world/pins/leaves.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import { type SpareSituation, tabulatedSpareWorth } from '../shots/spare-choice.js'
import { spareShots } from '../shots/spare-search.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'

/** Oil that stands in for the hidden one, from so many boards in from either edge. */
function sheet(layers: readonly { readonly inset: number; readonly microlitresPerBoard: number }[]): FilmInPlay {
  const passes = layers.map(
    ({ inset, microlitresPerBoard }): OilPass => ({
      direction: 'forward',
      fromBoard: inset,
      toBoard: 40 - inset,
      microlitresPerBoard,
      fromMetres: 0,
      toMetres: feetToMetres(40),
      taperMetres: feetToMetres(12),
    }),
  )
  const film = layPattern({ name: 'sheet', passes })
  return { film, steps: buildStepTable(film) }
}

const EVEN_SHEET = sheet([{ inset: 2, microlitresPerBoard: 550 }])
const CROWNED_SHEET = sheet([
  { inset: 2, microlitresPerBoard: 150 },
  { inset: 10, microlitresPerBoard: 450 },
])

const habitKept = keptWith((standing: number) => standing, habitAt)

/**
 * How the bowler would shoot at what stands by habit, the lane's own oil unseen: a way that is good on an even sheet and
 * on one that is dry outside, so that a line along the gutter or a ball that turns early is no habit. Kept with the setup.
 */
export function suggestSpare({ setup, standing }: BlockState): Decision {
  return habitKept(setup, standing)
}

function habitAt(setup: BlockSetup, standing: number): Decision {
  const on = (inPlay: FilmInPlay): SpareSituation => ({
    inPlay,
    bag: dynamicsOfBag(setup.bag),
    profile: setup.bowler,
    pricing: pricingOf(setup),
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
  })
  const even = on(EVEN_SHEET)
  const best = spareShots(on(CROWNED_SHEET))
    .map((shot) => ({ ...shot, worth: shot.worth + tabulatedSpareWorth(even, shot) }))
    .reduce((most, shot) => (shot.worth > most.worth ? shot : most))
  return { ballId: setup.bag[best.ballIndex].id, aim: best.aim, release: best.release }
}
