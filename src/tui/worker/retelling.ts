import { advance } from '../../sim/world/block/advance.js'
import { beginBlock } from '../../sim/world/block/begin.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import type { ToldBlock } from './messages.js'

/**
 * Plays told blocks again, throwing only what the last block told had not thrown yet. What was worked out for a throw is
 * remembered by the state it was worked out for, some megabytes each; so a state that play has gone on from is kept as a copy,
 * and its like can be told again but holds nothing on.
 */
export function retelling(): (told: ToldBlock) => BlockState {
  let setupNumber = -1
  let states: BlockState[] = []
  return (told) => {
    const first = states[0]
    if (!first || told.setupNumber !== setupNumber || first.seed !== told.seed) {
      setupNumber = told.setupNumber
      states = [beginBlock(told.setup, told.seed)]
    }
    const thrown = states.at(-1)!.throws
    const parting = told.decisions.findIndex((decision, index) => !isSame(decision, thrown[index]?.decision))
    const shared = parting < 0 ? told.decisions.length : parting
    states.length = Math.min(states.length, shared + 1)
    for (const decision of told.decisions.slice(shared)) {
      const before = states.pop()!
      states.push(Object.freeze({ ...before }), advance(before, decision))
    }
    return states.at(-1)!
  }
}

function isSame(one: Decision, other: Decision | undefined): boolean {
  return (
    other !== undefined &&
    one.ballId === other.ballId &&
    one.release === other.release &&
    one.aim.feetBoard === other.aim.feetBoard &&
    one.aim.targetBoard === other.aim.targetBoard &&
    one.aim.speedStep === other.aim.speedStep
  )
}
