import { metresToFeet } from '../../sim/units.js'
import { ARROWS, LANE_DOTS } from '../../sim/world/lane/geometry.js'
import { type Canvas, canvasRows, newCanvas, put, putRight } from '../draw/canvas.js'
import { type Dash, DOTS_ACROSS, drawDots, newDotLayer, stampDots } from '../draw/dots.js'
import type { LanePicture, Trace, TraceLook } from '../draw/lane-picture.js'
import { LANE_FEET, type LaneScale, laneScale } from '../draw/lane-scale.js'
import type { Ink, Theme } from '../draw/theme.js'
import { putDeck } from './deck.js'
import { putOil } from './lane-oil.js'

const ARROWS_FEET = 15
const LABEL_END = 3
/** Where a right-hander's ball meets headpin and 3 pin, counted from the bowler's own side, as the trade has it. */
const POCKET_BOARD = 17.5
/** The aim line runs on a little beyond the arrows, as a bowler looks down the lane. */
const AIM_LINE_FEET = 24

/** How each path is drawn; the letters keep clear of the oil's. */
export const TRACE_LINES: Readonly<Record<TraceLook, { ink: Ink; dash: Dash; letter: string }>> = {
  last: { ink: 'last', dash: 'solid', letter: '*' },
  older: { ink: 'older', dash: 'dashed', letter: 'o' },
  oldest: { ink: 'oldest', dash: 'dotted', letter: '.' },
  truth: { ink: 'truth', dash: 'solid', letter: '*' },
  best: { ink: 'best', dash: 'dashed', letter: '=' },
  known: { ink: 'known', dash: 'dotted', letter: '~' },
}
export const AIM_LINE = { ink: 'accent', dash: 'dotted', letter: '+', joins: true } as const

/**
 * The lane on its side: foul line left, pins right, the bowler's left up, so that board 1 lies at the bottom for a
 * right-hander and at the top for a left-hander. Rows: edge, lane, edge, feet.
 * @param columns whole width, with board numbers and deck
 * @param laneRows rows for the 39 boards
 */
export function lanePicture(picture: LanePicture, columns: number, laneRows: number, theme: Theme): string[] {
  const canvas = newCanvas(columns, laneRows + 3)
  const scale = laneScale(picture.hand, columns, laneRows)
  putFrame(canvas, scale, theme)
  if (picture.oil) putOil(canvas, scale, picture.oil, theme)
  putMarkings(canvas, scale, theme)
  putLines(canvas, scale, picture, theme)
  putMarks(canvas, scale, picture, theme)
  putDeck(canvas, scale, picture.standing, picture.falling, theme)
  return canvasRows(canvas, theme)
}

function putFrame(canvas: Canvas, scale: LaneScale, theme: Theme): void {
  const { glyphs } = theme
  const edge = glyphs.edge.repeat(scale.columns)
  put(canvas, scale.left, 0, edge, 'faint')
  put(canvas, scale.left, scale.rows + 1, edge, 'faint')
  for (let row = 1; row <= scale.rows; row++) put(canvas, scale.left - 1, row, glyphs.foulLine, 'faint')
  for (let row = 0; row < scale.rows; row++) putRight(canvas, LABEL_END, row + 1, String(scale.boardOf(row)), 'faint')
  for (let feet = 0; feet <= LANE_FEET; feet += 10) {
    const label = feet === 0 ? '0 ft' : String(feet)
    const column = feet === 0 ? scale.left : scale.columnOf(feet) - (feet === LANE_FEET ? 1 : 0)
    put(canvas, column, scale.rows + 2, label, 'faint')
  }
  put(canvas, scale.deckLeft - 1, scale.rowOf(POCKET_BOARD), glyphs.pocket, 'accent')
  put(canvas, scale.deckLeft + 1, scale.rows + 2, glyphs.pocket, 'accent')
  put(canvas, scale.deckLeft + 3, scale.rows + 2, 'pocket', 'faint')
}

function putMarkings(canvas: Canvas, scale: LaneScale, theme: Theme): void {
  for (const { board, metres } of LANE_DOTS) {
    put(canvas, scale.columnOf(metresToFeet(metres)), scale.rowOf(board), theme.glyphs.dot, 'faint')
  }
  for (const { board, metres } of ARROWS) {
    put(canvas, scale.columnOf(metresToFeet(metres)), scale.rowOf(board), theme.glyphs.arrow, 'faint')
  }
}

function putLines(canvas: Canvas, scale: LaneScale, picture: LanePicture, theme: Theme): void {
  const layer = newDotLayer(scale.columns, scale.rows)
  const dots = scale.columns * DOTS_ACROSS
  const feetAt = (dot: number) => ((dot + 0.5) / dots) * LANE_FEET
  const heights = (boardAt: (feet: number) => number, endFeet: number) =>
    Float64Array.from({ length: Math.ceil((endFeet / LANE_FEET) * dots) }, (_, dot) =>
      scale.dotOf(boardAt(feetAt(dot))),
    )

  for (const trace of picture.traces) {
    drawDots(
      layer,
      0,
      heights((feet) => boardOnTrace(trace, feet), LANE_FEET),
      TRACE_LINES[trace.look],
    )
  }
  const { aim } = picture
  if (aim) {
    const slope = (aim.targetBoard - aim.laydownBoard) / ARROWS_FEET
    drawDots(
      layer,
      0,
      heights((feet) => aim.laydownBoard + slope * feet, AIM_LINE_FEET),
      AIM_LINE,
    )
  }
  stampDots(canvas, scale.left, 1, layer, theme)
}

/** Board of a trace at a distance, between its points by a straight line; NaN beyond its ends. */
export function boardOnTrace(trace: Trace, feet: number): number {
  const place = (feet - trace.firstFeet) / trace.stepFeet
  // Half a step before the first point and after the last still belongs to them.
  const inside = Math.min(Math.max(place, 0), trace.boards.length - 1)
  if (Math.abs(place - inside) > 1) return Number.NaN
  const before = Math.floor(inside)
  const from = trace.boards[before]!
  const share = inside - before
  return share === 0 ? from : from + (trace.boards[before + 1]! - from) * share
}

function putMarks(canvas: Canvas, scale: LaneScale, picture: LanePicture, theme: Theme): void {
  const { aim, breakpoint, balls = [] } = picture
  if (breakpoint)
    put(canvas, scale.columnOf(breakpoint.feet), scale.rowOf(breakpoint.board), theme.glyphs.breakpoint, 'strong')
  if (aim) put(canvas, scale.columnOf(ARROWS_FEET), scale.rowOf(aim.targetBoard), theme.glyphs.target, 'accent')
  for (const ball of balls)
    put(canvas, scale.columnOf(ball.feet), scale.rowOf(ball.board), theme.glyphs.ball, TRACE_LINES[ball.look].ink)
}
