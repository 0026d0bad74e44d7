import { rivalThrowWords, scoreAfter } from '../../scenarios/words/rival-words.js'
import { pinsWords } from '../../scenarios/words/words.js'
import { shownThrows } from '../../sim/world/block/shown-throws.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { allPinsGiven, blockOf, isWeighed, type PlayState } from '../state/play-state.js'
import { clipRow, columnsOf } from '../terminal/fit.js'

/** What the rival did in the frame the player has just bowled in, and how both stand; nothing the player is still to bowl. */
export function rivalRow(play: PlayState, columns: number, theme: Theme): string {
  const whole = rivalWords(play, false)
  const words = columnsOf(whole) <= columns ? whole : rivalWords(play, true)
  return clipRow(textRow(theme, [words, 'accent']), columns)
}

function rivalWords(play: PlayState, isBrief: boolean): string {
  const { rival, who } = play
  if (!rival) return ''
  const mine = blockOf(play)
  const own = `${who?.name ?? 'You'} ${soFar(mine)}`
  if (rival.kind === 'guest') {
    const theirs = blockOf(rival.play)
    return `${own} so far. ${rivalThrowWords(theirs, theirs.throws, nameOf(rival.play), isBrief)}`
  }
  const shown = shownThrows(mine, rival.block)
  if (shown.length === 0) return `Against ${rival.name}: each of its throws shows once you have made yours.`
  return `${own} so far. ${rivalThrowWords(rival.block, shown, 'Theirs', isBrief)}`
}

const nameOf = ({ who }: PlayState): string => who?.name ?? 'The guest'
const soFar = (block: BlockState): number => scoreAfter(block, block.throws)

/** How the block ended beside its rival's; empty without one. */
export function rivalTotalWords(play: PlayState): string {
  const { rival } = play
  if (!rival) return ''
  const own = `${play.who?.name ?? 'You'} ${soFar(blockOf(play))}${costOf(play)}`
  if (rival.kind === 'guest') {
    return `${own}; ${nameOf(rival.play)} ${soFar(blockOf(rival.play))}${costOf(rival.play)}.`
  }
  const cost = rival.costPins === null ? '' : ` (cost ${pinsWords(rival.costPins)})`
  return `${own}; ${rival.name} ${soFar(rival.block)}${cost}.`
}

const costOf = (play: PlayState): string =>
  play.grades.every((_, index) => isWeighed(play, index)) ? ` (cost ${pinsWords(allPinsGiven(play))})` : ''
