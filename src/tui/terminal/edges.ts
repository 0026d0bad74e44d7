import { SIGNAL_EXIT } from '../../scenarios/files/text/exit-codes.js'
import { createKeyReader, type KeyReader, type KeySource } from './key-reader.js'
import { holdTerminal, type TerminalHold, type TerminalStreams } from './lifecycle.js'
import { createPainter, type Painter, type PaintTarget } from './painter.js'

interface Streams {
  readonly stdin: KeySource & TerminalStreams['input']
  readonly stdout: PaintTarget
  readonly stderr: TerminalStreams['errors']
}

/** The terminal taken over: keys come out of one edge, and pictures go into the other. */
export interface TerminalEdges {
  readonly painter: Painter
  readonly keys: KeyReader
  /** Give all of it back. */
  readonly leave: TerminalHold['leave']
}

/** Takes the terminal of a process over, with the keys that end or stop any program. */
export function takeTerminal({ stdin, stdout, stderr }: Streams): TerminalEdges {
  const painter = createPainter(stdout)
  const hold = holdTerminal(
    { input: stdin, output: stdout, errors: stderr },
    { onSuspend: painter.pause, onResume: painter.repaint },
  )
  const end = (code: number) => {
    hold.leave()
    process.exit(code)
  }
  const keys = createKeyReader(stdin, {
    onInterrupt: () => end(SIGNAL_EXIT.SIGINT),
    onRedraw: painter.repaint,
    onSuspend: hold.suspend,
    onQuit: () => end(SIGNAL_EXIT.SIGQUIT),
    onEnd: () => end(SIGNAL_EXIT.SIGHUP),
  })
  return {
    painter,
    keys,
    leave() {
      painter.close()
      keys.close()
      hold.leave()
    },
  }
}
