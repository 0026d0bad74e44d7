import { escaped } from '../../reports/html/escaped.js'
import { cell, head, htmlPage, tableOf } from '../../reports/html/page.js'
import { momentWords } from '../../words/contest-words.js'
import type { Board } from './board.js'

/** The live board for the wall: who plays, and the pins that are settled; it keeps itself up to date. */
export function boardPage({ title, lane, deadline, lines }: Board): string {
  const rows = lines.map(({ player, games, frames, of, over }) => [
    cell(player),
    cell(String(games.reduce((sum, game) => sum + game, 0)), 'n'),
    cell(games.join(' '), 'wide'),
    cell(over ? 'over' : `${frames} of ${of}`, 'n'),
  ])
  return htmlPage(title, [
    `<h1>${escaped(title)}</h1>`,
    `<p class="soft">${escaped(lane)}. Over at ${escaped(momentWords(deadline))}. Pins as they fell, once a frame is settled; places come when it is over.</p>`,
    tableOf('Who bowls', [head('player'), head('pins', 'n'), head('games', 'wide'), head('frames', 'n')], rows),
    `<p id="said" class="soft" role="status">${lines.length === 0 ? 'Nobody has joined yet.' : ''}</p>`,
    '<script src="board.js"></script>',
  ])
}
