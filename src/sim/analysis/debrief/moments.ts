import { felledBy } from '../../world/block/advance.js'
import type { BlockState, ThrowRecord } from '../../world/block/types.js'

/**
 * A block as it stood before one of its throws, cut out of a later state of it: the same as the state that throw was
 * decided in, without a ball being rolled again. The field bowls on a lane right after the player's turn on it, so
 * between two throws on a lane nothing but what its record tells has touched its oil.
 *
 * @throws RangeError when the block has no such throw
 */
export function stateBefore(state: BlockState, index: number): BlockState {
  const record = state.throws[index]
  if (!record) throw new RangeError(`The block has ${state.throws.length} throws, so none is number ${index + 1}.`)
  const throws = state.throws.slice(0, index)
  const at = state.events.findIndex((event) => event.type === 'throw' && event.record === record)
  const events = state.events.slice(0, at)
  const fieldRecords = events.flatMap((event) => (event.type === 'field-throw' ? [event.record] : []))
  return Object.freeze({
    ...state,
    lanes: state.lanes.map((last, lane) => laneBefore(state, lane, index) ?? last),
    phase: record.spot.phase,
    spot: record.spot,
    standing: record.standingBefore,
    balls: ballsOf(throws),
    throws,
    fieldThrows: fieldRecords,
    events,
  })
}

/**
 * What was shown right after a throw, before anyone else bowled: the state before it with the throw's event added.
 * Lanes and score are still those before it.
 */
export function stateAfter(state: BlockState, index: number): BlockState {
  const before = stateBefore(state, index)
  return Object.freeze({ ...before, events: state.events.slice(0, before.events.length + 1) })
}

function laneBefore(state: BlockState, lane: number, index: number): BlockState['lanes'][number] | undefined {
  return state.throws.find((one, at) => at >= index && one.spot.lane === lane)?.truth.laneBefore
}

function ballsOf(throws: readonly ThrowRecord[]): BlockState['balls'] {
  const games: number[][][] = []
  for (const one of throws) {
    const { phase, game, frame } = one.spot
    if (phase !== 'game') continue
    games[game - 1] ??= []
    games[game - 1][frame - 1] ??= []
    games[game - 1][frame - 1].push(felledBy(one))
  }
  return games
}
