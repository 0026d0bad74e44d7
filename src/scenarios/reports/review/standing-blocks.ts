import { supersededBy } from '../../store/superseded.js'
import type { ReviewedBlock } from './reviewed-block.js'

/** A record that is left out, since another one holds all of its block. */
export interface Superseded {
  readonly record: string
  readonly by: string
}

/** Blocks each counted once, with the notes on every record of them. */
export function standingBlocks(blocks: readonly ReviewedBlock[]): {
  readonly standing: readonly ReviewedBlock[]
  readonly superseded: readonly Superseded[]
} {
  const replaced = supersededBy(blocks.map(({ record, player }) => ({ ...record, player })))
  const standing = blocks.flatMap((block, at) => {
    if (replaced[at] !== null) return []
    const earlier = blocks.flatMap(({ notes }, other) => (replaced[other] === at ? notes : []))
    return [{ ...block, notes: [...earlier, ...block.notes] }]
  })
  const superseded = blocks.flatMap(({ path }, at) => {
    const by = replaced[at]
    return by === null || by === undefined ? [] : [{ record: path, by: blocks[by]!.path }]
  })
  return { standing, superseded }
}
