import { metresPerSecondToMph, metresToBoard, metresToFeet } from '../../src/sim/units.js'
import type { BallSpecification } from '../../src/sim/world/ball/specification.js'
import { filmVolumeMicrolitres } from '../../src/sim/world/lane/film.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import {
  entryBoard,
  entryDegrees,
  exitBoard,
  inGutter,
  type OiledLane,
  oiledLane,
  type PricedLine,
  pricedLines,
  rollOn,
} from '../sim/world/ball/lines-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/world/lane/patterns-for-tests.js'

const feet = (metres: number): string => (metres === Number.POSITIVE_INFINITY ? '-' : metresToFeet(metres).toFixed(0))

function describeLine(lane: OiledLane, ball: BallSpecification, line: PricedLine): string {
  const exit = exitBoard(lane, ball, line)
  const roll = rollOn(lane, ball, line)
  const figures = [
    `lay ${line.laydown} over ${line.target}`.padEnd(17),
    `value ${line.value.toFixed(2)} pocket ${(100 * line.pocketShare).toFixed(0).padStart(2)} %`,
    `entry ${entryBoard(roll).toFixed(1)} at ${entryDegrees(roll).toFixed(1)}°`,
    `break ${metresToBoard(roll.breakpointLateralMetres).toFixed(1)} at ${feet(roll.breakpointMetres)} ft`,
    `exit ${exit.toFixed(1)} (rule ${(lane.lengthFeet - 31).toFixed(0)})`,
    `hook ${feet(roll.hookStartMetres)} roll ${feet(roll.rollStartMetres)}`,
    `loss ${(17.5 - metresPerSecondToMph(roll.speedAtPinsMetresPerSecond)).toFixed(1)} mph ${roll.timeToPinsSeconds.toFixed(2)} s`,
  ]
  const misses = [-2, -1, 0, 1, 2].map((miss) => {
    const missed = rollOn(lane, ball, { ...line, target: line.target + miss })
    return inGutter(missed) ? 'gutter' : entryBoard(missed).toFixed(1)
  })
  return `${figures.join('  ')}  | target -2..+2: ${misses.join(' ')}`
}

/** The best value that each third laydown allows, to see how flat the choice is. */
function byLaydown(lines: readonly PricedLine[]): string {
  const laydowns = Array.from({ length: 10 }, (_, index) => 6 + 3 * index)
  return laydowns
    .map((laydown) => {
      const best = lines.find((line) => line.laydown === laydown)
      return best === undefined ? `${laydown}: -` : `${laydown}/${best.target}: ${best.value.toFixed(2)}`
    })
    .join('  ')
}

/** Reactions of the bag on four lanes, to be held against what the trade knows. */
export function run(): void {
  for (const lane of [houseForty, flatFortyFive, flatForty, shortThirtyFive].map(oiledLane)) {
    console.log(`\n${lane.name}: ${lane.lengthFeet} ft, ${(filmVolumeMicrolitres(lane.film) / 1000).toFixed(1)} mL`)
    for (const ball of bag) {
      const lines = pricedLines(lane, ball)
      const [best] = lines
      console.log(`  ${ball.name.padEnd(20)} ${best === undefined ? 'finds no line' : describeLine(lane, ball, best)}`)
      console.log(`  ${''.padEnd(20)} best value by laydown: ${byLaydown(lines)}`)
    }
    console.log('  same throws: lay 15 over 10.5 | lay 20 over 13')
    for (const ball of bag) {
      const at = [
        { laydown: 15, target: 10.5 },
        { laydown: 20, target: 13 },
      ].map((line) => {
        const roll = rollOn(lane, ball, line)
        return `${entryBoard(roll).toFixed(1)} at ${entryDegrees(roll).toFixed(1)}°, roll ${feet(roll.rollStartMetres)} ft`
      })
      console.log(`  ${ball.name.padEnd(20)} ${at.join(' | ')}`)
    }
  }
}
