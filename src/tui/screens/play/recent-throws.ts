import { breakpointPlace, shortContact } from '../../../scenarios/words/throw-words.js'
import { boardWords, trimmed } from '../../../scenarios/words/words.js'
import type { BlockSetup, ThrowRecord } from '../../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import type { Theme } from '../../draw/theme.js'
import { throwLabel } from '../../draw/words.js'

/** Where figures end and words begin. */
const FIGURE_ENDS = { throw: 4, ball: 10, slide: 17, target: 25, arrows: 33 } as const
const WORD_STARTS = { breakpoint: 36, 'came in': 50, left: 64 } as const

/** The latest throws on a lane, newest first: what was decided and what was seen of it. */
export function recentThrowRows(
  throws: readonly ThrowRecord[],
  { bag, bowler: { hand } }: Pick<BlockSetup, 'bag' | 'bowler'>,
  columns: number,
  rows: number,
  theme: Theme,
): string[] {
  if (rows < 2 || throws.length === 0) return []
  const canvas = newCanvas(columns, Math.min(rows, throws.length + 1))
  for (const [heading, end] of Object.entries(FIGURE_ENDS)) {
    if (heading !== 'throw') putRight(canvas, end, 0, heading, 'faint')
  }
  for (const [heading, start] of Object.entries(WORD_STARTS)) put(canvas, start, 0, heading, 'faint')
  const latest = throws.slice(-(canvas.rows - 1)).reverse()
  latest.forEach((record, index) => {
    const row = index + 1
    const ink = index === 0 ? 'plain' : 'faint'
    const { aim, ballId } = record.decision
    const figures = {
      throw: throwLabel(record.spot),
      ball: String(bag.findIndex((ball) => ball.id === ballId) + 1),
      slide: boardWords(aim.feetBoard),
      target: boardWords(aim.targetBoard),
      arrows: trimmed(record.observation.arrowsBoard),
    }
    for (const [name, text] of Object.entries(figures)) {
      putRight(canvas, FIGURE_ENDS[name as keyof typeof FIGURE_ENDS], row, text, ink)
    }
    put(canvas, WORD_STARTS.breakpoint, row, breakpointPlace(record.observation), ink)
    if (record.standingBefore === FULL_RACK)
      put(canvas, WORD_STARTS['came in'], row, shortContact(record.observation.contact, hand), ink)
    put(canvas, WORD_STARTS.left, row, leftWords(record, columns - WORD_STARTS.left, theme), ink)
  })
  return canvasRows(canvas, theme)
}

/** What was left; where that is too long for its column, without what it is called. */
function leftWords({ standingBefore, standingAfter }: ThrowRecord, room: number, { glyphs }: Theme): string {
  if (standingAfter === 0 && standingBefore !== FULL_RACK) return 'spare'
  const name = leaveName(standingAfter)
  const pins = name.length > room ? name.split(' ')[0]! : name
  return pins.length <= room ? pins : `${pins.slice(0, room - glyphs.ellipsis.length)}${glyphs.ellipsis}`
}
