import { keptWith } from '../../kept-with.js'
import { feetToMetres } from '../../units.js'
import { strengthOf } from '../../world/ball/specification.js'
import { buildStepTable } from '../../world/ball/step-table.js'
import type { BlockSetup, BlockState, Decision } from '../../world/block/types.js'
import type { OilPass } from '../../world/lane/oil-pass.js'
import { layPattern } from '../../world/lane/pattern.js'
import { mirrorMask } from '../../world/pins/leaves.js'
import type { FilmInPlay } from '../shots/direct-worth.js'
import { type SpareShot, type SpareSituation, tabulatedSpareWorth } from '../shots/spare-choice.js'
import { goalBoardOf, shotAt, spareShots } from '../shots/spare-search.js'
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

/** What another ball or line must gain, in pins, before a bowler leaves the usual one for it. */
const WORTH_CHANGING_PINS = 0.2

/**
 * How the bowler would shoot at what stands by habit, the lane's own oil unseen: with the one spare ball, by the one system.
 * Another way takes its place only where it gains over a fifth of a pin, on an even sheet and on one that is dry outside
 * together, so that a line along the gutter or a ball that turns early is no habit. Kept with the setup.
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
  const [even, crowned] = [on(EVEN_SHEET), on(CROWNED_SHEET)]
  const worthOf = (shot: SpareShot): number =>
    (tabulatedSpareWorth(crowned, shot) + tabulatedSpareWorth(even, shot)) / 2
  const best = spareShots(crowned)
    .map((shot) => ({ shot, worth: worthOf(shot) }))
    .reduce((most, one) => (one.worth > most.worth ? one : most))
  const own = habitualShot(setup, crowned, worthOf)
  const chosen = own && best.worth - worthOf(own) <= WORTH_CHANGING_PINS ? own : best.shot
  return { ballId: setup.bag[chosen.ballIndex].id, aim: chosen.aim, release: chosen.release }
}

/** Boards from the middle, of the laydown the other way, for a board of the pins: a corner pin is shot at from about 30 or 10. */
const CROSS_LANE = 0.6
const MIDDLE_BOARD = 20
const LAYDOWNS: readonly [number, number] = [6, 34]
/** Feet and targets go by half boards, so the system's place is good give or take this much; playable ones further off come next. */
const SAME_PLACE_BOARDS = 3
const LAYDOWN_SEARCH_BOARDS = 8

/** The shot of the bowler's system with the bowler's spare ball; null where none is playable. */
function habitualShot(
  { bag, bowler }: BlockSetup,
  situation: SpareSituation,
  worthOf: (shot: SpareShot) => number,
): SpareShot | null {
  const { ballId, system = 'cross-lane' } = bowler.spareHabit ?? {}
  const named = bag.findIndex((ball) => ball.id === ballId)
  const straightest = bag.reduce((best, ball, index) => (strengthOf(ball) < strengthOf(bag[best]) ? index : best), 0)
  const ballIndex = named < 0 ? straightest : named
  const goal = goalBoardOf(situation)
  const wanted = system === 'straight-on' ? goal : MIDDLE_BOARD + CROSS_LANE * (MIDDLE_BOARD - goal)
  const laydown = Math.round(Math.min(LAYDOWNS[1], Math.max(LAYDOWNS[0], wanted)))
  const shotsWithin = (least: number, most: number): { shot: SpareShot; worth: number }[] => {
    const found: { shot: SpareShot; worth: number }[] = []
    for (let off = -most; off <= most; off++) {
      const shot = Math.abs(off) < least ? null : shotAt(situation, ballIndex, laydown + off, goal)
      if (shot) found.push({ shot, worth: worthOf(shot) })
    }
    return found
  }
  const near = shotsWithin(0, SAME_PLACE_BOARDS)
  const playable = near.length > 0 ? near : shotsWithin(SAME_PLACE_BOARDS + 1, LAYDOWN_SEARCH_BOARDS)
  return (
    playable.reduce<(typeof playable)[number] | null>(
      (most, one) => (most && most.worth >= one.worth ? most : one),
      null,
    )?.shot ?? null
  )
}
