import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
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
  if (threads < 2 || !existsSync(fileURLToPath(BUNDLED_WORKER))) {
    const entries: CheckedEntry[] = []
    for (const path of paths) {
      entries.push(await checkOnce(path, opened, wanted, kept))
      reached(entries.length, paths.length)
    }
    return entries
  }
  const task: WorkerTask = { ...wanted, kept, opened: handedOver(opened) }
  return inThreads(paths, task, { threads, reached })
}

type Answer = { readonly number: number } & ({ readonly entry: CheckedEntry } | { readonly fault: string })

async function inThreads(
  paths: readonly string[],
  task: WorkerTask,
  { threads, reached }: { readonly threads: number; readonly reached: CheckAllWanted['reached'] },
): Promise<CheckedEntry[]> {
  const entries = new Array<CheckedEntry>(paths.length)
  let next = 0
  let done = 0
  const workers = Array.from({ length: threads }, () => new Worker(BUNDLED_WORKER, { workerData: task }))
  try {
    await Promise.all(
      workers.map(
        (worker) =>
          new Promise<void>((resolve, reject) => {
            const give = (): void => {
              if (next >= paths.length) resolve()
              else worker.postMessage({ number: next, path: paths[next++] })
            }
            worker.on('error', reject)
            worker.on('message', (answer: Answer) => {
              if ('fault' in answer) return reject(new Error(answer.fault))
              entries[answer.number] = answer.entry
              reached(++done, paths.length)
              give()
            })
            give()
          }),
      ),
    )
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()))
  }
  return entries
}
