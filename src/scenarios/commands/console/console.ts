export type StopSignal = 'SIGHUP' | 'SIGINT' | 'SIGTERM'

/**
 * Where a command reads and writes: results, messages and the lines a person types. Whatever is written is shown by
 * `visibleLine`, so that no text of a stranger drives a terminal; a line end within a line is one of those.
 */
export interface CommandConsole {
  /** A result line, to standard output. @throws WriteError where it cannot be written */
  readonly print: (line: string) => void
  /** A message line, to standard error. */
  readonly tell: (line: string) => void
  /** A passing word on standard error that the next one replaces and an empty one takes away; nothing where nobody watches. */
  readonly hint: (line: string) => void
  /** Whether a person watches standard error, so that passing words are seen. */
  readonly watched: boolean
  /** Lines typed or piped in, until the input ends or a signal asks to stop. */
  readonly lines: () => AsyncIterable<string>
  /** The signal that ended the lines, if one did. */
  readonly stoppedBy: () => StopSignal | null
  /** Whether a person sits at both ends, so that prompts are worth printing. */
  readonly interactive: boolean
  readonly environment: Readonly<Record<string, string | undefined>>
}

/** Prints a text of several lines, such as a JSON report. */
export function printText({ print }: Pick<CommandConsole, 'print'>, text: string): void {
  for (const line of text.split('\n')) print(line)
}
