import { keptWith } from '../../kept-with.js'
import { stream } from '../../random.js'
import { generatePattern } from '../lane/generator.js'
import { layPattern, type OilPattern } from '../lane/pattern.js'
import { freshLane } from '../lane/wear.js'
import { FULL_RACK } from '../pins/leaves.js'
import { fieldThrows } from './field.js'
import type { BlockEvent, BlockSetup, BlockState, FieldThrowRecord, LaneOil, Spot } from './types.js'

/** The pattern a lane gets under a seed: the written one, or one drawn within the scenario's limits. */
export function patternOf(oil: LaneOil, seed: string, lane: number): OilPattern {
  if (oil.kind === 'pattern') return oil.pattern
  return generatePattern(oil.limits, stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'pattern', index: lane }))
}

/**
 * A block before its first throw: lanes freshly oiled, and then worn by what the field has bowled on them already.
 * The same setup and seed give the same state, which is kept where the field has bowled.
 */
export function beginBlock(setup: BlockSetup, seed: string): BlockState {
  return (setup.fieldFramesBefore ?? 0) === 0 ? unbowled(setup, seed) : bowledOn(setup, seed)
}

const bowledOn = keptWith(
  (seed: string) => seed,
  (setup: BlockSetup, seed) => bowledBefore(unbowled(setup, seed), setup.fieldFramesBefore ?? 0),
)

function unbowled(setup: BlockSetup, seed: string): BlockState {
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

/** Keys of throws made before the block are those of a game that no block has. */
const GAME_BEFORE = -1

function bowledBefore(state: BlockState, frames: number): BlockState {
  const lanes = [...state.lanes]
  const events: BlockEvent[] = []
  const records: FieldThrowRecord[] = []
  for (let frame = 1; frame <= frames; frame++) {
    for (const lane of lanes.keys()) {
      const spot: Spot = { phase: 'practice', lane, game: GAME_BEFORE, frame, ball: 1 }
      const others = fieldThrows(state.setup, state.seed, spot, lanes[lane], records)
      lanes[lane] = others.lane
      events.push(...others.events)
      records.push(...others.events.flatMap((event) => (event.type === 'field-throw' ? [event.record] : [])))
    }
  }
  return Object.freeze({ ...state, lanes, events, fieldThrows: records })
}
