import { gradeSentence, gradeWords } from '../../../scenarios/words/grade-words.js'
import { fellWords } from '../../../scenarios/words/throw-words.js'
import type { BlockState, ThrowRecord } from '../../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { seenWords } from '../../draw/words.js'
import { blockOf, isOwn, type PlayState, type ThrowGrade, tellsGrades } from '../../state/play-state.js'
import { ROLL_FRAMES } from '../../state/reduce-throw.js'
import { columnsOf } from '../../terminal/fit.js'

/** What the last choice was worth and what became of it; while the ball rolls, only the first. */
export function resultRows(play: PlayState, columns: number, theme: Theme): string[] {
  const { stage } = play
  const block = blockOf(play)
  if (stage.kind === 'weighing') return [weighingRow(play, stage.turns, columns, theme), '']
  if (stage.kind === 'rolling')
    return [
      gradeRow(play, stage.grade, block, stage.next.throws.at(-1)!, columns, theme),
      textRow(theme, [
        `${stage.frame < ROLL_FRAMES ? 'The ball is on its way' : 'The pins fall'}${theme.glyphs.ellipsis}`,
        'faint',
      ]),
    ]
  const last = block.throws.at(-1)
  if (!last)
    return [textRow(theme, ['A line by rule of thumb to start from; move it as you like, then throw.', 'faint']), '']
  const before = play.states.at(-2) ?? block
  const { hand } = block.setup.bowler
  const fell = fellWords(last, hand)
  const graded = (room: number): string =>
    isOwn(play, play.grades.length - 1)
      ? gradeRow(play, play.grades.at(-1), before, last, room, theme)
      : textRow(theme, ['Given, and not counted.', 'faint'])
  const whole = graded(columns)
  const seen = seenWords(last, block.setup, columns)
  // What fell stands beside the grade where it fits, else beside what was seen; the reason, told before, gives way last.
  const strong = (words: string) => textRow(theme, [words, 'strong'])
  if (columnsOf(whole) + fell.length < columns) return [spreadRow(whole, strong(fell), columns), textRow(theme, seen)]
  // A strike is said in as few words as it is called by.
  const name = last.standingAfter === 0 ? fell : leaveName(last.standingAfter)
  const short = [fell, name].find((words) => seen.length + words.length < columns)
  if (short !== undefined) return [whole, spreadRow(textRow(theme, seen), strong(short), columns)]
  return [spreadRow(graded(columns - name.length - 1), strong(name), columns), textRow(theme, seen)]
}

/** A drill's grade on its way; from the second turn of the clock on, how long it has been. */
function weighingRow(play: PlayState, turns: number, columns: number, theme: Theme): string {
  if (play.contest !== undefined) return textRow(theme, [`The choice is made${theme.glyphs.ellipsis}`, 'faint'])
  if (!tellsGrades(play)) return ''
  const words = `Weighing the choice against the best from what you had seen${theme.glyphs.ellipsis} `
  // At the edge the dots begin anew.
  const room = Math.max(1, columns - columnsOf(words))
  return textRow(theme, [words + theme.glyphs.dot.repeat(turns % (room + 1)), 'faint'])
}

/** The grade of a choice made in `before`: what it cost, why and what to try; or why there is none. */
function gradeRow(
  play: PlayState,
  grade: ThrowGrade,
  before: BlockState,
  { decision }: ThrowRecord,
  columns: number,
  theme: Theme,
): string {
  if (before.spot?.phase === 'practice') return textRow(theme, ['Practice costs nothing.', 'faint'])
  if (!tellsGrades(play)) {
    if (play.contest !== undefined) return textRow(theme, ['Grades come when the contest is over.', 'faint'])
    const isToCome = play.mode === 'block' && play.stage.kind !== 'done'
    return textRow(theme, [isToCome ? 'Grades come at the end.' : 'Grades come in the debrief.', 'faint'])
  }
  if (!grade || grade.kind === 'practice') return textRow(theme, ['Not weighed.', 'faint'])
  const words = gradeWords(grade, decision, before)
  const rest = gradeSentence(words, columns).slice(words.what.length)
  return textRow(theme, [words.what, grade.givenAwayPins > 0 ? 'loss' : 'gain'], rest)
}

/** What the coming ball faces. */
export function standingWords(standing: number): string {
  return standing === FULL_RACK ? 'Full rack' : `Spare: ${leaveName(standing)}`
}
