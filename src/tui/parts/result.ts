import { calledPins } from '../../scenarios/called-pins.js'
import type { BlockState } from '../../sim/block/types.js'
import { FULL_RACK, leaveName } from '../../sim/pins/leaves.js'
import { spreadRow, textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { fellWords, pinsGivenWords, seenWords } from '../draw/words.js'
import { blockOf, type PlayState, type ThrowGrade } from '../state/play-state.js'
import { columnsOf } from '../terminal/fit.js'

/** What the last choice was worth and what became of it; while the ball rolls, only the first. */
export function resultRows(play: PlayState, columns: number, theme: Theme): string[] {
  const { stage } = play
  const block = blockOf(play)
  if (stage.kind === 'weighing') return [textRow(theme, [`Weighing the choice${theme.glyphs.ellipsis}`, 'faint']), '']
  if (stage.kind === 'rolling')
    return [
      gradeRow(stage.grade, block, theme),
      textRow(theme, [`The ball is on its way${theme.glyphs.ellipsis}`, 'faint']),
    ]
  const last = block.throws.at(-1)
  if (!last)
    return [textRow(theme, ['A line by rule of thumb to start from; move it as you like, then throw.', 'faint']), '']
  const before = play.states.at(-2) ?? block
  const grade = gradeRow(play.grades.at(-1), before, theme)
  const room = columns - columnsOf(grade) - 1
  const fell = fellWords(last).length <= room ? fellWords(last) : leaveName(last.standingAfter)
  return [
    spreadRow(grade, textRow(theme, [fell, 'strong']), columns),
    textRow(theme, seenWords(last, block.setup.lanes, columns)),
  ]
}

/** The grade of a choice made in `before`, or why there is none. */
function gradeRow(grade: ThrowGrade, before: BlockState, theme: Theme): string {
  if (!grade) {
    const why = before.spot?.phase === 'practice' ? 'Practice costs nothing.' : ''
    return textRow(theme, [why, 'faint'])
  }
  const pins = calledPins(grade)
  if (pins === 0) return textRow(theme, ['Too close to call', 'gain'], [`, ${grade.label}`, 'faint'])
  return textRow(theme, [`Gave away ${pinsGivenWords(pins)}`, 'loss'], [`, ${grade.label}`, 'faint'])
}

/** What the coming ball faces. */
export function standingWords(standing: number): string {
  return standing === FULL_RACK ? 'Full rack' : `Standing: ${leaveName(standing)}`
}
