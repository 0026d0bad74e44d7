import { PIN_COUNT, pinBit } from '../../sim/world/pins/leaves.js'
import type { BodyPlace, RackPicture } from '../../sim/world/pins/rack-motion.js'
import { RACK_BALL_RADIUS_METRES } from '../../sim/world/pins/rack-setting.js'
import {
  DECK_END_METRES,
  DECK_HALF_WIDTH_METRES,
  SPOT_DOWN_LANE_METRES,
  SPOT_LEFT_METRES,
} from '../../sim/world/pins/spots.js'
import { type Canvas, put, putRight } from '../draw/canvas.js'
import { DOTS_ACROSS, DOTS_DOWN, type DotLayer, type DotLine, newDotLayer, setDot, stampDots } from '../draw/dots.js'
import type { LaneScale } from '../draw/lane-scale.js'
import type { Theme } from '../draw/theme.js'

/** Before the headpin's spot and behind the deck's end. */
const FRONT_METRES = 0.12
const BACK_METRES = 0.05
const DEPTH_METRES = FRONT_METRES + DECK_END_METRES + BACK_METRES
/** A pin that stands as straight as this, within this much of its spot, is drawn as what it is: standing. */
const UPRIGHT_METRES = 0.012
const OFF_SPOT_METRES = 0.02
const PIN_LINE = { ink: 'strong', dash: 'solid', letter: '*', joins: true } as const
const BALL_LINE = { ink: 'accent', dash: 'solid', letter: '@' } as const

/** Where a place on the deck lies in characters from the deck's corner; x down-lane and y to the left, in metres. */
interface DeckScale {
  readonly across: (downLaneMetres: number) => number
  readonly down: (leftMetres: number) => number
}

function deckScale({ deckColumns, rows }: LaneScale): DeckScale {
  return {
    across: (downLane) => ((downLane + FRONT_METRES) / DEPTH_METRES) * deckColumns,
    down: (left) => ((DECK_HALF_WIDTH_METRES - left) / (2 * DECK_HALF_WIDTH_METRES)) * rows,
  }
}

/**
 * The deck at the lane's far end, seen from above: what stands by its number, what is down by a dot. While pins fall, those on
 * the move lie as the rack engine has them, from base to head, and the ball among them.
 */
export function putDeck(
  canvas: Canvas,
  scale: LaneScale,
  standing: number,
  falling: RackPicture | undefined,
  theme: Theme,
): void {
  const deck = deckScale(scale)
  const spotOf = (pin: number) => ({
    end: scale.deckLeft + Math.floor(deck.across(SPOT_DOWN_LANE_METRES[pin]!)) + 1,
    row: 1 + Math.min(scale.rows - 1, Math.floor(deck.down(SPOT_LEFT_METRES[pin]!))),
  })
  for (let pin = 0; pin < PIN_COUNT; pin++) {
    const { end, row } = spotOf(pin)
    const stands = falling ? standsOnSpot(falling.pins[pin]!, pin) : (standing & pinBit(pin + 1)) !== 0
    if (stands) putRight(canvas, end, row, String(pin + 1), 'strong')
    else put(canvas, end - 1, row, theme.glyphs.pinFelled, 'faint')
  }
  if (falling) putFalling(canvas, scale, deck, falling, theme)
}

function standsOnSpot({ base, head, isGone }: BodyPlace, pin: number): boolean {
  const off = Math.abs(base[0] - SPOT_DOWN_LANE_METRES[pin]!) + Math.abs(base[1] - SPOT_LEFT_METRES[pin]!)
  return !isGone && isUpright({ base, head }) && off < OFF_SPOT_METRES
}

const isUpright = ({ base, head }: Pick<BodyPlace, 'base' | 'head'>): boolean =>
  Math.abs(head[0] - base[0]) + Math.abs(head[1] - base[1]) < UPRIGHT_METRES && head[2] > base[2]

function putFalling(canvas: Canvas, scale: LaneScale, deck: DeckScale, falling: RackPicture, theme: Theme): void {
  const layer = newDotLayer(scale.deckColumns, scale.rows)
  falling.pins.forEach((pin, place) => {
    if (!pin.isGone && !standsOnSpot(pin, place)) drawPin(layer, deck, pin, theme)
  })
  if (!falling.ball.isGone) drawBall(layer, deck, falling.ball)
  stampDots(canvas, scale.deckLeft, 1, layer, theme)
}

/** A pin from base to head as it lies, two dots thick. */
function drawPin(layer: DotLayer, deck: DeckScale, { base, head }: BodyPlace, theme: Theme): void {
  const from = [deck.across(base[0]) * DOTS_ACROSS, deck.down(base[1]) * DOTS_DOWN] as const
  const to = [deck.across(head[0]) * DOTS_ACROSS, deck.down(head[1]) * DOTS_DOWN] as const
  const [wide, high] = [to[0] - from[0], to[1] - from[1]]
  const line = theme.glyphs.braille ? PIN_LINE : { ...PIN_LINE, letter: letterOf(wide, high) }
  const steps = Math.max(1, Math.ceil(Math.max(Math.abs(wide), Math.abs(high))))
  for (let step = 0; step <= steps; step++) {
    const [x, y] = [from[0] + (wide * step) / steps, from[1] + (high * step) / steps]
    const isFlat = Math.abs(wide) >= Math.abs(high)
    dot(layer, x, y, line)
    dot(layer, isFlat ? x : x + 1, isFlat ? y + 1 : y, line)
  }
}

/** A line's direction as a letter; dots are about as wide as high. */
function letterOf(wide: number, high: number): string {
  if (Math.abs(wide) > 2 * Math.abs(high)) return '-'
  if (Math.abs(high) > 2 * Math.abs(wide)) return '|'
  return wide > 0 === high > 0 ? '\\' : '/'
}

function drawBall(layer: DotLayer, deck: DeckScale, { base }: BodyPlace): void {
  const radius = RACK_BALL_RADIUS_METRES
  const [x, y] = [deck.across(base[0]) * DOTS_ACROSS, deck.down(base[1]) * DOTS_DOWN]
  const wide = (deck.across(radius) - deck.across(0)) * DOTS_ACROSS
  const high = (deck.down(0) - deck.down(radius)) * DOTS_DOWN
  for (let column = Math.ceil(x - wide); column <= x + wide; column++) {
    const half = high * Math.sqrt(Math.max(0, 1 - ((column - x) / wide) ** 2))
    for (let row = Math.ceil(y - half); row <= y + half; row++) setDot(layer, column, row, BALL_LINE)
  }
}

const dot = (layer: DotLayer, x: number, y: number, line: DotLine): void =>
  setDot(layer, Math.floor(x), Math.floor(y), line)
