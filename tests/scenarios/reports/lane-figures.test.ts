import { expect, it } from 'vitest'
import { laneFigures } from '../../../src/scenarios/reports/html/lane-figures.js'
import type { Replay } from '../../../src/scenarios/store/replay.js'
import { FILM_BOARDS, FILM_ROWS } from '../../../src/sim/world/lane/film.js'
import { FULL_RACK } from '../../../src/sim/world/pins/leaves.js'

/** A block of made-up oil and paths, which no law of the lane has a part in. */
function madeUp(): Replay {
  const film = { microns: Float64Array.from({ length: FILM_ROWS * FILM_BOARDS }, (_, at) => (at % 97) / 20) }
  const thrown = [1, 2, 3].map((frame) => ({
    spot: { phase: 'game', lane: 0, game: 1, frame, ball: 1 },
    standingBefore: FULL_RACK,
    standingAfter: frame === 2 ? 0 : 6,
    truth: { path: Float64Array.from({ length: FILM_ROWS }, (_, row) => 0.3 + frame / 20 + row / 500) },
  }))
  const state = (throws: unknown[]) => ({ lanes: [{ film }], throws })
  const setup = { bowler: { hand: 'right' }, lanes: [{ name: 'lane 1' }] }
  return { scenario: { setup }, states: [state([]), state(thrown)] } as unknown as Replay
}

it('numbers the first balls of a game on their paths, no two at the same feet', () => {
  const places = [
    ...laneFigures(madeUp()).matchAll(/<text x="([\d.]+)" y="[\d.]+" class="number" text-anchor="middle">(\d+)</g),
  ]
  expect(places.map(([, , frame]) => frame)).toEqual(['1', '2', '3'])
  expect(new Set(places.map(([, x]) => x)).size).toBe(places.length)
})
