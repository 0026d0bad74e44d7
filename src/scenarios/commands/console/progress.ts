import type { CommandConsole } from './console.js'

const SILENT_MILLISECONDS = 300

/** Tells a person who waits how far a long piece of work is; silent for work that is done at once. */
export interface Progress {
  readonly reached: (done: number, of: number) => void
  readonly over: () => void
}

export function progressOn(console: CommandConsole, work: string): Progress {
  const begun = performance.now()
  let told = false
  return {
    reached: (done, of) => {
      if (performance.now() - begun < SILENT_MILLISECONDS) return
      told = true
      console.hint(`${work}: ${done} of ${of}`)
    },
    over: () => {
      if (told) console.hint('')
    },
  }
}
