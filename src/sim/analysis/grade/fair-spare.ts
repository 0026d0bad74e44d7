import { stream } from '../../random.js'
import { countPins } from '../../world/pins/leaves.js'
import { drawRackNature, type RackNature } from '../../world/pins/nature.js'
import type { Belief } from '../belief/belief.js'
import { laneImaginer } from '../belief/imagined-lanes.js'
import { deliveryNodes, ERROR_DIMENSIONS } from '../shots/delivery-nodes.js'
import { meanOf } from '../shots/direct-worth.js'
import { neighboursOf } from '../shots/neighbours.js'
import { distinctShots } from '../shots/shots.js'
import {
  deliverShot,
  type PricedSpare,
  rackWorth,
  type SpareShot,
  type SpareSituation,
  tabulatedSpareWorth,
  tabulatedWorth,
} from '../shots/spare-choice.js'
import { spareShots } from '../shots/spare-search.js'
import { dynamicsOfBag, pricingOf } from '../value/bowler-pricing.js'
import type { Pricing } from '../value/pricing.js'
import { ROUNDS, type ShownSetup } from './fair-search.js'

/** The ways of shooting at what stands that one who knows no more than was shown would choose among. */
export interface FairSpareSearch {
  readonly kind: 'spare'
  readonly setup: ShownSetup
  readonly belief: Belief
  /** The attempt on each of a few imagined lanes. */
  readonly situations: readonly SpareSituation[]
  /** Best first. */
  readonly finalists: readonly PricedSpare[]
}

/** A straight spare ball hardly tells lanes apart: few are enough. */
const LANES = 8
const SEARCHED_LANES = 2
const FINALISTS = 4
const IMPROVED = 3

/** Live racks, some on each lane, and more deliveries that only the table is asked about: the same for every shot. */
interface SpareBench {
  readonly racks: number
  readonly rackNodes: Float64Array
  readonly natures: readonly RackNature[]
  readonly tabulated: number
  readonly tableNodes: Float64Array
}

function spareBench(racks: number, tabulated: number, round: number): SpareBench {
  return {
    racks,
    rackNodes: deliveryNodes(LANES * racks, 600_000 + 50_000 * round),
    natures: Array.from({ length: LANES * racks }, (_, index) =>
      drawRackNature(stream({ seed: 'fair-spare-racks', game: 0, frame: round, ball: 0, purpose: 'solver', index })),
    ),
    tabulated,
    tableNodes: deliveryNodes(LANES * tabulated, 620_000 + 50_000 * round),
  }
}

/** How often a shot is tried on each lane; `pins` racks of one pin, and fewer of more, which take longer to fall. */
interface Turns {
  readonly most: number
  readonly least: number
  readonly pins: number
  readonly tabulated: number
  /** Of the deliveries and racks; each has its own. */
  readonly round: number
}
const CHOOSING: Turns = { most: 12, least: 4, pins: 36, tabulated: 96, round: 0 }
const JUDGING: Turns = { most: 32, least: 8, pins: 96, tabulated: 192, round: 1 }

const benches = new Map<string, SpareBench>()

function benchFor({ most, least, pins, tabulated, round }: Turns, standing: number): SpareBench {
  const racks = Math.max(least, Math.min(most, Math.floor(pins / countPins(standing))))
  const key = `${round} ${racks}`
  const known = benches.get(key)
  if (known) return known
  const made = spareBench(racks, tabulated, round)
  benches.set(key, made)
  return made
}

/**
 * Looks for the best ball, line and angle at the pins that stand: by the table of straight spare balls on imagined
 * lanes, then by live racks among the few best.
 *
 * @param standing pins from the bowler's side as a right-hander's
 * @param also shots that compete in any case
 */
export function searchFairSpare(
  setup: ShownSetup,
  belief: Belief,
  lane: number,
  standing: number,
  pricing: Pricing = pricingOf(setup),
  also: readonly SpareShot[] = [],
): FairSpareSearch {
  const situations = laneImaginer(
    belief,
    lane,
    setup.bowler.hand,
  )(LANES, ROUNDS.spare).map(
    (inPlay): SpareSituation => ({ inPlay, bag: dynamicsOfBag(setup.bag), profile: setup.bowler, pricing, standing }),
  )
  const byTable = (shots: readonly SpareShot[]): PricedSpare[] =>
    distinctShots(shots)
      .map((shot) => ({ ...shot, worth: meanByTable(situations, shot) }))
      .sort((a, b) => b.worth - a.worth)
  const found = byTable(situations.slice(0, SEARCHED_LANES).flatMap(spareShots))
  const improved = byTable(
    found.slice(0, IMPROVED).flatMap((shot) => neighboursOf(shot.aim).map((aim) => ({ ...shot, aim }))),
  )
  const finalists = distinctShots([...improved.slice(0, FINALISTS), ...also])
    .map((shot) => ({ ...shot, worth: meanOf(worthByRacks(situations, shot, CHOOSING)) }))
    .sort((a, b) => b.worth - a.worth)
  return {
    kind: 'spare',
    setup,
    belief,
    situations,
    finalists,
  }
}

/** Mean worth of a shot over the imagined lanes by the table of straight spare balls. */
export function meanByTable(situations: readonly SpareSituation[], shot: SpareShot): number {
  return situations.reduce((sum, situation) => sum + tabulatedSpareWorth(situation, shot), 0) / situations.length
}

/** Worth of a shot by racks that had no part in choosing the best one, one figure a rack, for pairing. */
export function judgeSpare(situations: readonly SpareSituation[], shot: SpareShot): Float64Array {
  return worthByRacks(situations, shot, JUDGING)
}

/**
 * Each figure is what the rack gave less what the table expects of that ball, plus what the table expects of the shot:
 * true to the live rack in the mean, far steadier than it.
 */
function worthByRacks(situations: readonly SpareSituation[], shot: SpareShot, turns: Turns): Float64Array {
  const bench = benchFor(turns, situations[0].standing)
  const { racks, natures, tabulated } = bench
  const worths = new Float64Array(situations.length * racks)
  const expected = new Float64Array(tabulated)
  let mean = 0
  situations.forEach((situation, lane) => {
    let rack = lane * racks
    deliverShot(
      situation,
      shot,
      block(bench.rackNodes, lane, racks),
      (rolled) => rackWorth(situation, shot.ballIndex, rolled, natures[rack++]) - tabulatedWorth(situation, rolled),
      worths.subarray(lane * racks, (lane + 1) * racks),
    )
    const nodes = block(bench.tableNodes, lane, tabulated)
    deliverShot(situation, shot, nodes, (rolled) => tabulatedWorth(situation, rolled), expected)
    mean += meanOf(expected) / situations.length
  })
  return worths.map((worth) => worth + mean)
}

function block(nodes: Float64Array, lane: number, count: number): Float64Array {
  return nodes.subarray(lane * count * ERROR_DIMENSIONS, (lane + 1) * count * ERROR_DIMENSIONS)
}
