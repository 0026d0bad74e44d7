import type { ReviewReport } from './review-report.js'
import type { ReviewedBlock } from './reviewed-block.js'

/**
 * Blocks without a name anywhere: players are letters, in the order of their blocks' own numbers, which tells nothing; records are
 * numbered; notes, which may name anybody, are left out.
 */
export function anonymousBlocks(blocks: readonly ReviewedBlock[]): readonly ReviewedBlock[] {
  const keys = new Map<string, string>()
  for (const { player, record } of blocks) {
    const key = record.block ?? record.seed
    if (key < (keys.get(player) ?? '\uffff')) keys.set(player, key)
  }
  const inOrder = [...keys].sort(([, one], [, other]) => (one < other ? -1 : 1)).map(([player]) => player)
  return blocks.map((block, place) => ({
    ...block,
    path: `block ${place + 1}`,
    player: `Player ${letters(inOrder.indexOf(block.player))}`,
    record: withoutPlayer(block.record),
    notes: [],
  }))
}

function withoutPlayer({ player: _player, ...record }: ReviewedBlock['record']): ReviewedBlock['record'] {
  return record
}

const LETTERS = 26

/** A, B, ..., Z, AA, AB, ... */
function letters(place: number): string {
  const last = String.fromCharCode(65 + (place % LETTERS))
  return place < LETTERS ? last : letters(Math.floor(place / LETTERS) - 1) + last
}

/** Names of files tell who sent them; how many there were is told all the same. */
export const withoutFiles = ({
  superseded,
  leftOut,
  faults,
}: Pick<ReviewReport, 'superseded' | 'leftOut' | 'faults'>) => ({
  superseded: superseded.map(() => ({ record: 'a copy', by: 'a block that is counted' })),
  leftOut: leftOut.map(({ why }) => ({ record: 'a block', why })),
  faults: faults.map(() => ({ file: 'a file', reasons: ['it could not be read, replayed or believed'] })),
})
