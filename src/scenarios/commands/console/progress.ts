import type { CommandConsole } from './console.js'

const SILENT_MILLISECONDS = 300
/** Where nobody watches, a line is left behind for each step, and none more often than this. */
const BETWEEN_LINES_MILLISECONDS = 2000

/** Tells whoever waits how far a long piece of work is; silent for work that is done at once. */
export interface Progress {
  /** So many of all steps are done. */
  readonly reached: (done: number, of: number) => void
  readonly over: () => void
}

/** Progress of some work: on a terminal a word that is written over, elsewhere a line on standard error now and then. */
export function progressOn(console: Pick<CommandConsole, 'hint' | 'tell' | 'watched'>, work: string): Progress {
  const begun = performance.now()
  let last = begun
  let told = false
  return {
    reached: (done, of) => {
      const now = performance.now()
      const words = `${work}: ${done} of ${of}`
      if (console.watched) {
        if (now - begun < SILENT_MILLISECONDS) return
        told = true
        console.hint(words)
      } else if (now - last >= BETWEEN_LINES_MILLISECONDS) {
        last = now
        console.tell(words)
      }
    },
    over: () => {
      if (told) console.hint('')
    },
  }
}
