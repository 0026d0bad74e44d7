import { FILM_BOARDS, FILM_ROWS, type OilFilm } from '../lane/film.js'

/** For each film row, how many rows (half feet) a step that starts in its middle may take. */
export type StepTable = Uint8Array

/** When a step of so many rows is short enough. */
export interface StepRule {
  readonly rows: number
  /** How much the film's slope may turn at the middle of any row of the step: kink over film cubed. */
  readonly turn: number
  /** How thick the film must be everywhere in the step. */
  readonly leastMicrons: number
}

/**
 * Steps for a lane as it is: half a foot to a foot and a half, 0.01 board off the exact solution (rms). Rules are tried in
 * order; a step of one row is always allowed, because the film is linear within it.
 */
export const EXACTING_STEPS: readonly StepRule[] = [
  { rows: 3, turn: 0.05, leastMicrons: 1.2 },
  { rows: 2, turn: 0.7, leastMicrons: 0 },
]
/**
 * Steps for one of many lanes as they might be, a foot and a half to three feet: 0.02 board off (rms), far less than two such lanes
 * differ by, for two thirds of the time.
 */
export const EASY_STEPS: readonly StepRule[] = [
  { rows: 6, turn: 0.05, leastMicrons: 2 },
  { rows: 4, turn: 0.2, leastMicrons: 1 },
  { rows: 3, turn: Number.POSITIVE_INFINITY, leastMicrons: 0 },
]
/** Friction answers to a kink as its size over the cube of the film, until the film is this thin. */
const THIN_MICRONS = 0.4

/**
 * Chooses long steps where the oil is thick and even along the lane, short ones where friction is about to change,
 * such as at the end of the oil. Build it anew whenever the film has changed.
 */
export function buildStepTable(film: OilFilm, rules: readonly StepRule[] = EXACTING_STEPS): StepTable {
  const turns = new Float64Array(FILM_ROWS)
  const thinnest = new Float64Array(FILM_ROWS)
  for (let row = 0; row < FILM_ROWS; row++) lookAlongRow(film.microns, row, turns, thinnest)
  const steps = new Uint8Array(FILM_ROWS).fill(1)
  for (let row = 0; row < FILM_ROWS; row++) {
    for (const rule of rules) {
      if (allows(rule, row, turns, thinnest)) {
        steps[row] = rule.rows
        break
      }
    }
  }
  return steps
}

function allows(rule: StepRule, from: number, turns: Float64Array, thinnest: Float64Array): boolean {
  if (from + rule.rows >= FILM_ROWS) return false
  for (let row = from; row <= from + rule.rows; row++) {
    if (turns[row]! > rule.turn || thinnest[row]! < rule.leastMicrons) return false
  }
  return true
}

/** Writes the sharpest turn of the slope at the middle of a row, and its thinnest film, over every other board but the edges. */
function lookAlongRow(microns: Float64Array, row: number, turns: Float64Array, thinnest: Float64Array): void {
  let sharpest = 0
  let thin = Number.POSITIVE_INFINITY
  const hasNeighbours = row > 0 && row < FILM_ROWS - 1
  for (let column = 2; column < FILM_BOARDS - 2; column += 2) {
    const cell = row * FILM_BOARDS + column
    const here = microns[cell]!
    if (here < thin) thin = here
    if (!hasNeighbours) continue
    const kink = Math.abs(microns[cell - FILM_BOARDS]! - 2 * here + microns[cell + FILM_BOARDS]!)
    const floor = Math.max(here, THIN_MICRONS)
    const turn = kink / (floor * floor * floor)
    if (turn > sharpest) sharpest = turn
  }
  turns[row] = sharpest
  thinnest[row] = thin
}
