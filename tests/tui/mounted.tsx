import { setTimeout as wait } from 'node:timers/promises'
import { render } from 'ink'
import { Trainer, type TrainerParts } from '../../src/tui/app/app.js'
import { createKeyReader } from '../../src/tui/terminal/key-reader.js'
import { createPainter, type PaintTarget } from '../../src/tui/terminal/painter.js'
import { PLAIN } from './fixtures.js'
import { fakeKeySource } from './terminal/fake-key-source.js'
import { type FakeTerminal, fakeTerminal } from './terminal/fake-terminal.js'

const LONGEST_WAIT_MILLISECONDS = 8000

type Shown = Omit<TrainerParts, 'painter' | 'keys'>

interface MountedEdges {
  type(keys: string): void
  readonly exit: Promise<unknown>
  close(): void
}

/** The whole trainer between its two edges, drawn on whatever takes bytes. */
export function mountOn(target: PaintTarget, shown: Shown): MountedEdges {
  const painter = createPainter(target)
  const source = fakeKeySource()
  const keys = createKeyReader(source, { onInterrupt: () => {} })
  const app = render(<Trainer {...shown} painter={painter} keys={keys} />, {
    stdout: painter as unknown as NodeJS.WriteStream,
    stdin: keys as unknown as NodeJS.ReadStream,
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  })
  return {
    type: (text) => void source.emit('data', text),
    exit: app.waitUntilExit(),
    close() {
      app.unmount()
      painter.close()
      keys.close()
    },
  }
}

type MountedParts = Pick<Shown, 'services' | 'initial'> &
  Partial<Pick<Shown, 'theme' | 'noMotion'>> & { readonly columns?: number; readonly rows?: number }

export interface Mounted extends MountedEdges {
  readonly terminal: FakeTerminal
  /** What stands on the emulated screen. */
  screen(): Promise<string>
  /** Waits until a text stands on the emulated screen, and returns all that stands there then. */
  until(text: string | RegExp): Promise<string>
  /** Types keys and waits for a text. */
  press(keys: string, text: string | RegExp): Promise<string>
}

/** The whole trainer with xterm.js as the terminal. */
export function mountTrainer({
  services,
  initial,
  theme = PLAIN,
  noMotion = false,
  columns = 80,
  rows = 24,
}: MountedParts): Mounted {
  const terminal = fakeTerminal(columns, rows)
  const edges = mountOn(terminal, { services, theme, initial, noMotion })
  const screen = async () => (await terminal.screen()).join('\n')
  const until = async (text: string | RegExp) => {
    const deadline = performance.now() + LONGEST_WAIT_MILLISECONDS
    for (;;) {
      const now = await screen()
      if (typeof text === 'string' ? now.includes(text) : text.test(now)) return now
      if (performance.now() > deadline) throw new Error(`"${text}" did not come on the screen; there was:\n${now}`)
      await wait(10)
    }
  }
  return {
    ...edges,
    terminal,
    screen,
    until,
    press(keys, text) {
      edges.type(keys)
      return until(text)
    },
  }
}
