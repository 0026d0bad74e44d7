import { keptWith } from '../../kept-with.js'
import { stream } from '../../random.js'
import { metresToFeet } from '../../units.js'
import { drawLaidOff, layAsOff } from '../lane/as-laid.js'
import type { OilFilm } from '../lane/film.js'
import { generatePattern } from '../lane/generator.js'
import { layPattern, measurePattern, type OilPattern } from '../lane/pattern.js'
import { freshLane } from '../lane/wear.js'
import { FULL_RACK } from '../pins/leaves.js'
import { fieldThrows } from './field.js'
import type {
  BlockEvent,
  BlockSetup,
  BlockState,
  FieldThrowRecord,
  LaneOil,
  Posted,
  PostedSheet,
  Spot,
} from './types.js'

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

/** What is posted of a pattern: lengths to half a foot, tenths of a millilitre, tenths of the ratio. */
function postedSheet(posted: Posted, pattern: OilPattern): PostedSheet | null {
  if (posted === 'nothing') return null
  const measured = measurePattern(layPattern(pattern))
  const lengthFeet = Math.round(2 * metresToFeet(measured.lengthMetres)) / 2
  if (posted === 'length') return { lengthFeet }
  return {
    lengthFeet,
    volumeMillilitres: Math.round(measured.volumeMicrolitres / 100) / 10,
    ratio: Math.round(measured.ratio * 10) / 10,
  }
}

/**
 * The oil as it lies: a sheet is what the machine was told, and the machine was off by a little that the seed settles, by the
 * same on all lanes of a block. Where nothing is posted the pattern is the oil.
 */
function laidFilm({ posted }: BlockSetup, seed: string, pattern: OilPattern): OilFilm {
  if (posted === 'nothing') return layPattern(pattern)
  return layAsOff(pattern, drawLaidOff(stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'laid' })))
}

function unbowled(setup: BlockSetup, seed: string): BlockState {
  const practice = setup.practiceThrows > 0
  const patterns = setup.lanes.map((lane, index) => patternOf(lane.oil, seed, index))
  return Object.freeze({
    setup,
    seed,
    posted: patterns.map((pattern) => postedSheet(setup.posted, pattern)),
    lanes: patterns.map((pattern) => freshLane(laidFilm(setup, seed, pattern))),
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
      const others = fieldThrows(state, spot, lanes[lane], records)
      lanes[lane] = others.lane
      events.push(...others.events)
      records.push(...others.events.flatMap((event) => (event.type === 'field-throw' ? [event.record] : [])))
    }
  }
  return Object.freeze({ ...state, lanes, events, fieldThrows: records })
}
