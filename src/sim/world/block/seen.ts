import { metresPerSecondToMph } from '../../units.js'
import type { Contact, Observation, SeeingRules, Truth } from './types.js'

const HEADPIN_FEET = 60
const ARROWS_FEET = 15

/**
 * Where each call begins, counted in boards from the bowler's own side, for a ball as it crosses the headpin's row.
 * The outer two are geometry (ball and pin touch within 6.67 in of the headpin's centre); the others are common
 * practice, no source.
 */
const CALLS: readonly (readonly [number, Contact])[] = [
  [13.73, 'missed'],
  [16.6, 'light'],
  [18.4, 'pocket'],
  [19.5, 'high'],
  [20.5, 'nose'],
  [26.27, 'crossover'],
]

/** A board to draw a ball at the pins by, when only the call is known. */
const CALLED_BOARD: Readonly<Record<Exclude<Contact, 'gutter'>, number>> = {
  missed: 12.5,
  light: 16,
  pocket: 17.5,
  high: 19,
  nose: 20,
  crossover: 22.5,
  past: 28,
}

/** The call for a ball that crosses the headpin's row at a board counted from the bowler's own side. */
export function callContact(entryBoard: number): Contact {
  for (const [upTo, contact] of CALLS) if (entryBoard < upTo) return contact
  return 'past'
}

/** What the eye tells of a throw; the only thing the screen, the plain mode and the grader may learn from it. */
export function observe(truth: Truth, arrowsBoard: number, standing: number, rules: SeeingRules): Observation {
  return {
    arrowsBoard: roundTo(arrowsBoard, rules.arrowsBoardStep),
    breakpointBoard: roundTo(truth.breakpointBoard, rules.breakpointBoardStep),
    breakpointFeet: Math.min(HEADPIN_FEET, roundTo(truth.breakpointFeet, rules.breakpointFeetStep)),
    contact: truth.leftLaneFeet < HEADPIN_FEET ? 'gutter' : callContact(truth.entryBoard),
    speedMph: roundTo(metresPerSecondToMph(truth.entrySpeedMetresPerSecond), rules.speedMphStep),
    standing,
  }
}

/**
 * The path as memory keeps it: 61 boards, one a foot from the foul line to the headpin, drawn from what was seen and
 * from nothing else.
 */
export function sketchPath(observation: Observation, laydownBoard: number): number[] {
  const { arrowsBoard, breakpointBoard, breakpointFeet, contact } = observation
  const turn = Math.max(ARROWS_FEET + 1, breakpointFeet)
  const end = contact === 'gutter' ? (breakpointBoard < 20 ? 0 : 40) : CALLED_BOARD[contact]
  return Array.from({ length: HEADPIN_FEET + 1 }, (_, feet) => {
    if (feet <= ARROWS_FEET) return laydownBoard + ((arrowsBoard - laydownBoard) * feet) / ARROWS_FEET
    if (feet <= turn) {
      const left = (turn - feet) / (turn - ARROWS_FEET)
      return breakpointBoard + (arrowsBoard - breakpointBoard) * left * left
    }
    const gone = (feet - turn) / Math.max(1, HEADPIN_FEET - turn)
    return breakpointBoard + (end - breakpointBoard) * gone * gone
  })
}

function roundTo(value: number, step: number): number {
  const parts = Math.round(1 / step)
  return step >= 1 ? Math.round(value / step) * step : Math.round(value * parts) / parts
}
