import type { BlockState } from '../../../sim/world/block/types.js'
import { mirrorFilm, type OilFilm } from '../../../sim/world/lane/film.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import type { Replay } from '../../store/replay.js'
import { thickestMicrons } from '../../words/oil-picture.js'
import { counted } from '../../words/words.js'
import { escaped } from './escaped.js'
import { laneSvg } from './lane-svg.js'

/** Every lane of a block before its first throw and after its last, both in one scale, the first balls of the games over the second. */
export function laneFigures({ scenario, states }: Replay): string {
  const [begun, ended] = [states[0], states[states.length - 1]]
  const { bowler, lanes } = scenario.setup
  const own = (state: BlockState, lane: number): OilFilm => {
    const { film } = state.lanes[lane]
    return bowler.hand === 'left' ? mirrorFilm(film) : film
  }
  const figures = lanes.flatMap(({ name }, lane) => {
    const [before, after] = [own(begun, lane), own(ended, lane)]
    const thickest = Math.max(thickestMicrons(before), thickestMicrons(after), 1e-9)
    const firstBalls = ended.throws.filter(
      ({ spot, standingBefore }) => spot.phase === 'game' && spot.lane === lane && standingBefore === FULL_RACK,
    )
    const strikes = firstBalls.filter(({ standingAfter }) => standingAfter === 0).length
    return [
      figure(laneSvg(before, thickest, [], `Oil on ${name} before the first throw`), `${name}, before the first throw`),
      figure(
        laneSvg(after, thickest, firstBalls, `Oil on ${name} after the last throw, with the first balls`),
        `${name}, after the last: ${counted(strikes, 'strike')} (whole lines), ${counted(firstBalls.length - strikes, 'other first ball')} (broken lines)${firstBalls.length > 0 ? '; numbers are frames' : ''}`,
      ),
    ]
  })
  const side = bowler.hand === 'left' ? 'left' : 'right'
  return `<div class="lanes">${figures.join('')}</div><p class="soft">Foul line on the left, pins on the right; boards from the ${side} edge, which lies at the bottom; feet along it, the arrows at 15. The fuller the blue, the more oil: at most ${thickestOf(begun).toFixed(1)} µm before the first throw.</p>`
}

const thickestOf = ({ lanes }: BlockState): number => Math.max(...lanes.map(({ film }) => thickestMicrons(film)))

const figure = (picture: string, words: string): string =>
  `<figure>${picture}<figcaption>${escaped(words)}</figcaption></figure>`
