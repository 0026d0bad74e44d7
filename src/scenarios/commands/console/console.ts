export type StopSignal = 'SIGHUP' | 'SIGINT' | 'SIGTERM'

/** Where a command reads and writes: results, messages and the lines a person types. */
export interface CommandConsole {
  /** A result line, to standard output. */
  readonly print: (text: string) => void
  /** A message line, to standard error. */
  readonly tell: (text: string) => void
  /** A passing word on standard error that the next one replaces and an empty one takes away; nothing where nobody watches. */
  readonly hint: (text: string) => void
  /** Lines typed or piped in, until the input ends or a signal asks to stop. */
  readonly lines: () => AsyncIterable<string>
  /** The signal that ended the lines, if one did. */
  readonly stoppedBy: () => StopSignal | null
  /** Whether a person sits at both ends, so that prompts are worth printing. */
  readonly interactive: boolean
  readonly environment: Readonly<Record<string, string | undefined>>
}
