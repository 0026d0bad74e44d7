import { LANE_WIDTH_METRES } from '../../sim/units.js'
import { pinSpot } from '../../sim/world/lane/geometry.js'
import { type Canvas, canvasRows, newCanvas, put } from '../draw/canvas.js'
import type { Theme } from '../draw/theme.js'

const PINS = 10
/** Back row first, as the bowler sees them, left to right. */
const SEEN_ROWS: readonly (readonly number[])[] = [[7, 8, 9, 10], [4, 5, 6], [2, 3], [1]]
const RACK_ROWS = SEEN_ROWS.length
const RACK_COLUMNS = 15

const isStanding = (mask: number, pin: number): boolean => ((mask >> (pin - 1)) & 1) === 1

/** The rack as seen from the foul line: numbers for what stands, dots for what is down. */
export function rackRows(standing: number, theme: Theme): string[] {
  const canvas = newCanvas(RACK_COLUMNS, RACK_ROWS)
  SEEN_ROWS.forEach((pins, row) => {
    pins.forEach((pin, place) => {
      const x = 2 * row + 4 * place
      if (isStanding(standing, pin)) put(canvas, x, row, String(pin).padStart(2), 'strong')
      else put(canvas, x, row, ` ${theme.glyphs.pinFelled}`, 'faint')
    })
  })
  return canvasRows(canvas, theme)
}

/** The deck at the lane's far end, seen from above: two columns a row of pins, pins on their own boards. */
export function putDeck(canvas: Canvas, x: number, y: number, rows: number, standing: number, theme: Theme): void {
  const headpinMetres = pinSpot(1).metres
  const rowMetres = (pinSpot(7).metres - headpinMetres) / 3
  for (let pin = 1; pin <= PINS; pin++) {
    const { metres, lateralMetres } = pinSpot(pin)
    const column = x + 1 + 2 * Math.round((metres - headpinMetres) / rowMetres)
    const row = y + Math.min(rows - 1, Math.floor((1 - lateralMetres / LANE_WIDTH_METRES) * rows))
    if (isStanding(standing, pin)) put(canvas, column, row, theme.glyphs.pinStanding, 'strong')
    else put(canvas, column, row, theme.glyphs.pinFelled, 'faint')
  }
}
