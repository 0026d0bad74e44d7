import type { ProgressReport } from '../progress/progress-report.js'
import { escaped } from './escaped.js'

const WIDTH = 640
const HEIGHT = 190
const LEFT = 52
const RIGHT = 12
const TOP = 12
const BOTTOM = 34
const LEAST_PINS = 4
/** An interval that reaches further is cut off there: one of two blocks may be as wide as all. */
const CUT_AT_MEANS = 2.5

/** What choices cost in each stretch of time, with its interval; nothing for a single one. */
export function stretchChart(stretches: ProgressReport['stretches']): string[] {
  if (stretches.length < 2) return []
  const means = stretches.map(({ cost }) => cost.mean)
  const highest = Math.max(...means)
  const most = Math.max(
    LEAST_PINS,
    ...stretches.map(({ cost }) => Math.min(cost.high ?? 0, CUT_AT_MEANS * highest)),
    highest,
  )
  const x = (place: number): number => LEFT + ((WIDTH - LEFT - RIGHT) * (place + 0.5)) / stretches.length
  const y = (pins: number): number => TOP + (HEIGHT - TOP - BOTTOM) * (1 - Math.min(most, pins) / most)
  const label = `Cost over time, pins a game: ${stretches.map(({ name, cost }) => `${name} ${cost.mean.toFixed(1)}`).join(', ')}`
  const every = Math.ceil(stretches.length / 6)
  return [
    [
      `<figure class="trend"><svg viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-label="${escaped(label)}">`,
      ...[0, most / 2, most].map(
        (pins) =>
          `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(pins).toFixed(1)}" y2="${y(pins).toFixed(1)}" class="guide"/><text x="${LEFT - 6}" y="${(y(pins) + 4).toFixed(1)}" text-anchor="end">${pins.toFixed(pins < 10 && pins > 0 ? 1 : 0)}</text>`,
      ),
      ...stretches.map(({ cost: { low, high } }, place) =>
        low === null || high === null
          ? ''
          : `<line x1="${x(place).toFixed(1)}" x2="${x(place).toFixed(1)}" y1="${y(low).toFixed(1)}" y2="${y(high).toFixed(1)}" class="interval"/>`,
      ),
      `<polyline points="${stretches.map(({ cost }, place) => `${x(place).toFixed(1)},${y(cost.mean).toFixed(1)}`).join(' ')}" class="trend"/>`,
      ...stretches.map(
        ({ cost }, place) =>
          `<circle cx="${x(place).toFixed(1)}" cy="${y(cost.mean).toFixed(1)}" r="4.5" class="point"/>`,
      ),
      ...stretches.map(({ name }, place) =>
        place % every === 0
          ? `<text x="${x(place).toFixed(1)}" y="${HEIGHT - 10}" text-anchor="middle">${escaped(name)}</text>`
          : '',
      ),
      '</svg><figcaption>Cost over time in pins a game, with 95 % intervals.</figcaption></figure>',
    ].join(''),
  ]
}
