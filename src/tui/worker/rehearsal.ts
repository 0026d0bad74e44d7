import { beginPair } from '../../sim/analysis/belief/belief-pair.js'
import { gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import { type SearchBudget, searchFair } from '../../sim/analysis/grade/fair-search.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import type { BallSpecification } from '../../sim/world/ball/specification.js'
import { beginBlock } from '../../sim/world/block/begin.js'
import type { BlockSetup } from '../../sim/world/block/types.js'
import { levelProfile } from '../../sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../sim/world/lane/generator.js'

const BALL: BallSpecification = {
  id: 'rehearsed',
  name: 'rehearsed',
  massKilograms: 6.8,
  radiusOfGyrationMetres: 0.0635,
  differentialMetres: 0.00114,
  intermediateDifferentialMetres: 0.00036,
  pinAngleRadians: 0.8,
  cover: 'solid',
  surfaceGrit: 2000,
  polished: false,
}

/** Of another cover, so that what is made fast is not made for one ball alone. */
const OTHER_BALL: BallSpecification = {
  ...BALL,
  id: 'rehearsed too',
  cover: 'pearl',
  surfaceGrit: 4000,
  polished: true,
}

const SETUP: BlockSetup = {
  name: 'rehearsal',
  lanes: [{ name: 'lane 1', oil: { kind: 'limits', limits: WIDEST_LIMITS } }],
  bag: [BALL, OTHER_BALL],
  bowler: levelProfile('200'),
  field: [],
  practiceThrows: 0,
  games: 1,
  scoring: 'ten-pin',
  posted: 'nothing',
  seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
}

/** Small enough that a question which comes meanwhile hardly waits. */
const BUDGET: SearchBudget = {
  sweepLanes: 2,
  rounds: [
    { lines: 12, lanes: 6 },
    { lines: 4, lanes: 12 },
    { lines: 3, lanes: 12 },
  ],
  judgingLanes: 24,
  informationLanes: 4,
}
const IMAGINED = 24
const ROUNDS = 12

/**
 * Grades made-up first throws, one a step, and drops what comes of them: the first question is then answered by code
 * that has been made fast. No answer depends on whether there was a rehearsal.
 */
export function* rehearsal(rounds = ROUNDS): Generator<void> {
  for (let round = 0; round < rounds; round++) {
    const state = beginBlock(SETUP, `rehearsal ${round}`)
    const view = playerView(state)
    if (!view) return
    const search = searchFair(SETUP, beginPair(SETUP, 0, state.seed, IMAGINED), 0, undefined, BUDGET)
    const { suggestion } = view
    const decision = { ...suggestion, aim: { ...suggestion.aim, feetBoard: suggestion.aim.feetBoard + 2 } }
    gradeFair(state, decision, search)
    yield
  }
}
