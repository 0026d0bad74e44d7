import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'

/** What is handed to a thread, and what comes back: how far it is, or what came of it. */
export interface Handed<Task> {
  readonly number: number
  readonly task: Task
}
export type Answer<Result> = { readonly number: number } & (
  | { readonly share: number }
  | { readonly result: Result }
  | { readonly fault: string }
)

interface InThreads {
  readonly threads: number
  /** Every thread's `workerData`. */
  readonly data?: unknown
  /** Told of how many tasks are done, parts of them counted as such. */
  readonly reached: (done: number) => void
}

/** Whether a worker was laid beside the bundle; there is none where the program runs from its source. */
export const hasWorker = (worker: URL): boolean => existsSync(fileURLToPath(worker))

/**
 * Gives tasks to so many threads of one kind, each the next one as soon as it is done with its last, and returns what came of them,
 * in the order of the tasks.
 *
 * @param worker the thread's file; it answers by `answerTasks`
 * @throws Error where a thread fails
 */
export async function inThreads<Task, Result>(
  worker: URL,
  tasks: readonly Task[],
  { threads, data, reached }: InThreads,
): Promise<Result[]> {
  const results = new Array<Result>(tasks.length)
  const shares = new Array<number>(tasks.length).fill(0)
  let next = 0
  const workers = Array.from(
    { length: Math.min(threads, tasks.length) },
    () => new Worker(worker, { workerData: data }),
  )
  const working = (one: Worker): Promise<void> =>
    new Promise((resolve, reject) => {
      const give = (): void => {
        const number = next++
        if (number >= tasks.length) resolve()
        else one.postMessage({ number, task: tasks[number]! } satisfies Handed<Task>)
      }
      one.on('error', reject)
      one.on('message', (answer: Answer<Result>) => {
        if ('fault' in answer) return reject(new Error(answer.fault))
        shares[answer.number] = 'share' in answer ? answer.share : 1
        reached(shares.reduce((sum, share) => sum + share, 0))
        if ('share' in answer) return
        results[answer.number] = answer.result
        give()
      })
      give()
    })
  try {
    await Promise.all(workers.map(working))
  } finally {
    await Promise.all(workers.map((one) => one.terminate()))
  }
  return results
}
