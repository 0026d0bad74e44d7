import type { BlockSetup, Decision } from '../../../world/block/types.js'
import type { FairSearch } from '../../grade/fair-search.js'
import type { PricedLine } from '../../shots/best-line.js'
import { ballIndexOf } from '../../shots/shots.js'
import { judgingOn, pairedDifference, worthOnEachLane } from '../../shots/worth-matrix.js'

/** A gap between two choices in expected game pins, with one standard error. */
export interface Gap {
  readonly pins: number
  readonly standardErrorPins: number
}

/** What one who knows only what was shown can say of first-ball choices at one moment. */
export interface FirstBallJudge {
  readonly setup: BlockSetup
  readonly lane: number
  readonly search: FairSearch
  /** Worth of a choice on each of the lanes imagined, the same lanes and misses for every choice. */
  readonly onEachLane: (decision: Decision) => Float64Array
  /** How much more `better` is worth than `worse`, by those lanes. */
  readonly gap: (better: Decision, worse: Decision) => Gap
  readonly meanWorth: (decision: Decision) => number
  readonly decisionOf: (line: PricedLine) => Decision
}

/** Lanes and deliveries that no round of the search has used, fewer than a grade's since many choices are compared. */
const LANES = 72
const DELIVERIES = 24
const ROUND = 23
const FIRST_DELIVERY = 600_000

/** Opens a judge on a search; a choice costs a hundredth of the search and is kept. */
export function judgeFirstBalls(setup: BlockSetup, lane: number, search: FairSearch): FirstBallJudge {
  const kept = new Map<string, Float64Array>()
  const judging = judgingOn(search.bench, search.imagineToCount(LANES, ROUND), DELIVERIES, FIRST_DELIVERY)
  const onEachLane = (decision: Decision): Float64Array => {
    const key = decisionKey(decision)
    const known = kept.get(key)
    if (known) return known
    const { aim, release } = decision
    const worths = worthOnEachLane(judging, { ballIndex: ballIndexOf(setup.bag, decision.ballId), aim, release })
    kept.set(key, worths)
    return worths
  }
  return {
    setup,
    lane,
    search,
    onEachLane,
    gap: (better, worse) => {
      const { mean, standardError } = pairedDifference(onEachLane(better), onEachLane(worse))
      return { pins: mean, standardErrorPins: standardError }
    },
    meanWorth: (decision) => {
      const worths = onEachLane(decision)
      return worths.reduce((sum, worth) => sum + worth, 0) / worths.length
    },
    decisionOf: ({ ballIndex, aim }) => ({ ballId: setup.bag[ballIndex].id, aim, release: 'strike' }),
  }
}

/** Words that are equal for equal decisions. */
export function decisionKey({ ballId, aim, release }: Decision): string {
  return `${ballId}|${aim.feetBoard}|${aim.targetBoard}|${aim.speedStep}|${release}`
}
