import { availableParallelism } from 'node:os'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { hasWorker, inThreads } from '../../threads/in-threads.js'
import { blockIfPriced, type ReviewedBlock } from './reviewed-block.js'

/** The bundle lays the worker beside its entry. */
const BUNDLED_WORKER = new URL('./debrief-worker.js', import.meta.url)
const PER_CENT = 100

/** A record that is not priced yet, and where its prices are to be kept. */
export interface RecordToPrice {
  readonly path: string
  readonly cache: string
}

/** Told of a piece of work before it is begun; returns who is told how far that is. */
export type Begun = (work: string) => {
  readonly reached: (done: number, of: number) => void
  readonly over: () => void
}

/**
 * The blocks that are priced already, by their paths; the others are priced meanwhile on all cores, so that whoever reads them next
 * finds what was worked out. That is not done for a single record, nor where the program is not bundled; and what is wrong with a file
 * is left for its reader to tell.
 */
export async function pricedBlocks(
  paths: readonly string[],
  cache: string,
  begun: Begun,
): Promise<ReadonlyMap<string, ReviewedBlock>> {
  const priced = new Map<string, ReviewedBlock>()
  const cold: string[] = []
  for (const path of paths) {
    try {
      const block = await blockIfPriced(path, cache)
      if (block) priced.set(path, block)
      else cold.push(path)
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
    }
  }
  await priceAll(cold, cache, begun)
  return priced
}

async function priceAll(paths: readonly string[], cache: string, begun: Begun): Promise<void> {
  const threads = availableParallelism()
  if (paths.length < 2 || threads < 2 || !hasWorker(BUNDLED_WORKER)) return
  const tasks = paths.map((path): RecordToPrice => ({ path, cache }))
  const { reached, over } = begun(`pricing ${paths.length} records, per cent`)
  try {
    await inThreads<RecordToPrice, null>(BUNDLED_WORKER, tasks, {
      threads,
      reached: (done) => reached(Math.floor((PER_CENT * done) / paths.length), PER_CENT),
    })
  } finally {
    over()
  }
}
