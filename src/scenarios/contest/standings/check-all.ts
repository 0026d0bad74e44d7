import { availableParallelism } from 'node:os'
import { hasWorker, inThreads } from '../../threads/in-threads.js'
import type { OpenedPack } from '../pack/pack.js'
import type { CheckedEntry, CheckWanted } from './check-entry.js'
import { checkOnce } from './kept-check.js'
import { handedOver, type PackToHand } from './opened-again.js'

export interface WorkerTask extends Omit<CheckWanted, 'reached'> {
  readonly opened: PackToHand
  /** Where what was found before is kept; nowhere where it is null. */
  readonly kept: string | null
}

interface CheckAllWanted extends Omit<CheckWanted, 'reached'> {
  readonly kept: string | null
  /** Threads at work at once; one a core where it is left out. */
  readonly jobs?: number | undefined
  readonly reached: (done: number, of: number) => void
}

/** The bundle lays the worker beside its entry. */
const BUNDLED_WORKER = new URL('./contest-worker.js', import.meta.url)

/** Checks entries, each by itself, on all cores where the program is bundled with a worker, else in this thread. */
export async function checkAll(
  paths: readonly string[],
  opened: OpenedPack,
  { jobs = availableParallelism(), reached, kept, ...wanted }: CheckAllWanted,
): Promise<CheckedEntry[]> {
  const threads = Math.min(jobs, paths.length)
  if (threads < 2 || !hasWorker(BUNDLED_WORKER)) {
    const entries: CheckedEntry[] = []
    for (const path of paths) {
      entries.push(await checkOnce(path, opened, wanted, kept))
      reached(entries.length, paths.length)
    }
    return entries
  }
  const data: WorkerTask = { ...wanted, kept, opened: handedOver(opened) }
  return inThreads(BUNDLED_WORKER, paths, { threads, data, reached: (done) => reached(Math.floor(done), paths.length) })
}
