import { parentPort } from 'node:worker_threads'
import type { Answer, Handed } from './in-threads.js'

/** In a thread: answers the tasks it is given, one after the other. @param work is told whom to tell what share is done */
export function answerTasks<Task, Result>(
  work: (task: Task, reached: (share: number) => void) => Promise<Result>,
): void {
  const tell = (answer: Answer<Result>): void => parentPort?.postMessage(answer)
  parentPort?.on('message', ({ number, task }: Handed<Task>) => {
    work(task, (share) => tell({ number, share })).then(
      (result) => tell({ number, result }),
      (fault: unknown) => tell({ number, fault: fault instanceof Error ? fault.message : String(fault) }),
    )
  })
}
