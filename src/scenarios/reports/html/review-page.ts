import { type PlayerReport, reviewReport } from '../review/review-report.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import type { Superseded } from '../review/standing-blocks.js'
import { escaped } from './escaped.js'
import { estimateBar, intervalWords } from './estimate-html.js'
import { cautionsBox, cell, head, htmlPage, tableOf } from './page.js'
import { playerSection } from './player-section.js'

/** The review as one page that needs nothing else: the group at a glance, then each player with sheets and pictures of the lanes. */
export function reviewHtml(blocks: readonly ReviewedBlock[], superseded: readonly Superseded[] = []): string {
  const { players } = reviewReport(blocks)
  const title = players.length === 1 ? `Review of ${players[0].player}` : `Review of ${players.length} players`
  return htmlPage(title, [
    `<h1>${escaped(title)}</h1>`,
    '<p class="soft">Cost is what a choice was expected to lose against the best from what had been seen at the time, in pins of the final score. How the pins fell is not in it, and a choice that is as good as the best costs nothing.</p>',
    ...(players.length > 1 ? groupTable(players) : []),
    ...players.map((player, index) =>
      playerSection(
        player,
        blocks.filter((block) => block.player === player.player),
        index + 1,
      ),
    ),
    ...supersededList(superseded),
    ...cautionsBox(players[0]?.cautions ?? []),
  ])
}

function supersededList(superseded: readonly Superseded[]): string[] {
  if (superseded.length === 0) return []
  const items = superseded.map(
    ({ record, by }) => `<li>${escaped(`${record}: the same block as ${by}, which has all of it`)}</li>`,
  )
  return ['<h2>Counted once</h2>', `<ul>${items.join('')}</ul>`]
}

/** The players side by side, whose choices cost least first. */
function groupTable(players: readonly PlayerReport[]): string[] {
  const ranked = players
    .map((player, index) => ({ player, number: index + 1 }))
    .sort((a, b) => a.player.givenAway.total.mean - b.player.givenAway.total.mean)
  const most = Math.max(1, ...players.map(({ givenAway: { total } }) => total.high ?? total.mean))
  const rows = ranked.map(({ player: { player, givenAway, blocks, skills }, number }) => {
    const { total, firstBalls, spares } = givenAway
    const dearest = skills[0]?.mean > 0 ? skills[0] : null
    return [
      `<td><a href="#player-${number}">${escaped(player)}</a></td>`,
      `<td style="width:34%"><strong>${total.mean.toFixed(1)}</strong> <span class="soft">${intervalWords(total)}</span>${estimateBar(total, most)}</td>`,
      cell(firstBalls.mean.toFixed(1), 'n wide'),
      cell(spares.mean.toFixed(1), 'n wide'),
      cell(blocks.map(({ games }) => games.join(' ')).join(', ')),
      cell(dearest ? `${dearest.skill}, ${dearest.mean.toFixed(1)}` : 'nothing named'),
    ]
  })
  return [
    tableOf(
      [
        head('player'),
        head('cost, pins a game'),
        head('first balls', 'n wide'),
        head('spares', 'n wide'),
        head('scores'),
        head('costs most'),
      ],
      rows,
    ),
    '<p class="soft">Whiskers are 95 % intervals, which need more than one block; where they overlap, the order says nothing. Compare players on the same scenario only.</p>',
  ]
}
