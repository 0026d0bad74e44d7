import type { FaultyFile, ReviewAbout } from '../review/review-report.js'
import { reviewReport } from '../review/review-report.js'
import { periodWords } from '../review/review-words.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import { escaped } from './escaped.js'
import { groupSection } from './group-section.js'
import { cautionsBox, htmlPage } from './page.js'
import { playerSection } from './player-section.js'

/** The review as one page that needs nothing else: the group at a glance, then each player with sheets and pictures of the lanes. */
export function reviewHtml(blocks: readonly ReviewedBlock[], about: ReviewAbout = {}): string {
  const { period, group, players, superseded, leftOut, faults } = reviewReport(blocks, about)
  const title = players.length === 1 ? `Review of ${players[0]!.player}` : `Review of ${players.length} players`
  const sections = players.map((player, index) =>
    playerSection(
      player,
      blocks.filter((block) => block.player === player.player),
      index + 1,
    ),
  )
  const notes = [
    ...list(
      'Counted once',
      superseded.map(({ record, by }) => `${record}: the same block as ${by}, which has all of it`),
    ),
    ...list(
      'Not in this period',
      leftOut.map(({ record, why }) => `${record}: ${why}`),
    ),
    ...cautionsBox(players[0]?.cautions ?? []),
  ]
  const body = [
    `<h1>${escaped(title)}</h1>`,
    ...(periodWords(period) === '' ? [] : [`<p>${escaped(periodWords(period))}</p>`]),
    '<p class="soft">Cost is what a choice was expected to lose against the best from what had been seen, in pins of the final score. How the pins fell is not in it, and a choice as good as the best costs nothing. Only the player’s own choices count.</p>',
    ...faultsList(faults),
    // Players come last where there are several: in print each has a sheet, and nothing is left over for one more.
    ...(group ? [groupSection(group, players), ...notes, ...sections] : [...sections, ...notes]),
  ]
  return htmlPage(title, body, group ? 'group' : '')
}

const faultsList = (faults: readonly FaultyFile[]): string[] =>
  list('Files that are not counted', faults.map(faultWords))

const TOLD_REASONS = 3

/** A file and what is wrong with it: each reason begins with the file already, which stands here once. */
function faultWords({ file, reasons }: FaultyFile): string {
  const told = reasons.slice(0, TOLD_REASONS).map((reason) => reason.replace(`${file}:`, '').trim())
  const more = reasons.length - told.length
  return `${file}: ${told.join(' ')}${more > 0 ? ` And ${more} more.` : ''}`
}

function list(heading: string, items: readonly string[]): string[] {
  if (items.length === 0) return []
  return [`<h2>${heading}</h2>`, `<ul class="files">${items.map((item) => `<li>${escaped(item)}</li>`).join('')}</ul>`]
}
