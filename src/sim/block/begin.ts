import { generatePattern } from '../lane/generator.js'
import { layPattern, type OilPattern } from '../lane/pattern.js'
import { freshLane } from '../lane/wear.js'
import { FULL_RACK } from '../pins/leaves.js'
import { stream } from '../random.js'
import type { BlockSetup, BlockState, LaneOil } from './types.js'

/** The pattern a lane gets under a seed: the written one, or one drawn within the scenario's limits. */
export function patternOf(oil: LaneOil, seed: string, lane: number): OilPattern {
  if (oil.kind === 'pattern') return oil.pattern
  return generatePattern(oil.limits, stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'pattern', index: lane }))
}

/** A block before its first throw: lanes freshly oiled, nothing bowled. */
export function beginBlock(setup: BlockSetup, seed: string): BlockState {
  const practice = setup.practiceThrows > 0
  return Object.freeze({
    setup,
    seed,
    lanes: setup.lanes.map((lane, index) => freshLane(layPattern(patternOf(lane.oil, seed, index)))),
    phase: practice ? 'practice' : 'game',
    spot: { phase: practice ? 'practice' : 'game', lane: 0, game: practice ? 0 : 1, frame: 1, ball: 1 },
    standing: FULL_RACK,
    balls: [],
    throws: [],
    fieldThrows: [],
    events: [],
  } satisfies BlockState)
}
