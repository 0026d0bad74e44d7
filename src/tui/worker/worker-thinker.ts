import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { BlockSetup, BlockState } from '../../sim/world/block/types.js'
import type { FromWorker, ToWorker } from './messages.js'
import { type Asked, inlineThinker, type Thinker } from './thinker.js'
import type { Answer, Answers, Question, Step, Steps } from './thoughts.js'

interface Pending {
  readonly block: BlockState
  readonly question: Question
  readonly onStep: ((step: Step) => void) | undefined
  readonly resolve: (answer: Answer) => void
  readonly reject: (fault: Error) => void
}

/** The bundle lays the worker beside its entry. */
const BUNDLED_WORKER = new URL('./thinker.js', import.meta.url)

/** A thinker in a thread of its own where the program is bundled with one, else in the screen's thread. */
export function openThinker(): Thinker {
  if (!existsSync(fileURLToPath(BUNDLED_WORKER))) return inlineThinker()
  return onceWoken(() => workerThinker(new Worker(BUNDLED_WORKER)))
}

/** Opens the thread when woken or first asked, for the first picture on the screen must not wait for it. */
function onceWoken(open: () => Thinker): Thinker {
  let opened: Thinker | null = null
  return {
    get isApart() {
      return opened === null || opened.isApart
    },
    wake() {
      opened ??= open()
    },
    ask(block, question, onStep) {
      opened ??= open()
      return opened.ask(block, question, onStep)
    },
    close: () => opened?.close(),
  }
}

/** Thinks in a worker. Should the worker break, what it owes is worked out in the screen's thread instead. */
export function workerThinker(worker: Worker): Thinker {
  const pending = new Map<number, Pending>()
  const setupNumber = numbering()
  let lastId = 0
  let fallback: Thinker | null = null

  const breakDown = () => {
    fallback ??= inlineThinker()
    for (const [id, { block, question, onStep, resolve, reject }] of pending) {
      pending.delete(id)
      fallback.ask(block, question, onStep).answer.then(resolve, reject)
    }
  }
  worker.unref()
  worker.on('error', breakDown)
  worker.on('exit', breakDown)
  worker.on('message', (message: FromWorker) => {
    const asked = pending.get(message.id)
    if (!asked) return
    if (message.kind === 'step') return asked.onStep?.(message.step)
    pending.delete(message.id)
    if (message.kind === 'answer') asked.resolve(message.answer)
    else asked.reject(new Error(message.sentence))
  })
  const post = (message: ToWorker) => worker.postMessage(message)

  return {
    get isApart() {
      return fallback === null
    },
    wake() {},
    ask<Kind extends Question['kind']>(
      block: BlockState,
      question: Extract<Question, { kind: Kind }>,
      onStep?: (step: Steps[Kind]) => void,
    ): Asked<Answers[Kind]> {
      if (fallback) return fallback.ask(block, question, onStep)
      const id = ++lastId
      const answer = new Promise<Answer>((resolve, reject) => {
        pending.set(id, { block, question, onStep: onStep as Pending['onStep'], resolve, reject })
      })
      const { setup, seed, throws } = block
      const told = { setupNumber: setupNumber(setup), setup, seed, decisions: throws.map(({ decision }) => decision) }
      post({ kind: 'ask', id, block: told, question })
      return {
        answer: answer as Promise<Answers[Kind]>,
        giveUp() {
          if (pending.delete(id)) post({ kind: 'give-up', id })
        },
      }
    },
    close() {
      pending.clear()
      worker.terminate()
    },
  }
}

function numbering(): (setup: BlockSetup) => number {
  const numbers = new WeakMap<BlockSetup, number>()
  let last = 0
  return (setup) => {
    const known = numbers.get(setup) ?? ++last
    numbers.set(setup, known)
    return known
  }
}
