import { canonicalText } from './hashes.js'
import type { BlockRecord } from './record.js'

export type Compared = Pick<BlockRecord, 'block' | 'scenarioHash' | 'seed' | 'player' | 'decisions'> & {
  readonly origin: Pick<BlockRecord['origin'], 'ended'>
}

/**
 * Which records hold a block that a later one holds too: for each its place in the list, or null where it counts. Records of one block
 * have one identity; where one has none, from before there were any, it is the same block if scenario, seed and player are and its
 * decisions are how the other's begin.
 */
export function supersededBy(records: readonly Compared[]): (number | null)[] {
  const groups = new Map<string, number[]>()
  for (const [at, record] of records.entries()) {
    const group = groups.get(keyOf(record))
    if (group) group.push(at)
    else groups.set(keyOf(record), [at])
  }
  const replaced = new Array<number | null>(records.length).fill(null)
  for (const places of groups.values()) {
    const ordered = [...places].sort((a, b) => laterFirst(records[a]!, records[b]!) || b - a)
    const standing: number[] = []
    for (const at of ordered) {
      const by = standing.find((other) => isOneBlock(records[at]!, records[other]!))
      if (by === undefined) standing.push(at)
      else replaced[at] = by
    }
  }
  return replaced
}

/** All records of one block have these alike. */
const keyOf = ({ scenarioHash, seed }: Compared): string => JSON.stringify([scenarioHash, seed])

function laterFirst(one: Compared, other: Compared): number {
  const longer = other.decisions.length - one.decisions.length
  if (longer !== 0) return longer
  return Date.parse(other.origin.ended ?? '1970') - Date.parse(one.origin.ended ?? '1970')
}

function isOneBlock(earlier: Compared, later: Compared): boolean {
  if (earlier.block !== null && later.block !== null) return earlier.block === later.block
  if (earlier.player !== later.player) return false
  return earlier.decisions.every((decision, index) => thrown(decision) === thrown(later.decisions[index]))
}

/** A decision and what it left, whoever made it. */
function thrown(decision: Compared['decisions'][number] | undefined): string {
  if (decision === undefined) return ''
  const { by: _by, ...rest } = decision
  return canonicalText(rest)
}
