import { parentPort } from 'node:worker_threads'
import type { FromWorker, ToWorker } from './messages.js'
import { rehearsal } from './rehearsal.js'
import { retelling } from './retelling.js'
import { answer, isLong } from './thoughts.js'

type Ask = Extract<ToWorker, { kind: 'ask' }>

const port = parentPort
if (!port) throw new Error('This file thinks for the trainer in a worker thread and is nothing by itself.')

const retell = retelling()
const waiting: Ask[] = []
/** Asks being worked on: one long one, and what is slipped in between its steps. */
const current = new Set<number>()

const say = (message: FromWorker): void => port.postMessage(message)
/** Lets messages in; what they ask for or give up is known when it comes back. */
const listen = (): Promise<unknown> => new Promise((turn) => setImmediate(turn))

async function work({ id, block, question }: Ask): Promise<void> {
  current.add(id)
  try {
    const steps = answer(retell(block), question)
    for (;;) {
      const step = steps.next()
      if (step.done) return say({ kind: 'answer', id, answer: step.value })
      if (step.value !== null) say({ kind: 'step', id, step: step.value })
      await listen()
      for (let quick = takeQuick(); quick; quick = takeQuick()) await work(quick)
      if (!current.has(id)) return
    }
  } catch (fault) {
    say({ kind: 'fault', id, sentence: fault instanceof Error ? fault.message : String(fault) })
  } finally {
    current.delete(id)
  }
}

/** The first thing waiting that need not wait for a long answer's end. */
function takeQuick(): Ask | undefined {
  const place = waiting.findIndex(({ question }) => !isLong(question))
  return place < 0 ? undefined : waiting.splice(place, 1)[0]
}

let isWorking = false
async function workOn(): Promise<void> {
  if (isWorking) return
  isWorking = true
  for (let ask = waiting.shift(); ask; ask = waiting.shift()) {
    // Whatever waits behind a preparation needs it made anyway, or has no use for it any more.
    const isIdle = ask.question.kind === 'prepare' && waiting.some(({ question }) => !isLong(question))
    if (isIdle) say({ kind: 'answer', id: ask.id, answer: null })
    else await work(ask)
    await listen()
  }
  isWorking = false
}

port.on('message', (message: ToWorker) => {
  if (message.kind === 'ask') {
    waiting.push(message)
    setImmediate(workOn)
    return
  }
  current.delete(message.id)
  const place = waiting.findIndex((ask) => ask.id === message.id)
  if (place >= 0) waiting.splice(place, 1)
})

async function rehearse(): Promise<void> {
  const steps = rehearsal()
  do await listen()
  while (!isWorking && waiting.length === 0 && !steps.next().done)
}
void rehearse()
