import { metresToFeet } from '../../sim/units.js'
import type { Hand } from '../../sim/world/bowler/profile.js'
import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../../sim/world/lane/film.js'
import { ARROWS, LANE_DOTS } from '../../sim/world/lane/geometry.js'
import { type Canvas, canvasRows, ground, newCanvas, put, putRight } from '../draw/canvas.js'
import { type Dash, DOTS_ACROSS, DOTS_DOWN, drawDots, newDotLayer, stampDots } from '../draw/dots.js'
import { type Ink, OIL_LEVELS, type Theme } from '../draw/theme.js'
import { putDeck } from './rack.js'

export const LANE_FEET = 60
const ARROWS_FEET = 15
const LABEL_COLUMNS = 3
const DECK_COLUMNS = 9
/** Film at which the ramp is full. */
const FULL_RAMP_MICRONS = 4
/** The aim line runs on a little beyond the arrows, as a bowler looks down the lane. */
const AIM_LINE_FEET = 24

export type TraceLook = 'last' | 'older' | 'oldest' | 'truth' | 'best' | 'known'

/** A path down the lane: boards from the bowler's own side at equal steps of distance; NaN where there is none. */
export interface Trace {
  readonly boards: ArrayLike<number>
  readonly firstFeet: number
  readonly stepFeet: number
  readonly look: TraceLook
}

/** A path as the simulator tells it: boards at the middle of each half foot. */
export const pathTrace = (boards: ArrayLike<number>, look: TraceLook): Trace => ({
  boards,
  firstFeet: 0.25,
  stepFeet: 0.5,
  look,
})

/** Everything the lane's picture shows. Boards count from the bowler's own side; the film lies as the lane does. */
export interface LanePicture {
  readonly hand: Hand
  readonly standing: number
  readonly traces: readonly Trace[]
  readonly aim?: { readonly laydownBoard: number; readonly targetBoard: number }
  readonly breakpoint?: { readonly board: number; readonly feet: number }
  /** Balls on their way, each in the ink of its path. */
  readonly balls?: readonly { readonly board: number; readonly feet: number; readonly look: TraceLook }[]
  readonly oil?: OilFilm
}

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
  putDeck(canvas, scale.left + scale.columns + 1, 1, laneRows, picture.standing, theme)
  return canvasRows(canvas, theme)
}

interface LaneScale {
  readonly left: number
  readonly columns: number
  readonly rows: number
  readonly columnOf: (feet: number) => number
  readonly rowOf: (board: number) => number
  readonly dotOf: (board: number) => number
}

function laneScale(hand: Hand, columns: number, rows: number): LaneScale {
  const left = LABEL_COLUMNS + 1
  const laneColumns = columns - left - 1 - DECK_COLUMNS
  const fromTop = (board: number) => (hand === 'right' ? FILM_BOARDS + 0.5 - board : board - 0.5) / FILM_BOARDS
  const within = (value: number, size: number) => Math.min(size - 1, Math.max(0, Math.floor(value)))
  return {
    left,
    columns: laneColumns,
    rows,
    columnOf: (feet) => left + within((feet / LANE_FEET) * laneColumns, laneColumns),
    rowOf: (board) => 1 + within(fromTop(board) * rows, rows),
    dotOf: (board) => fromTop(board) * rows * DOTS_DOWN - 0.5,
  }
}

function putFrame(canvas: Canvas, scale: LaneScale, theme: Theme): void {
  const { glyphs } = theme
  const edge = glyphs.edge.repeat(scale.columns)
  put(canvas, scale.left, 0, edge, 'faint')
  put(canvas, scale.left, scale.rows + 1, edge, 'faint')
  for (let row = 1; row <= scale.rows; row++) put(canvas, scale.left - 1, row, glyphs.foulLine, 'faint')
  for (let board = 5; board < FILM_BOARDS; board += 5)
    putRight(canvas, LABEL_COLUMNS, scale.rowOf(board), String(board), 'faint')
  for (let feet = 0; feet <= LANE_FEET; feet += 10) {
    const label = feet === 0 ? '0 ft' : String(feet)
    const column = feet === 0 ? scale.left : scale.columnOf(feet) - (feet === LANE_FEET ? 1 : 0)
    put(canvas, column, scale.rows + 2, label, 'faint')
  }
}

function putOil(canvas: Canvas, scale: LaneScale, film: OilFilm, theme: Theme): void {
  for (let column = 0; column < scale.columns; column++) {
    for (let row = 0; row < scale.rows; row++) {
      const level = oilLevel(meanFilm(film, column, row, scale))
      if (level === 0) continue
      if (theme.colouredGround) ground(canvas, scale.left + column, 1 + row, level)
      else put(canvas, scale.left + column, 1 + row, theme.glyphs.oil[level]!, 'older')
    }
  }
}

/** Mean film under one character of the picture, which shows the lane from above: board 39 of a right-hander is up. */
function meanFilm(film: OilFilm, column: number, row: number, scale: LaneScale): number {
  const lengthwise = FILM_ROWS / scale.columns
  const crosswise = FILM_BOARDS / scale.rows
  const fromTop = scale.rows - 1 - row
  return meanOver(
    film,
    [column * lengthwise, (column + 1) * lengthwise],
    [fromTop * crosswise, (fromTop + 1) * crosswise],
  )
}

/** Mean over a rectangle given in film rows and boards from the right edge; cells at its rim count by their part inside. */
function meanOver(film: OilFilm, rows: readonly [number, number], boards: readonly [number, number]): number {
  let sum = 0
  for (let row = Math.floor(rows[0]); row < Math.min(FILM_ROWS, rows[1]); row++) {
    const rowPart = Math.min(row + 1, rows[1]) - Math.max(row, rows[0])
    for (let board = Math.floor(boards[0]); board < Math.min(FILM_BOARDS, boards[1]); board++) {
      const boardPart = Math.min(board + 1, boards[1]) - Math.max(board, boards[0])
      sum += rowPart * boardPart * film.microns[row * FILM_BOARDS + board]!
    }
  }
  return sum / ((rows[1] - rows[0]) * (boards[1] - boards[0]))
}

/** Level of the ramp for a film: 0 below what a finger would feel, then by the square root, which spreads the thin end. */
export function oilLevel(microns: number): number {
  if (microns < 0.02) return 0
  return Math.min(OIL_LEVELS, 1 + Math.floor((OIL_LEVELS - 1) * Math.sqrt(microns / FULL_RAMP_MICRONS)))
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
