import { keptWith } from '../../kept-with.js'
import type { Decision } from '../../world/block/types.js'
import { meanOf } from '../shots/direct-worth.js'
import { ballIndexOf, shotKey } from '../shots/shots.js'
import type { SpareShot } from '../shots/spare-choice.js'
import { besideOnTheApproach } from '../shots/twins.js'
import { pairedDifference } from '../shots/worth-matrix.js'
import { chargeOf, isAsGood, type Loss, lossOf } from '../value/as-good.js'
import { type FairSpareSearch, judgeSpare } from './fair-spare.js'
import type { PricedFairGrade } from './grade-types.js'

/** Worth of a shot, delivery by delivery. */
const judgedAt = keptWith(shotKey, ({ situations }: FairSpareSearch, shot: SpareShot) => judgeSpare(situations, shot))

/** What throws at a leave cost at one moment, from what had been seen. */
export interface SparePrices {
  readonly lossOf: (decision: Decision) => Loss
  /** In pins; the one figure that every place prints for this choice. */
  readonly chargeOf: (decision: Decision) => number
  /** What is shown as the best: the habit where it is as good, else the best found. */
  readonly shownBest: () => Decision
}

/** Opens the prices of a leave. @param stay how one would shoot by habit */
export function sparePrices(search: FairSpareSearch, stay: Decision): SparePrices {
  const leader = search.finalists[0]
  const lost = (shot: SpareShot): Loss => {
    const { mean, standardError } = pairedDifference(judgedAt(search, leader), judgedAt(search, shot))
    return lossOf(mean, standardError)
  }
  const { bag } = search.setup
  return {
    lossOf: (decision) => lost(shotOf(search, decision)),
    chargeOf: (decision) => {
      const shot = shotOf(search, decision)
      const loss = lost(shot)
      return isAsGood(loss) || besideOnTheApproach(shot).some((beside) => isAsGood(lost(beside))) ? 0 : chargeOf(loss)
    },
    shownBest: () =>
      isAsGood(lost(shotOf(search, stay)))
        ? stay
        : { ballId: bag[leader.ballIndex].id, aim: leader.aim, release: leader.release },
  }
}

function shotOf({ setup }: FairSpareSearch, { ballId, aim, release }: Decision): SpareShot {
  return { ballIndex: ballIndexOf(setup.bag, ballId), aim, release }
}

/**
 * Grades a throw at what a first ball left.
 * @param stay how one would shoot by habit
 */
export function gradeSpare(search: FairSpareSearch, decision: Decision, stay: Decision): PricedFairGrade {
  const prices = sparePrices(search, stay)
  const loss = prices.lossOf(decision)
  const givenAwayPins = prices.chargeOf(decision)
  const worthOf = (shot: SpareShot): number => meanOf(judgedAt(search, shot))
  const choiceWorth = worthOf(shotOf(search, decision))
  return {
    kind: 'spare',
    best: givenAwayPins > 0 ? prices.shownBest() : decision,
    choiceWorth,
    bestWorth: choiceWorth + loss.lostPins,
    ...loss,
    givenAwayPins,
    stakesPins: Math.max(0, worthOf(search.finalists[0]) - worthOf(shotOf(search, stay))),
    percentile: null,
    reason: null,
    informationPins: 0,
    teachingPins: null,
    perBall: [],
  }
}
