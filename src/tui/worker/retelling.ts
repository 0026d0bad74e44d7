import { advance } from '../../sim/world/block/advance.js'
import { beginBlock } from '../../sim/world/block/begin.js'
import type { BlockState, Decision } from '../../sim/world/block/types.js'
import type { ToldBlock } from './messages.js'

/** One block as far as it was told, state by state. */
interface Chain {
  readonly setupNumber: number
  readonly states: BlockState[]
}

/** Two who share the keys tell their blocks by turns. */
const CHAINS = 2

/**
 * Plays told blocks again, throwing only what the last telling of the block had not thrown yet. What was worked out for a throw is
 * remembered by the state it was worked out for, some megabytes each; so a state that play has gone on from is kept as a copy,
 * and its like can be told again but holds nothing on. Of two blocks by turns both are remembered.
 */
export function retelling(): (told: ToldBlock) => BlockState {
  const chains: Chain[] = []
  return (told) => {
    const going = chains.findIndex((chain) => goesOn(chain, told))
    const [found] = going < 0 ? [] : chains.splice(going, 1)
    const chain = found ?? { setupNumber: told.setupNumber, states: [beginBlock(told.setup, told.seed)] }
    chains.unshift(chain)
    chains.length = Math.min(chains.length, CHAINS)
    const { states } = chain
    const shared = sharedThrows(states.at(-1)!, told)
    states.length = Math.min(states.length, shared + 1)
    for (const decision of told.decisions.slice(shared)) {
      const before = states.pop()!
      states.push(Object.freeze({ ...before }), advance(before, decision))
    }
    return states.at(-1)!
  }
}

/** Whether a block told is the chain's own, further on or further back; one along another road is told anew. */
function goesOn({ setupNumber, states }: Chain, told: ToldBlock): boolean {
  const latest = states.at(-1)!
  if (setupNumber !== told.setupNumber || latest.seed !== told.seed) return false
  return sharedThrows(latest, told) === Math.min(latest.throws.length, told.decisions.length)
}

/** How many throws of a state the told block begins with. */
function sharedThrows({ throws }: BlockState, { decisions }: ToldBlock): number {
  const parting = decisions.findIndex((decision, index) => !isSame(decision, throws[index]?.decision))
  return parting < 0 ? decisions.length : parting
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
