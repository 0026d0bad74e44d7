import type { Belief } from '../belief/belief.js'
import type { BlockState, Decision } from '../block/types.js'
import { dynamicsOfBag, pricingOf } from '../decision/bowler-pricing.js'
import { type SpareShot, type SpareSituation, tabulatedSpareWorth } from '../decision/spare-choice.js'
import { laneImaginer } from '../fair/imagined-lanes.js'
import { mirrorMask } from '../pins/leaves.js'

const SPARE_LANES = 8
const SPARE_ROUND = 21

/** Worth of any throw at what stands, over lanes drawn from the belief, by the table of straight spare balls. */
export interface SpareJudge {
  readonly situations: readonly SpareSituation[]
  readonly meanWorth: (decision: Decision) => number
}

export function judgeSpares(before: BlockState, belief: Belief, lane: number): SpareJudge {
  const { setup, standing } = before
  const situations = laneImaginer(
    belief,
    lane,
    setup.bowler.hand,
  )(SPARE_LANES, SPARE_ROUND).map((inPlay) => ({
    inPlay,
    bag: dynamicsOfBag(setup.bag),
    profile: setup.bowler,
    pricing: pricingOf(setup),
    standing: setup.bowler.hand === 'left' ? mirrorMask(standing) : standing,
  }))
  const shotOf = ({ ballId, aim, release }: Decision): SpareShot => ({
    ballIndex: setup.bag.findIndex((ball) => ball.id === ballId),
    aim,
    release,
  })
  return {
    situations,
    meanWorth: (decision) =>
      situations.reduce((sum, situation) => sum + tabulatedSpareWorth(situation, shotOf(decision)), 0) /
      situations.length,
  }
}
