import { escaped } from '../../reports/html/escaped.js'
import { cell, head, htmlPage, tableOf } from '../../reports/html/page.js'
import { momentWords } from '../../words/contest-words.js'
import type { Season } from './season.js'

/** A season's table as one page for the club's wall. */
export function seasonPage({ contests, rows }: Season): string {
  const heads = [
    head('place', 'n'),
    head('player'),
    head('points', 'n'),
    head('pins', 'n'),
    ...contests.map((_, index) => head(String(index + 1), 'n wide')),
  ]
  const body = rows.map(({ place, player, points, score, each }) => [
    cell(String(place), 'n'),
    cell(player),
    cell(points.toFixed(1), 'n'),
    cell(String(score), 'n'),
    ...each.map((one) => cell(one === null ? '' : one.toFixed(1), 'n wide')),
  ])
  return htmlPage('Season', [
    '<h1>Season</h1>',
    `<ol>${contests.map(({ title, deadline, entrants }) => `<li>${escaped(title)} <span class="soft">over at ${escaped(momentWords(deadline))}, ${entrants} with a place</span></li>`).join('')}</ol>`,
    tableOf('Season', heads, body),
    '<p class="soft">A place earns a point for everybody behind it and one for being there; a shared place shares them. Equal points go by pins.</p>',
  ])
}
