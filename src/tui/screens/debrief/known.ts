import type { Innovation } from '../../../sim/analysis/debrief/reading/innovation.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { placeWords } from '../../draw/words.js'
import { beliefRows } from '../../parts/belief.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

const NOTHING_BOARDS = 0.25

/** What could be read before a throw, and what the throw then told of delivery and lane. */
export function knownRows(play: PlayState, index: number, columns: number, theme: Theme): string[] {
  const account = play.accounts[index]
  if (!account) return [textRow(theme, ['Not worked out yet.', 'faint'])]
  const width = Math.min(columns, 110)
  const told = account.innovation ? wrapWords(innovationWords(account.innovation), width) : []
  const { throws, setup } = blockOf(play)
  const place = placeWords(throws[index]!.spot, setup.games).toLowerCase()
  return [...beliefRows(account.belief, width, theme, `before ${place}`), ...told]
}

function innovationWords({ predictedBoard, shownBoard, deliveryBoards, laneBoards }: Innovation): string {
  const came = `Expected at board ${predictedBoard.toFixed(1)} at the pins, seen at about ${shownBoard.toFixed(1)}`
  if (Math.abs(deliveryBoards) + Math.abs(laneBoards) < NOTHING_BOARDS) return `${came}: it told nothing new.`
  return `${came}: the delivery made ${partWords(deliveryBoards)}, the lane ${partWords(laneBoards)}.`
}

/** What one side made of the difference: more boards are higher. */
function partWords(boards: number): string {
  if (Math.abs(boards) < NOTHING_BOARDS) return 'next to nothing of it'
  return `it ${Math.abs(boards).toFixed(1)} boards ${boards > 0 ? 'higher' : 'lighter'}`
}
