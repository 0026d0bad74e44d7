import { boardToMetres, feetToMetres } from '../../units.js'
import {
  ARROWS_METRES,
  deliverInto,
  intendedLaunch,
  meantThrow,
  type ScratchLaunch,
  scratchLaunch,
  straightToArrows,
} from '../../world/bowler/release.js'
import { knownLineNodes, unseenLineNodes } from './delivery-nodes.js'
import { type Cell, chanceWithin, type SeenCells } from './seen-cells.js'
import type { ShownLine, ShownThrow } from './shown.js'

/**
 * What may have left the hand, given where the ball was seen at the arrows and how fast it arrived. Both depend a little
 * on the oil: it turns the ball by a drift before the arrows and slows it by a loss before the pins.
 */
export interface Deliveries {
  /** A throw to measure a film's drift and loss with. */
  readonly probe: ScratchLaunch
  /** Chance of the seen arrows board and speed on a film with that drift (metres to the left) and loss (m/s). */
  readonly chanceOf: (driftMetres: number, lossMetresPerSecond: number) => number
  /** The throws that agree with what was seen, equally likely, for that drift and loss. */
  readonly nodesFor: (driftMetres: number, lossMetresPerSecond: number) => ScratchLaunch[]
  /** Parts that the way from one of them to the next is divided into: what lies between is as likely as they are. */
  readonly between: number
}

/** Spreads below these are taken for these: nobody sees that sharply. */
const LEAST_ARROWS_METRES = 0.002
const LEAST_SPEED = 0.01

export function deliveriesOf(shown: ShownThrow, cells: SeenCells): Deliveries {
  return shown.line ? ofKnownLine(shown, shown.line, cells) : ofUnseenLine(shown, cells)
}

const middle = (cell: Cell): number => (cell.from + cell.to) / 2

const inMetres = (cell: Cell): Cell => ({ from: boardToMetres(cell.from), to: boardToMetres(cell.to) })

/**
 * With the aim known, the five misses of a delivery are normal numbers: given the place at the arrows and the speed, what
 * is left open is how laydown and angle shared the miss, the spin and the rotation.
 */
function ofKnownLine({ bowler }: ShownThrow, { aim, release }: ShownLine, cells: SeenCells): Deliveries {
  const meantLine = meantThrow(bowler, aim, release)
  const meant = intendedLaunch(bowler, aim, release)
  const meantArrows = straightToArrows(meant)
  const moved = scratchLaunch()
  const perNormal = (index: number, read: (launch: ScratchLaunch) => number): number => {
    deliverInto(
      moved,
      meantLine,
      [0, 1, 2, 3, 4].map((i) => (i === index ? 1 : 0)),
    )
    return read(moved) - read(meant)
  }
  const byLaydown = perNormal(0, straightToArrows)
  const byAngle = perNormal(1, straightToArrows)
  const bySpeed = perNormal(2, (launch) => launch.speedMetresPerSecond)
  const arrowsSpread = Math.max(LEAST_ARROWS_METRES, Math.sqrt(byLaydown * byLaydown + byAngle * byAngle))
  const speedSpread = Math.max(LEAST_SPEED, Math.abs(bySpeed))
  const arrows = inMetres(cells.arrowsBoard)
  const speedSeen = middle(cells.speedMetresPerSecond)
  return {
    probe: meant,
    chanceOf: (drift, loss) =>
      chanceWithin(arrows, meantArrows + drift, arrowsSpread) *
      chanceWithin(cells.speedMetresPerSecond, meant.speedMetresPerSecond - loss, speedSpread),
    nodesFor: (drift, loss) =>
      knownLineNodes.nodes.map((node) => {
        const miss = arrows.from + (arrows.to - arrows.from) * node.shareOfCell - drift - meantArrows
        const along = miss / arrowsSpread
        const across = node.acrossArrows
        const laydown = (along * byLaydown - across * byAngle) / arrowsSpread
        const angle = (along * byAngle + across * byLaydown) / arrowsSpread
        const speed = (speedSeen + loss - meant.speedMetresPerSecond) / speedSpread
        const launch = scratchLaunch()
        deliverInto(launch, meantLine, [laydown, angle, speed, node.spin, node.rotation])
        return launch
      }),
    between: knownLineNodes.between,
  }
}

/**
 * How a path bends between arrows and breakpoint: its slope at the arrows against the mean slope between the two. Wider
 * than any oil bends it, since oil would be ruled out whose own slope were not tried.
 */
const BEND: readonly [number, number] = [0.5, 3.5]
const ARROWS_FEET = 15
/** Where the ball never swung out, its slope at the arrows, to the left. */
const INWARD_SLOPE: readonly [number, number] = [-0.004, 0.03]
const LEAST_SWING_FEET = 4

/**
 * With the aim untold, any direction is as likely as any other; those are tried that could have led from the board seen
 * at the arrows to the breakpoint seen.
 */
function ofUnseenLine({ bowler, observation }: ShownThrow, cells: SeenCells): Deliveries {
  const { strike, error } = bowler
  const arrows = inMetres(cells.arrowsBoard)
  const speedSeen = middle(cells.speedMetresPerSecond)
  const speedSpread = Math.sqrt(
    error.speedMetresPerSecond * error.speedMetresPerSecond +
      bowler.speedStepMetresPerSecond * bowler.speedStepMetresPerSecond,
  )
  const slopes = slopesBetween(observation.arrowsBoard, observation.breakpointBoard, observation.breakpointFeet)
  const anyLine = meantThrow(bowler, { feetBoard: 20, targetBoard: 15, speedStep: 0 }, 'strike')
  const launchAt = (place: number, slope: number, speed: number, spin: number, rotation: number): ScratchLaunch => {
    const launch = scratchLaunch()
    deliverInto(launch, anyLine, [0, 0, 0, spin, rotation])
    const length = Math.sqrt(1 + slope * slope)
    launch.directionX = 1 / length
    launch.directionY = slope / length
    launch.lateralMetres = place - slope * (ARROWS_METRES - launch.startMetres)
    launch.speedMetresPerSecond = speed
    return launch
  }
  const middleSlope = (slopes[0] + slopes[1]) / 2
  return {
    probe: launchAt(middle(arrows), middleSlope, strike.speedMetresPerSecond, 0, 0),
    chanceOf: (_, loss) =>
      chanceWithin(cells.speedMetresPerSecond, strike.speedMetresPerSecond - loss, Math.max(LEAST_SPEED, speedSpread)),
    nodesFor: (drift, loss) =>
      unseenLineNodes.nodes.map((node, k, { length }) =>
        launchAt(
          arrows.from + (arrows.to - arrows.from) * node.shareOfCell - drift,
          slopes[0] + ((slopes[1] - slopes[0]) * k) / (length - 1),
          speedSeen + loss,
          node.spin,
          node.rotation,
        ),
      ),
    between: unseenLineNodes.between,
  }
}

function slopesBetween(
  arrowsBoard: number,
  breakpointBoard: number,
  breakpointFeet: number,
): readonly [number, number] {
  if (breakpointFeet < ARROWS_FEET + LEAST_SWING_FEET) return INWARD_SLOPE
  const away = feetToMetres(breakpointFeet - ARROWS_FEET)
  const mean = (boardToMetres(breakpointBoard) - boardToMetres(arrowsBoard)) / away
  const slack = (boardToMetres(1) - boardToMetres(0)) / away
  const ends = [mean * BEND[0], mean * BEND[1]]
  return [Math.min(...ends) - slack, Math.max(...ends) + slack]
}
