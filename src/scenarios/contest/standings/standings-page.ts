import { escaped } from '../../reports/html/escaped.js'
import { cell, head, htmlPage, tableOf } from '../../reports/html/page.js'
import { momentWords } from '../../words/contest-words.js'
import { figureText, placeText, type StandingsReport } from './standings-report.js'

/** The standings as one page for the club's wall, which needs nothing else. Evidence is the organiser's and never on it. */
export function standingsPage(report: StandingsReport): string {
  const { title, lane, deadline, rankingWords, why, places, unplaced, refused } = report
  const hasHandicap = places.some(({ handicap }) => handicap > 0)
  const rows = places.map((row) => [
    cell(placeText(row), 'n'),
    `<td><strong>${escaped(row.player)}</strong>${noteOf(row)}</td>`,
    cell(figureText(report, row), 'n'),
    ...(report.ranking === 'score' && !hasHandicap ? [] : [cell(String(row.score), 'n')]),
    ...(hasHandicap ? [cell(row.handicap === 0 ? '' : `+${row.handicap}`, 'n wide')] : []),
    cell(row.games.join(' '), 'wide'),
    cell(String(row.strikes), 'n wide'),
  ])
  const heads = [
    head('place', 'n'),
    head('player'),
    head(rankingWords, 'n'),
    ...(report.ranking === 'score' && !hasHandicap ? [] : [head('score', 'n')]),
    ...(hasHandicap ? [head('handicap', 'n wide')] : []),
    head('games', 'wide'),
    head('strikes', 'n wide'),
  ]
  return htmlPage(title, [
    `<h1>${escaped(title)}</h1>`,
    `<p class="soft">${escaped(lane)}. Over at ${escaped(momentWords(deadline))}.</p>`,
    places.length === 0 ? '<p>No entry has a place.</p>' : tableOf('Places', heads, rows),
    `<p class="soft">${escaped(why)}</p>`,
    ...(places.some(({ shared }) => shared)
      ? ['<p class="soft">= marks a shared place: the difference is less than the frames can tell, or none.</p>']
      : []),
    ...listOf(
      'Without a place',
      unplaced.map(({ file, player, reasons }) => `${player || file}: ${reasons.join('; ')}`),
    ),
    ...(refused.length === 0
      ? []
      : [`<p class="soft">${refused.length} ${refused.length === 1 ? 'file was' : 'files were'} not accepted.</p>`]),
  ])
}

function noteOf({ marks, aheadBy }: StandingsReport['places'][number]): string {
  const notes = [...marks, ...(aheadBy === null ? [] : [`ahead by ${aheadBy}`])]
  return notes.length === 0 ? '' : `<br><span class="soft">${escaped(notes.join('; '))}</span>`
}

const listOf = (heading: string, items: readonly string[]): string[] =>
  items.length === 0
    ? []
    : [`<h2>${heading}</h2>`, `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`]
