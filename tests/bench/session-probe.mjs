// Loaded into the program that a session drives: on SIGUSR2 it collects all garbage and appends a line of figures to a file.
import { appendFileSync, writeFileSync } from 'node:fs'
import { BroadcastChannel, isMainThread } from 'node:worker_threads'

const channel = new BroadcastChannel('session-probe')
channel.unref()

const collected = () => {
  globalThis.gc?.()
  return process.memoryUsage()
}

if (isMainThread) {
  let thinker = null
  channel.onmessage = ({ data }) => {
    if (data.kind === 'heap') thinker = data.heapUsed
  }
  process.on('SIGUSR2', () => {
    channel.postMessage({ kind: 'asked' })
    setTimeout(() => {
      const { heapUsed, external, rss } = collected()
      const { user, system } = process.cpuUsage()
      const timers = process.getActiveResourcesInfo().filter((name) => name === 'Timeout').length
      const line = { heapUsed, thinker, external, rss, processorSeconds: (user + system) / 1e6, timers }
      appendFileSync(process.env.SESSION_PROBE, `${JSON.stringify(line)}\n`)
    }, 2000).unref()
  })
  writeFileSync(`${process.env.SESSION_PROBE}.pid`, String(process.pid))
} else {
  channel.onmessage = ({ data }) => {
    if (data.kind === 'asked') channel.postMessage({ kind: 'heap', heapUsed: collected().heapUsed })
  }
}
