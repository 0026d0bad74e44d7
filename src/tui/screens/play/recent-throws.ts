import { boardWords, breakpointWords, trimmed } from '../../../scenarios/words/words.js'
import type { BallSpecification } from '../../../sim/world/ball/specification.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import type { Theme } from '../../draw/theme.js'
import { throwLabel } from '../../draw/words.js'

/** Where figures end and words begin. */
const FIGURE_ENDS = { throw: 4, ball: 10, feet: 17, target: 25, arrows: 33 } as const
const WORD_STARTS = { breakpoint: 37, 'came in': 54, left: 66 } as const

/** The latest throws on a lane, newest first: what was decided and what was seen of it. */
export function recentThrowRows(
  throws: readonly ThrowRecord[],
  bag: readonly BallSpecification[],
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
      feet: boardWords(aim.feetBoard),
      target: boardWords(aim.targetBoard),
      arrows: trimmed(record.observation.arrowsBoard),
    }
    for (const [name, text] of Object.entries(figures)) {
      putRight(canvas, FIGURE_ENDS[name as keyof typeof FIGURE_ENDS], row, text, ink)
    }
    put(canvas, WORD_STARTS.breakpoint, row, breakpointWords(record.observation), ink)
    if (record.standingBefore === FULL_RACK) put(canvas, WORD_STARTS['came in'], row, record.observation.contact, ink)
    put(canvas, WORD_STARTS.left, row, leftWords(record), ink)
  })
  return canvasRows(canvas, theme)
}

function leftWords({ standingBefore, standingAfter }: ThrowRecord): string {
  return standingAfter === 0 && standingBefore !== FULL_RACK ? 'spare' : leaveName(standingAfter)
}
