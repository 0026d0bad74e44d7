import { boardWords, CONTACT_WORDS, trimmed } from '../../scenarios/plain/words.js'
import type { BallSpecification } from '../../sim/ball/specification.js'
import type { ThrowRecord } from '../../sim/block/types.js'
import { leaveName } from '../../sim/pins/leaves.js'
import { canvasRows, newCanvas, put, putRight } from '../draw/canvas.js'
import type { Theme } from '../draw/theme.js'
import { throwLabel } from '../draw/words.js'

const HEADINGS: readonly (readonly [heading: string, end: number])[] = [
  ['', 4],
  ['feet', 11],
  ['target', 19],
  ['arrows', 27],
  ['out to', 35],
]
const CONTACT_COLUMN = 48
const LEAVE_COLUMN = 84

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
  for (const [heading, end] of HEADINGS) putRight(canvas, end, 0, heading, 'faint')
  put(canvas, CONTACT_COLUMN, 0, 'came in', 'faint')
  put(canvas, LEAVE_COLUMN, 0, 'left', 'faint')
  throws
    .slice(-(canvas.rows - 1))
    .reverse()
    .forEach(({ spot, decision, observation, standingAfter }, index) => {
      const row = index + 1
      const ink = index === 0 ? 'plain' : 'faint'
      const { feetBoard, targetBoard } = decision.aim
      putRight(canvas, 4, row, throwLabel(spot), ink)
      putRight(canvas, 11, row, boardWords(feetBoard), ink)
      putRight(canvas, 19, row, boardWords(targetBoard), ink)
      putRight(canvas, 27, row, trimmed(observation.arrowsBoard), ink)
      putRight(canvas, 35, row, trimmed(observation.breakpointBoard), ink)
      put(canvas, 36, row, `at ${trimmed(observation.breakpointFeet)} ft`, ink)
      put(canvas, CONTACT_COLUMN, row, CONTACT_WORDS[observation.contact], ink)
      put(canvas, LEAVE_COLUMN, row, leaveName(standingAfter), ink)
      const place = bag.findIndex((ball) => ball.id === decision.ballId)
      putRight(canvas, columns, row, `ball ${place + 1}`, ink)
    })
  return canvasRows(canvas, theme)
}
