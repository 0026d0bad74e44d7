import { stateBefore } from '../../sim/analysis/debrief/moments.js'
import { meantPath } from '../../sim/analysis/debrief/reading/meant-path.js'
import type { Position } from '../../sim/analysis/practice/position.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import { keptWith } from '../../sim/kept-with.js'
import { advance } from '../../sim/world/block/advance.js'
import type { BlockState, Decision, ThrowRecord } from '../../sim/world/block/types.js'
import { FULL_RACK } from '../../sim/world/pins/leaves.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { loadScenario } from '../library/load.js'

/** A position with the lane it stands on, ready to be shown. */
export interface OpenPosition {
  readonly position: Position
  readonly scenario: Scenario
  /** The block before its first throw, and before the throw that is asked about. */
  readonly begun: BlockState
  readonly state: BlockState
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
}

/** Plays a position's block up to where it is asked about: the same to the last bit each time. */
export async function openPosition(position: Position): Promise<OpenPosition> {
  const { scenario: name, seed, decisions } = position.moment
  const scenario = await loadScenario(name)
  const begun = beginScenario(scenario, seed)
  const states = [begun]
  for (const decision of decisions) {
    states.push(advance(states.at(-1)!, decision))
    // Whoever looks at a screen meanwhile gets a turn.
    await new Promise((turn) => setImmediate(turn))
  }
  return { position, scenario, begun, state: states.at(-1)!, states }
}

/** A position of an earlier model asked anew with today's; null where there is nothing to ask there any more. Takes some seconds. */
export async function askedAnew({ state, position }: OpenPosition): Promise<Position | null> {
  // Grading is loaded only where it is needed.
  const { askAt } = await import('../../sim/analysis/practice/walk.js')
  const { positions } = askAt(state, position.moment.scenario)
  return (
    positions.find(({ id }) => id === position.id) ?? positions.find(({ skill }) => skill === position.skill) ?? null
  )
}

/** First balls at full racks on the lane of the coming throw, oldest first: the evidence. */
export function evidenceOf({ state }: OpenPosition): ThrowRecord[] {
  return state.throws.filter((one) => one.spot.lane === state.spot?.lane && one.standingBefore === FULL_RACK)
}

/** What comes of a choice under the block's own luck; thrown once. */
export const thrownAt = keptWith(
  (decision: Decision) => JSON.stringify(decision),
  ({ state }: OpenPosition, decision): ThrowRecord => advance(state, decision).throws.at(-1)!,
)

/** The line that a call is about, or that stands. */
export const standingLine = ({ state, position }: OpenPosition): Decision =>
  position.kind === 'call' ? position.decision : playerView(state)!.suggestion

/** Where the last throw would have come in without a miss on the oil as it was. */
export function lastAsMeant(open: OpenPosition): number {
  const { state } = open
  const last = evidenceOf(open).at(-1)!
  return meantPath(stateBefore(state, state.throws.indexOf(last)), last.decision).entryBoard
}
