import { parentPort, workerData } from 'node:worker_threads'
import type { WorkerTask } from './check-all.js'
import { checkOnce } from './kept-check.js'
import { openedAgain } from './opened-again.js'

/** Checks the entries it is told of, one after the other. */
const { opened, luck, accounts, kept } = workerData as WorkerTask
const pack = openedAgain(opened)
parentPort?.on('message', ({ number, path }: { readonly number: number; readonly path: string }) => {
  checkOnce(path, pack, { luck, accounts }, kept).then(
    (entry) => parentPort?.postMessage({ number, entry }),
    (fault: unknown) =>
      parentPort?.postMessage({ number, fault: fault instanceof Error ? fault.message : String(fault) }),
  )
})
