import { stream } from '../../random.js'
import { samplesFrom } from '../../sample-ranges.js'
import { countPins } from '../../world/pins/leaves.js'
import { drawRackNature } from '../../world/pins/nature.js'
import type { Belief } from '../belief/belief.js'
import { laneImaginer } from '../belief/imagined-lanes.js'
import { deliveryNodes } from '../shots/delivery-nodes.js'
import { meanOf } from '../shots/direct-worth.js'
import { neighboursOf } from '../shots/neighbours.js'
import { distinctShots } from '../shots/shots.js'
import { type PricedSpare, type SpareShot, type SpareSituation, tabulatedSpareWorth } from '../shots/spare-choice.js'
import { spareShots } from '../shots/spare-search.js'
import { type SpareSample, spareWorths } from '../shots/spare-worth.js'
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

/** How many live racks a shot is thrown at: `pins` racks of one pin a lane, and fewer of more, which take longer to fall. */
interface Turns {
  readonly most: number
  readonly least: number
  readonly pins: number
  /** Deliveries on each lane that the table is asked about. */
  readonly tabulated: number
  /** Of the deliveries and racks; each has its own. */
  readonly round: 0 | 1
}
const CHOOSING: Turns = { most: 12, least: 4, pins: 36, tabulated: 96, round: 0 }
const JUDGING: Turns = { most: 32, least: 8, pins: 96, tabulated: 144, round: 1 }

const samples = new Map<string, SpareSample>()

function sampleFor({ most, least, pins, tabulated, round }: Turns, standing: number): SpareSample {
  const racks = LANES * Math.max(least, Math.min(most, Math.floor(pins / countPins(standing))))
  const key = `${round} ${racks}`
  const known = samples.get(key)
  if (known) return known
  const made = {
    nodes: deliveryNodes(
      LANES * tabulated,
      samplesFrom(round === 0 ? 'spareTableToChoose' : 'spareTableToJudge', LANES * tabulated),
    ),
    deliveriesPerLane: tabulated,
    natures: Array.from({ length: racks }, (_, index) =>
      drawRackNature(stream({ seed: 'fair-spare-racks', game: 0, frame: round, ball: 0, purpose: 'solver', index })),
    ),
  }
  samples.set(key, made)
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
    .map((shot) => ({ ...shot, worth: meanOf(spareWorths(situations, shot, sampleFor(CHOOSING, standing))) }))
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
function meanByTable(situations: readonly SpareSituation[], shot: SpareShot): number {
  return situations.reduce((sum, situation) => sum + tabulatedSpareWorth(situation, shot), 0) / situations.length
}

/** Worth of a shot by racks that had no part in choosing the best one, one figure a rack, for pairing. */
export function judgeSpare(situations: readonly SpareSituation[], shot: SpareShot): Float64Array {
  return spareWorths(situations, shot, sampleFor(JUDGING, situations[0].standing))
}
