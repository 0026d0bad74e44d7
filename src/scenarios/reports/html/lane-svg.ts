import { LANE_WIDTH_METRES, metresToBoard, metresToFeet } from '../../../sim/units.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../../../sim/world/lane/film.js'
import { SPOT_DOWN_LANE_METRES, SPOT_LEFT_METRES } from '../../../sim/world/pins/spots.js'
import { escaped } from './escaped.js'

const HALF_FEET_A_CELL = 2
const HALF_FOOT_WIDTH = 7
const BOARD_HEIGHT = 6
const LEFT = 52
const BOTTOM = 40
const FEET_BELOW = 32
const TOP = 8
const WIDTH = FILM_ROWS * HALF_FOOT_WIDTH
const HEIGHT = FILM_BOARDS * BOARD_HEIGHT
const PIN_ROOM = 52
const SHADES = 10
/** The fullest oil lets the wood through, so that paths over it keep a contrast of 3:1 by day and by night. */
export const FULLEST_OIL = 0.55
const THINNEST_SHARE = 0.02
const ARROWS_FEET = 15
const TOLD_BOARDS = [10, 20, 30]

/**
 * A lane on its side as its bowler sees it: foul line left, board 1 of the bowler's own side at the bottom; oil as shades of one
 * colour with `thickest` micrometres the fullest, throws as lines over it, whole for strikes and broken for the rest.
 *
 * @param film from the bowler's own side
 */
export function laneSvg(film: OilFilm, thickest: number, throws: readonly ThrowRecord[], title: string): string {
  return [
    `<svg viewBox="0 0 ${LEFT + WIDTH + PIN_ROOM} ${TOP + HEIGHT + BOTTOM}" role="img" aria-label="${escaped(title)}">`,
    `<rect x="${LEFT}" y="${TOP}" width="${WIDTH + PIN_ROOM}" height="${HEIGHT}" class="wood"/>`,
    ...oilShades(film, thickest),
    ...guides(),
    ...throws.map(pathLine),
    ...pins(),
    ...numbers(throws),
    '</svg>',
  ].join('')
}

const xOf = (feet: number): number => LEFT + feet * 2 * HALF_FOOT_WIDTH
const yOf = (board: number): number => Number((TOP + HEIGHT - (board - 0.5) * BOARD_HEIGHT).toFixed(1))

/** One path a shade, cells of equal shade along a board run together: small enough to send, whole in print. */
function oilShades(film: OilFilm, thickest: number): string[] {
  const runs = Array.from({ length: SHADES + 1 }, () => '')
  const cells = FILM_ROWS / HALF_FEET_A_CELL
  const width = HALF_FOOT_WIDTH * HALF_FEET_A_CELL
  for (let board = 1; board <= FILM_BOARDS; board++) {
    for (let from = 0; from < cells; ) {
      const shade = shadeAt(film, board, from, thickest)
      let to = from + 1
      while (to < cells && shadeAt(film, board, to, thickest) === shade) to++
      if (shade > 0) {
        const y = TOP + HEIGHT - board * BOARD_HEIGHT
        runs[shade] += `M${LEFT + from * width} ${y}h${(to - from) * width}v${BOARD_HEIGHT}h-${(to - from) * width}z`
      }
      from = to
    }
  }
  return runs.flatMap((run, shade) =>
    run === '' ? [] : [`<path d="${run}" class="oil" opacity="${((FULLEST_OIL * shade) / SHADES).toFixed(3)}"/>`],
  )
}

function shadeAt(film: OilFilm, board: number, cell: number, thickest: number): number {
  let sum = 0
  for (let half = cell * HALF_FEET_A_CELL; half < (cell + 1) * HALF_FEET_A_CELL; half++) {
    sum += film.microns[half * FILM_BOARDS + board - 1]
  }
  const share = sum / HALF_FEET_A_CELL / thickest
  return share < THINNEST_SHARE ? 0 : Math.min(SHADES, Math.max(1, Math.ceil(share * SHADES)))
}

function guides(): string[] {
  const feet = Array.from({ length: 7 }, (_, ten) => ten * 10)
  return [
    `<line x1="${xOf(ARROWS_FEET)}" x2="${xOf(ARROWS_FEET)}" y1="${TOP}" y2="${TOP + HEIGHT}" class="guide"/>`,
    `<text x="${xOf(ARROWS_FEET)}" y="${TOP + HEIGHT + FEET_BELOW}" text-anchor="middle">15</text>`,
    ...feet.map(
      (at) =>
        `<text x="${xOf(at)}" y="${TOP + HEIGHT + FEET_BELOW}" text-anchor="middle">${at}${at === 60 ? ' ft' : ''}</text>`,
    ),
    ...TOLD_BOARDS.map((board) => `<text x="${LEFT - 6}" y="${yOf(board) + 9}" text-anchor="end">${board}</text>`),
  ]
}

function pins(): string[] {
  return SPOT_LEFT_METRES.map((left, index) => {
    const x = LEFT + WIDTH + (metresToFeet(SPOT_DOWN_LANE_METRES[index]) * 2 + 0.5) * HALF_FOOT_WIDTH
    const y = yOf(metresToBoard(LANE_WIDTH_METRES / 2 + left))
    return `<circle cx="${x.toFixed(1)}" cy="${y}" r="5" class="pin"/>`
  })
}

function pathLine({ truth, standingAfter }: ThrowRecord): string {
  const points: string[] = []
  for (let row = 0; row < FILM_ROWS; row += 2) {
    if (Number.isNaN(truth.path[row])) continue
    const x = LEFT + (row + 0.5) * HALF_FOOT_WIDTH
    points.push(`${x.toFixed(1)},${yOf(metresToBoard(truth.path[row]))}`)
  }
  return `<polyline points="${points.join(' ')}" class="throw${standingAfter === 0 ? ' struck' : ''}"/>`
}

const FIRST_NUMBERED_FEET = 18
const LAST_NUMBERED_FEET = 54
/** A game's first balls; more numbers than that cover the lane. */
const MOST_NUMBERED = 12
const NUMBER_BELOW = 9

/**
 * The frame of each path on it, with its ball where the picture has several of one frame; each at feet of its own, so that no two lie on
 * one another, those that end early first.
 */
function numbers(throws: readonly ThrowRecord[]): string[] {
  if (throws.length > MOST_NUMBERED) return []
  const name = numberOf(throws)
  const step = (LAST_NUMBERED_FEET - FIRST_NUMBERED_FEET) / Math.max(1, throws.length)
  return throws
    .map(({ truth, spot }) => ({
      spot,
      path: truth.path,
      lastRow: truth.path.findLastIndex((metres) => !Number.isNaN(metres)),
    }))
    .sort((one, other) => one.lastRow - other.lastRow)
    .flatMap(({ spot, path, lastRow }, place) => {
      if (lastRow < 0) return []
      const row = Math.min(lastRow, Math.round(2 * (FIRST_NUMBERED_FEET + (place + 0.5) * step)))
      const x = LEFT + (row + 0.5) * HALF_FOOT_WIDTH
      const y = yOf(metresToBoard(path[row]!)) + NUMBER_BELOW
      return `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" class="number" text-anchor="middle">${name(spot)}</text>`
    })
}

/** The frame, with its game before it and its ball behind it where frame alone does not tell them apart. */
function numberOf(throws: readonly ThrowRecord[]): (spot: ThrowRecord['spot']) => string {
  const severalGames = new Set(throws.map(({ spot }) => spot.game)).size > 1
  const severalBalls = new Set(throws.map(({ spot }) => `${spot.game}-${spot.frame}`)).size < throws.length
  return ({ game, frame, ball }) => `${severalGames ? `${game}-` : ''}${frame}${severalBalls ? `.${ball}` : ''}`
}
