import { EXIT, SIGNAL_EXIT } from '../../scenarios/files/text/exit-codes.js'
import { visibleLine } from '../../scenarios/files/text/visible-text.js'

/** The streams a full-screen program holds while it runs. */
export interface TerminalStreams {
  readonly input: { setRawMode?(on: boolean): unknown }
  readonly output: { write(data: string): unknown }
  readonly errors: { write(data: string): unknown }
}

/** What the holder is told of, and how the program ends. */
export interface TerminalEvents {
  /** The terminal goes to the shell for a while; nothing may be drawn. */
  onSuspend?(): void
  /** The terminal is ours again and blank. */
  onResume?(): void
  exit?(code: number): void
}

export interface TerminalHold {
  /** Give the terminal back as it was found. Safe to call twice. */
  leave(): void
  /** Give the terminal back and stop, together with the whole job, until the shell takes it up again. */
  suspend(): void
}

const ENTER = '\u001B[?1049h\u001B[?25l\u001B[2J\u001B[H\u001B[?2004h'
const LEAVE = '\u001B[0m\u001B[?1006l\u001B[?1000l\u001B[?2004l\u001B[?25h\u001B[?1049l'
/** By then the program has been stopped, and this passes only once it goes on; or the system would not stop it at all. */
const STOPPED_WITHIN_MILLISECONDS = 50
/** Process number that stands for the whole job. */
const OWN_GROUP = 0

/** One sentence about an unforeseen fault. */
export function faultSentence(fault: unknown): string {
  const reason = fault instanceof Error ? fault.message : String(fault)
  return `dryboard: something went wrong on our side: ${visibleLine(reason.split('\n')[0]!)}\n`
}

/**
 * Takes the terminal over: alternate screen, hidden cursor, raw keys, bracketed paste. However the program ends
 * (by itself, by signal, by an uncaught fault), the terminal is given back first; while it is stopped, the terminal is the shell's.
 */
export function holdTerminal(streams: TerminalStreams, events: TerminalEvents = {}): TerminalHold {
  const exit = events.exit ?? ((code: number) => void process.exit(code))
  let held = true
  let suspended = false
  const handlers: [string, (...parts: never[]) => void][] = []
  const listen = (event: string, handler: (...parts: never[]) => void) => {
    handlers.push([event, handler])
    process.on(event, handler as () => void)
  }

  const take = () => {
    // The shell has set modes of its own meanwhile, and a mode that was set already would not be set again.
    streams.input.setRawMode?.(false)
    streams.input.setRawMode?.(true)
    streams.output.write(ENTER)
  }
  const giveBack = () => {
    try {
      streams.input.setRawMode?.(false)
      streams.output.write(LEAVE)
    } catch {
      // The terminal is already gone (a hang-up); there is nobody left to tell.
    }
  }

  const leave = () => {
    if (!held) return
    held = false
    for (const [event, handler] of handlers) process.off(event, handler as () => void)
    process.off('SIGTSTP', onStopSignal)
    if (!suspended) giveBack()
  }

  const resume = () => {
    if (!held) return
    if (suspended) process.on('SIGTSTP', onStopSignal)
    suspended = false
    take()
    // Nobody told a stopped program that its terminal has another size now.
    process.kill(process.pid, 'SIGWINCH')
    events.onResume?.()
  }
  const stop = (whom: number) => {
    if (!held || suspended) return
    suspended = true
    events.onSuspend?.()
    giveBack()
    // Without a handler the signal does what it does to any program.
    process.off('SIGTSTP', onStopSignal)
    process.kill(whom, 'SIGTSTP')
    setTimeout(() => suspended && resume(), STOPPED_WITHIN_MILLISECONDS)
  }
  const onStopSignal = () => stop(process.pid)

  const fail = (fault: unknown) => {
    leave()
    streams.errors.write(faultSentence(fault))
    exit(EXIT.ourFault)
  }
  for (const [signal, code] of Object.entries(SIGNAL_EXIT)) {
    listen(signal, () => {
      leave()
      exit(code)
    })
  }
  listen('uncaughtException', fail)
  listen('unhandledRejection', fail)
  listen('exit', leave)
  listen('SIGCONT', resume)
  process.on('SIGTSTP', onStopSignal)

  take()
  return { leave, suspend: () => stop(OWN_GROUP) }
}
