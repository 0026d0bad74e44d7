import { lineWords } from '../../../scenarios/words/throw-words.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { positionOf } from '../../state/drill-types.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

/** After the last throw of a position: what was best from what had been seen, and what the coach wants seen. */
export function drillDoneRows(play: PlayState, columns: number, rows: number, theme: Theme): string[] {
  if (!play.drill) return []
  const { bag } = blockOf(play).setup
  const grade = play.grades.at(-1)
  const isDear = grade && grade.kind !== 'practice' && grade.givenAwayPins > 0
  const best = isDear ? wrapWords(`Best from what you had seen: ${lineWords(grade.best, bag)}.`, columns) : []
  const look = wrapWords(`Look for: ${positionOf(play.drill).lookFor}`, columns - 2)
  const room = Math.max(1, rows - best.length - 2)
  const shown = look.length <= room ? look : [...look.slice(0, room - 1), `${look[room - 1]} ${theme.glyphs.ellipsis}`]
  return [
    '',
    ...best.map((row) => textRow(theme, [` ${row}`, 'plain'])),
    ...shown.map((row) => textRow(theme, [` ${row}`, 'accent'])),
  ]
}

/** Which position of how many, for the head of the screen; empty outside a drill. */
export const drillPlaceWords = ({ drill }: PlayState): string =>
  drill ? `Position ${drill.place + 1} of ${drill.drill.positions.length}` : ''
