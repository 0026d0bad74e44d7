import type { PlayerReport } from '../review/review-report.js'
import { escaped } from './escaped.js'

const WIDTH = 640
const HEIGHT = 150
const LEFT = 52
const RIGHT = 12
const TOP = 12
const BOTTOM = 34
const LEAST_PINS = 4
/** A block of so many choices or more has the largest point. */
const FULL_CHOICES = 20
const LEAST_RADIUS = 3
const MORE_RADIUS = 4

/**
 * What blocks cost one after the other, in pins a game: a point each, the larger the more choices it has; a line at the day that is
 * compared across. Nothing for fewer than three blocks, of which the text tells as much.
 */
export function trendChart(all: PlayerReport['blocks'], compare: string | null): string[] {
  const blocks = all.filter(({ ownChoices }) => ownChoices > 0)
  if (blocks.length < 3) return []
  const most = Math.max(LEAST_PINS, ...blocks.map(({ givenAwayPerGame }) => givenAwayPerGame))
  const x = (place: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * (place + 0.5)) / blocks.length
  const y = (pins: number): number => TOP + (HEIGHT - TOP - BOTTOM) * (1 - pins / most)
  const points = blocks.map(({ givenAwayPerGame }, place) => `${x(place).toFixed(1)},${y(givenAwayPerGame).toFixed(1)}`)
  const split = compare === null ? -1 : blocks.findIndex(({ day }) => day !== null && day >= compare)
  const label = `Cost of ${blocks.length} blocks in order of play, pins a game: ${blocks.map(({ givenAwayPerGame }) => givenAwayPerGame.toFixed(1)).join(', ')}`
  return [
    [
      `<figure class="trend"><svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escaped(label)}">`,
      ...[0, most / 2, most].map(
        (pins) =>
          `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(pins)}" y2="${y(pins)}" class="guide"/><text x="${LEFT - 6}" y="${y(pins) + 4}" text-anchor="end">${pins.toFixed(pins < 10 && pins > 0 ? 1 : 0)}</text>`,
      ),
      ...(split > 0
        ? [
            `<line x1="${(x(split) + x(split - 1)) / 2}" x2="${(x(split) + x(split - 1)) / 2}" y1="${TOP}" y2="${HEIGHT - BOTTOM}" class="split"/>`,
          ]
        : []),
      `<polyline points="${points.join(' ')}" class="trend"/>`,
      ...blocks.map(
        ({ ownChoices, givenAwayPerGame }, place) =>
          `<circle cx="${x(place).toFixed(1)}" cy="${y(givenAwayPerGame).toFixed(1)}" r="${(LEAST_RADIUS + MORE_RADIUS * Math.min(1, ownChoices / FULL_CHOICES)).toFixed(1)}" class="point"/>`,
      ),
      `<text x="${x(0).toFixed(1)}" y="${HEIGHT - 8}" text-anchor="start">${blocks[0]!.day ?? ''}</text>`,
      `<text x="${x(blocks.length - 1).toFixed(1)}" y="${HEIGHT - 8}" text-anchor="end">${blocks.at(-1)!.day ?? ''}</text>`,
      '</svg><figcaption>Cost of each block in order of play, in pins a game; the larger the point, the more choices.</figcaption></figure>',
    ].join(''),
  ]
}
