import { sinceLastWords } from '../../../scenarios/words/change-words.js'
import { sameLineWarning } from '../../../scenarios/words/grade-words.js'
import { costWords, pinsWords } from '../../../scenarios/words/words.js'
import type { PlayerView } from '../../../sim/analysis/view/player-view.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import { tally } from '../../../sim/world/scoring/game.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { callWords } from '../../draw/words.js'
import { rivalTotalWords } from '../../parts/rival-row.js'
import { momentPins } from '../../state/play-moment.js'
import { allPinsGiven, blockOf, type PlayState, pinsGiven, tellsGrades } from '../../state/play-state.js'
import { columnsOf } from '../../terminal/fit.js'
import { standingWords } from './result.js'

/** What the coming ball faces and how the line differs from the last one; or how the block ended. */
export function moveRow(play: PlayState, view: PlayerView | null, columns: number, theme: Theme): string {
  if (play.notice !== '') return textRow(theme, [play.notice, 'loss'])
  const { stage } = play
  if (stage.kind === 'leaving') {
    return textRow(theme, ['End the block here and show the oil? The rest will not be bowled.', 'accent'])
  }
  const block = blockOf(play)
  if (stage.kind === 'passing') {
    const next = play.rival?.kind === 'guest' ? (play.rival.play.who?.name ?? '') : ''
    return textRow(theme, [`${play.who?.name ?? ''}'s turn is over. Enter: ${next} bowls.`, 'accent'])
  }
  if (stage.kind === 'done') return textRow(theme, [rivalTotalWords(play) || totalWords(play), 'strong'])
  const standing = textRow(theme, [standingWords(block.standing), block.standing === FULL_RACK ? 'faint' : 'strong'])
  if (block.standing !== FULL_RACK) return standing
  const last = view?.onThisLane.findLast((record) => record.standingBefore === FULL_RACK)
  const called = play.call ? ` Called ${callWords(play.call, block.setup.bowler.hand)}.` : ''
  if (!last) {
    return spreadRow(textRow(theme, ['First ball on this lane.', 'faint'], [called, 'accent']), standing, columns)
  }
  const { bag, bowler } = block.setup
  const change = sinceLastWords(last.decision, play.decision, bag, bowler.hand)
  const warning = tellsGrades(play)
    ? sameLineWarning(block, play.decision, (index) => pinsGiven(play.grades[index]))
    : ''
  return spreadRow(
    textRow(
      theme,
      ['Against your last line: ', 'faint'],
      [`${change}.${called}`, 'accent'],
      [warning && ` ${warning}`, 'loss'],
    ),
    standing,
    columns,
  )
}

/**
 * Where an entry that is over lies, whole, in the rows of a decision and of its move, for a player has to find the file; null
 * where one row is enough for it.
 */
export function handInRows(play: PlayState, columns: number, theme: Theme): string[] | null {
  const path = play.recordPath
  if (play.stage.kind !== 'done' || play.contest === undefined || !path || play.notice !== '') return null
  if (columnsOf(totalWords(play)) <= columns) return null
  const { ellipsis } = theme.glyphs
  const room = 2 * columns
  const shown = path.length > room ? `${ellipsis}${path.slice(ellipsis.length - room)}` : path
  const score = totalWords(play).replace(path, 'this file:')
  return [score, shown.slice(0, columns), shown.slice(columns)].map((row) => textRow(theme, [row, 'strong']))
}

/** Where an entry that is over went to; a host's lies with the host. */
const handInWords = (path: string | null): string =>
  path === null ? 'Being filed.' : path === '' ? 'The host has your entry.' : `Hand in ${path}`

function totalWords(play: PlayState): string {
  if (play.moment) {
    const [now, then] = [momentPins(play), play.moment.thenPins].map((pins) => costWords(pins).toLowerCase())
    return `This time: ${now}. In the block: ${then}. Enter goes back.`
  }
  const block = blockOf(play)
  const totals = block.balls.map((game) => tally(block.setup.scoring, game).total)
  const sum = totals.reduce((all, total) => all + total, 0)
  const score = totals.length > 1 ? `Games ${totals.join(', ')}: ${sum} in all` : `Score ${sum}`
  if (play.contest !== undefined) return `${score}. ${handInWords(play.recordPath)}`
  if (play.mode === 'test') return `${score}. What the choices cost is told in the debrief.`
  const isOpen = play.grades.includes(undefined)
  const cost = isOpen ? 'being weighed' : pinsWords(allPinsGiven(play))
  return `${score}. Cost of your choices: ${cost}.`
}
