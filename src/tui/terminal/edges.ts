import { createKeyReader, type KeyReader, type KeySource } from './key-reader.js'
import {
  EXIT_HUNG_UP,
  EXIT_INTERRUPTED,
  EXIT_QUIT,
  holdTerminal,
  type TerminalHold,
  type TerminalStreams,
} from './lifecycle.js'
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
    onInterrupt: () => end(EXIT_INTERRUPTED),
    onRedraw: painter.repaint,
    onSuspend: hold.suspend,
    onQuit: () => end(EXIT_QUIT),
    onEnd: () => end(EXIT_HUNG_UP),
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
