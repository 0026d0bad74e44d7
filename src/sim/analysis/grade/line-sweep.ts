import { metresToBoards } from '../../units.js'
import type { BallDynamics } from '../../world/ball/dynamics.js'
import type { BowlerProfile } from '../../world/bowler/profile.js'
import type { ImaginedLanes } from '../belief/imagined-lanes.js'
import { type PricedLine, SPEED_STEPS, valuingFor } from '../shots/best-line.js'
import {
  FIRST_LAYDOWN_BOARD,
  FIRST_SWING_BOARDS,
  OFFERED_LAYDOWN_BOARDS,
  OFFERED_SWING_BOARDS,
  OFFERED_TARGET_BOARDS,
  SWING_STEP_BOARDS,
} from '../shots/line-grid.js'
import { isNear, type LineSurface, newLineSurface, rollLines } from '../shots/line-surface.js'
import { expectedWorth, roughWorth } from '../shots/line-value.js'
import type { Pricing } from '../value/pricing.js'

/** A line of the sweep, in the trade's terms. */
export interface SweptLine {
  readonly feetBoard: number
  readonly targetBoard: number
  readonly laydown: number
  readonly swing: number
}

/** Every line and speed of one ball with its mean worth over some imagined lanes; `worth` runs line by line, speed by speed. */
export interface BallSweep {
  readonly ballIndex: number
  readonly worth: Float64Array
}

/** The lines a sweep looks at: feet by whole boards, targets by half boards. */
export function sweptLines(profile: BowlerProfile): readonly SweptLine[] {
  const slide = metresToBoards(profile.slideToLaydownMetres)
  const lines: SweptLine[] = []
  const first = Math.ceil(OFFERED_LAYDOWN_BOARDS[0] + slide)
  for (let feetBoard = first; feetBoard <= OFFERED_LAYDOWN_BOARDS[1] + slide; feetBoard++) {
    const laydownBoard = feetBoard - slide
    const from = Math.max(OFFERED_TARGET_BOARDS[0], Math.ceil((laydownBoard + OFFERED_SWING_BOARDS[0]) * 2) / 2)
    const to = Math.min(OFFERED_TARGET_BOARDS[1], laydownBoard + OFFERED_SWING_BOARDS[1])
    for (let targetBoard = from; targetBoard <= to; targetBoard += 0.5)
      lines.push({
        feetBoard,
        targetBoard,
        laydown: laydownBoard - FIRST_LAYDOWN_BOARD,
        swing: (targetBoard - laydownBoard - FIRST_SWING_BOARDS) / SWING_STEP_BOARDS,
      })
  }
  return lines
}

/** Lanes after which a ball that trails the best by more than this is left out of the rest of the race. */
const RACE_AFTER = 2
const OUT_OF_THE_RACE_PINS = 2.5

export interface Sweep {
  readonly balls: readonly BallSweep[]
  /** The best line on each of the lanes by itself: what one might want to change to once the lane is known better. */
  readonly bestOnEachLane: readonly PricedLine[]
}

/**
 * Mean worth of every swept line of every ball over imagined lanes. Balls that trail far behind after the first few
 * lanes keep the mean they have.
 */
export function sweepLines(
  lanes: ImaginedLanes,
  bag: readonly BallDynamics[],
  profile: BowlerProfile,
  pricing: Pricing,
  lines: readonly SweptLine[],
): Sweep {
  const surface = newLineSurface()
  const onLane = new Float64Array(lines.length * SPEED_STEPS.length)
  const sums = bag.map(() => new Float64Array(onLane.length))
  const seen = bag.map(() => 0)
  let racing = bag.map((_, index) => index)
  const bestOnEachLane = lanes.map((lane, at) => {
    if (at === RACE_AFTER) {
      const best = bag.map((_, index) => sums[index].reduce((most, sum) => Math.max(most, sum), -Infinity) / RACE_AFTER)
      const leader = best.reduce((most, worth) => Math.max(most, worth), -Infinity)
      racing = racing.filter((index) => best[index] >= leader - OUT_OF_THE_RACE_PINS)
    }
    let ballIndex = racing[0]
    let place = 0
    let most = -Infinity
    for (const index of racing) {
      rollLines(lane.film, lane.steps, bag[index], profile, surface, 'filled-in')
      writeWorths(surface, profile, pricing, lines, onLane)
      for (let k = 0; k < onLane.length; k++) {
        sums[index][k] += onLane[k]
        if (onLane[k] <= most) continue
        most = onLane[k]
        place = k
        ballIndex = index
      }
      seen[index]++
    }
    return pricedLine(ballIndex, lines, place, most)
  })
  const balls = sums.map((worth, ballIndex) => ({ ballIndex, worth: worth.map((sum) => sum / seen[ballIndex]) }))
  return { balls, bestOnEachLane }
}

function writeWorths(
  surface: LineSurface,
  profile: BowlerProfile,
  pricing: Pricing,
  lines: readonly SweptLine[],
  worths: Float64Array,
): void {
  const valuings = SPEED_STEPS.map((_, step) => valuingFor(profile, pricing, step))
  for (let at = 0; at < lines.length; at++) {
    const { laydown, swing } = lines[at]
    const near = isNear(surface, Math.round(laydown), Math.round(swing))
    for (let step = 0; step < SPEED_STEPS.length; step++)
      worths[at * SPEED_STEPS.length + step] = near
        ? expectedWorth(surface, laydown, swing, SPEED_STEPS[step], valuings[step])
        : roughWorth(surface, laydown, swing, valuings[step])
  }
}

/** The `count` best lines of a sweep, best first. */
export function bestOfSweep(sweep: BallSweep, lines: readonly SweptLine[], count: number): PricedLine[] {
  const order = Array.from(sweep.worth.keys())
    .sort((a, b) => sweep.worth[b] - sweep.worth[a] || a - b)
    .slice(0, count)
  return order.map((at) => pricedLine(sweep.ballIndex, lines, at, sweep.worth[at]))
}

function pricedLine(ballIndex: number, lines: readonly SweptLine[], place: number, worth: number): PricedLine {
  const { feetBoard, targetBoard } = lines[Math.floor(place / SPEED_STEPS.length)]
  return { ballIndex, aim: { feetBoard, targetBoard, speedStep: SPEED_STEPS[place % SPEED_STEPS.length] }, worth }
}
