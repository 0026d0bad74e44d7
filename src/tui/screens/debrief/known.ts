import type { Innovation } from '../../../sim/analysis/debrief/reading/innovation.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { placeWords } from '../../draw/words.js'
import { beliefRows } from '../../parts/belief.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

const NOTHING_BOARDS = 0.25

/** What could be known before a throw, and what the throw then told of hand and lane. */
export function knownRows(play: PlayState, index: number, columns: number, theme: Theme): string[] {
  const account = play.accounts[index]
  if (!account) return [textRow(theme, ['Not worked out yet.', 'faint'])]
  const width = Math.min(columns, 110)
  const told = account.innovation ? wrapWords(innovationWords(account.innovation), width) : []
  const { throws, setup } = blockOf(play)
  const place = placeWords(throws[index]!.spot, setup.games).toLowerCase()
  return [...beliefRows(account.belief, width, theme, `before ${place}`), ...told]
}

function innovationWords({
  predictedBoard,
  shownBoard,
  deliveryBoards,
  laneBoards,
  deliveryShare,
}: Innovation): string {
  const came = `To be expected was board ${predictedBoard.toFixed(1)} at the pins, and about ${shownBoard.toFixed(1)} was seen.`
  if (Math.abs(deliveryBoards) + Math.abs(laneBoards) < NOTHING_BOARDS) return `${came} It told nothing new.`
  const share = Math.round(deliveryShare * 100)
  return `${came} Of the surprise one would put ${share} % down to the hand and ${100 - share} % to the lane.`
}
