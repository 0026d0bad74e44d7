import type { GameLine } from '../../sim/world/scoring/game.js'
import { canvasRows, newCanvas, put, putCentred, putRight } from '../draw/canvas.js'
import type { Theme } from '../draw/theme.js'

const FRAMES = 10
const FRAME_COLUMNS = 7
const LABEL_COLUMNS = 3
const SCORE_SHEET_ROWS = 3
export const SCORE_SHEET_COLUMNS = LABEL_COLUMNS + FRAMES * FRAME_COLUMNS + 1

/**
 * The frames of a game: number, balls, running score. The frame being bowled carries a pointer.
 * @param current frame being bowled, 1 to 10; null when none is
 * @param frames how many of the ten are bowled: fewer in a short block
 */
export function scoreSheetRows(game: GameLine, current: number | null, theme: Theme, frames = FRAMES): string[] {
  const { glyphs } = theme
  const canvas = newCanvas(SCORE_SHEET_COLUMNS, SCORE_SHEET_ROWS)
  game.frames.slice(0, frames).forEach((frame, index) => {
    const left = LABEL_COLUMNS + index * FRAME_COLUMNS
    const isCurrent = index + 1 === current
    for (let row = 0; row < SCORE_SHEET_ROWS; row++) put(canvas, left, row, glyphs.post, 'faint')
    const number = isCurrent ? `${glyphs.pointer} ${index + 1}` : String(index + 1)
    putCentred(canvas, left + 1, FRAME_COLUMNS - 1, 0, number, isCurrent ? 'accent' : 'faint')
    const isLast = index === FRAMES - 1
    const balls = frame.symbols.length === 1 && frame.symbols[0] === 'X' && !isLast ? ['', 'X'] : frame.symbols
    balls.forEach((symbol, ball) => {
      put(canvas, left + (isLast ? 1 : 2) + 2 * ball, 1, symbol, symbol === 'X' || symbol === '/' ? 'strong' : 'plain')
    })
    if (frame.cumulative !== null) putRight(canvas, left + FRAME_COLUMNS - 2, 2, String(frame.cumulative))
  })
  const end = LABEL_COLUMNS + frames * FRAME_COLUMNS
  for (let row = 0; row < SCORE_SHEET_ROWS; row++) put(canvas, end, row, glyphs.post, 'faint')
  return canvasRows(canvas, theme)
}
