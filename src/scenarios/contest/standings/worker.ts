import { workerData } from 'node:worker_threads'
import { answerTasks } from '../../threads/answer-tasks.js'
import type { WorkerTask } from './check-all.js'
import type { CheckedEntry } from './check-entry.js'
import { checkOnce } from './kept-check.js'
import { openedAgain } from './opened-again.js'

const { opened, luck, accounts, kept } = workerData as WorkerTask
const pack = openedAgain(opened)
answerTasks<string, CheckedEntry>((path) => checkOnce(path, pack, { luck, accounts }, kept))
