import type { ReviewedBlock } from './reviewed-block.js'

/** Days as YYYY-MM-DD, each its own local one; what is left out bounds nothing. */
export interface Period {
  readonly since?: string
  readonly until?: string
  /** Blocks from this day on are held against those before it. */
  readonly compare?: string
}

/** A record that is not looked at, and why. */
export interface LeftOut {
  readonly record: string
  readonly why: string
}

/** The day a block was begun, as the player's clock showed it; null where the record does not say. */
export const dayOf = ({ record }: Pick<ReviewedBlock, 'record'>): string | null =>
  record.origin.begun?.slice(0, 10) ?? null

/** Blocks in the order they were played; those of unknown time first, as they came. */
export function inOrderOfPlay<Block extends Pick<ReviewedBlock, 'record'>>(blocks: readonly Block[]): Block[] {
  const when = ({ record }: Block): number => Date.parse(record.origin.begun ?? '1970-01-01')
  return [...blocks].sort((a, b) => when(a) - when(b))
}

/** Blocks of a period; one of an unknown day is in none, and is named. */
export function withinPeriod(
  blocks: readonly ReviewedBlock[],
  { since, until, compare }: Period,
): { readonly within: readonly ReviewedBlock[]; readonly leftOut: readonly LeftOut[] } {
  if (since === undefined && until === undefined && compare === undefined) return { within: blocks, leftOut: [] }
  const within: ReviewedBlock[] = []
  const leftOut: LeftOut[] = []
  for (const block of blocks) {
    const day = dayOf(block)
    if (day === null) leftOut.push({ record: block.path, why: 'its record does not say when it was played' })
    else if ((since === undefined || day >= since) && (until === undefined || day <= until)) within.push(block)
    else leftOut.push({ record: block.path, why: `it was played on ${day}` })
  }
  return { within, leftOut }
}
