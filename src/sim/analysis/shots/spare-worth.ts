import type { RollOutcome } from '../../world/ball/launch.js'
import { meantThrow } from '../../world/bowler/release.js'
import { HEADPIN_DISTANCE_METRES } from '../../world/lane/geometry.js'
import type { RackNature } from '../../world/pins/nature.js'
import { ERROR_DIMENSIONS } from './delivery-nodes.js'
import { deliverAll } from './direct-worth.js'
import { chanceByTable, rackWorth, type SpareShot, type SpareSituation, tabulatedWorth } from './spare-choice.js'

/** What a shot at a leave is priced by; the same for every shot, so that differences are steadier than prices. */
export interface SpareSample {
  /** Deliveries on each lane that the table is asked about; over all lanes at least a thousand. */
  readonly nodes: Float64Array
  readonly deliveriesPerLane: number
  /** Racks that some of them are thrown at. */
  readonly natures: readonly RackNature[]
}

/** No delivery is so sure that none like it is ever thrown at a live rack. */
const LEAST_DOUBT = 0.02

/**
 * Worth of a shot over one or several lanes, one figure a live rack, for pairing; their mean is its price. The table of
 * straight spare balls says what every delivery is worth; live racks correct it (a control variate): they are thrown where
 * the table is in doubt, in proportion to the spread √(p(1 − p)) it gives, in even steps across the leave, and each counts
 * for the deliveries it stands for (importance and stratified sampling; any text on Monte Carlo methods). True to the live
 * rack in the mean whatever the table says, and far steadier than it.
 */
export function spareWorths(situations: readonly SpareSituation[], shot: SpareShot, sample: SpareSample): Float64Array {
  const { nodes, deliveriesPerLane, natures } = sample
  const count = situations.length * deliveriesPerLane
  const rolled = situations.flatMap((situation, lane) => deliveries(situation, shot, nodes, lane, deliveriesPerLane))
  const doubts = rolled.map(({ doubt }) => doubt)
  const allDoubt = doubts.reduce((sum, doubt) => sum + doubt, 0)
  const order = Array.from(rolled.keys()).sort((a, b) => rolled[a].lateral - rolled[b].lateral || a - b)
  const mean = rolled.reduce((sum, { tabulated }) => sum + tabulated, 0) / count
  const figures = new Float64Array(natures.length)
  let reached = 0
  let next = 0
  for (const place of order) {
    if (doubts[place] === 0) continue
    reached += doubts[place]
    while (next < natures.length && (next + 0.5) * allDoubt <= reached * natures.length) {
      const { outcome, situation, tabulated } = rolled[place]
      const off = rackWorth(situation, shot.ballIndex, outcome, natures[next]) - tabulated
      figures[next++] = mean + (off * allDoubt) / (count * doubts[place])
    }
  }
  for (; next < natures.length; next++) figures[next] = mean
  return figures
}

interface Delivered {
  readonly situation: SpareSituation
  readonly outcome: RollOutcome
  readonly lateral: number
  readonly tabulated: number
  readonly doubt: number
}

function deliveries(
  situation: SpareSituation,
  shot: SpareShot,
  nodes: Float64Array,
  lane: number,
  perLane: number,
): Delivered[] {
  const { inPlay, bag, profile } = situation
  const numbers = perLane * ERROR_DIMENSIONS
  const found: Delivered[] = []
  deliverAll(
    inPlay,
    bag[shot.ballIndex],
    meantThrow(profile, shot.aim, shot.release),
    nodes.subarray(lane * numbers, (lane + 1) * numbers),
    (rolled) => {
      const tabulated = tabulatedWorth(situation, rolled)
      const chance = chanceByTable(situation, rolled)
      const isOut = rolled.leftLaneMetres < HEADPIN_DISTANCE_METRES
      found.push({
        situation,
        outcome: { ...rolled },
        lateral: rolled.lateralAtPinsMetres,
        tabulated,
        doubt: isOut ? 0 : Math.sqrt(chance * (1 - chance) + LEAST_DOUBT),
      })
      return tabulated
    },
    new Float64Array(perLane),
  )
  return found
}
