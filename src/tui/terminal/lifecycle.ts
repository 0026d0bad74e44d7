import { EXIT, SIGNAL_EXIT } from '../../scenarios/files/text/exit-codes.js'

/** The streams a full-screen program holds while it runs. */
export interface TerminalStreams {
  readonly input: { setRawMode?(on: boolean): unknown }
  readonly output: { write(data: string): unknown }
  readonly errors: { write(data: string): unknown }
}

export interface TerminalHold {
  /** Give the terminal back as it was found. Safe to call twice. */
  leave(): void
}

const ENTER = '\u001B[?1049h\u001B[?25l\u001B[2J\u001B[H\u001B[?2004h'
const LEAVE = '\u001B[0m\u001B[?1006l\u001B[?1000l\u001B[?2004l\u001B[?25h\u001B[?1049l'

/** One sentence about an unforeseen fault. */
export function faultSentence(fault: unknown): string {
  const reason = fault instanceof Error ? fault.message : String(fault)
  return `dryboard: something went wrong on our side: ${reason.split('\n')[0]}\n`
}

/**
 * Takes the terminal over: alternate screen, hidden cursor, raw keys, bracketed paste. However the program ends
 * (by itself, by signal, by an uncaught fault), the terminal is given back first.
 */
export function holdTerminal(streams: TerminalStreams, exit: (code: number) => void = process.exit): TerminalHold {
  let held = true
  const handlers: [string, (...parts: never[]) => void][] = []
  const listen = (event: string, handler: (...parts: never[]) => void) => {
    handlers.push([event, handler])
    process.on(event, handler as () => void)
  }

  const leave = () => {
    if (!held) return
    held = false
    for (const [event, handler] of handlers) process.off(event, handler as () => void)
    try {
      streams.input.setRawMode?.(false)
      streams.output.write(LEAVE)
    } catch {
      // The terminal is already gone (a hang-up); there is nobody left to tell.
    }
  }

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

  streams.input.setRawMode?.(true)
  streams.output.write(ENTER)
  return { leave }
}
