import { EventEmitter } from 'node:events'
import { render } from 'ink'
import { Trainer, type TrainerParts } from '../../src/tui/app.js'
import { createKeyReader } from '../../src/tui/terminal/key-reader.js'
import { createPainter } from '../../src/tui/terminal/painter.js'
import { PLAIN } from './fixtures.js'
import { type FakeTerminal, fakeTerminal } from './terminal/fake-terminal.js'

type MountedParts = Pick<TrainerParts, 'services' | 'initial'> &
  Partial<Pick<TrainerParts, 'theme' | 'noMotion'>> & { readonly columns?: number; readonly rows?: number }

export interface Mounted {
  readonly terminal: FakeTerminal
  type(keys: string): void
  /** What stands on the emulated screen. */
  screen(): Promise<string>
  readonly exit: Promise<unknown>
  close(): void
}

/** The whole trainer between its two edges, with xterm.js as the terminal. */
export function mountTrainer({
  services,
  initial,
  theme = PLAIN,
  noMotion = false,
  columns = 80,
  rows = 24,
}: MountedParts): Mounted {
  const terminal = fakeTerminal(columns, rows)
  const painter = createPainter(terminal)
  const source = Object.assign(new EventEmitter(), { setEncoding() {}, resume() {}, pause() {} })
  const keys = createKeyReader(source, { onInterrupt: () => {} })
  const app = render(<Trainer {...{ painter, keys, services, theme, initial, noMotion }} />, {
    stdout: painter as unknown as NodeJS.WriteStream,
    stdin: keys as unknown as NodeJS.ReadStream,
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  })
  return {
    terminal,
    type: (text) => void source.emit('data', text),
    screen: async () => (await terminal.screen()).join('\n'),
    exit: app.waitUntilExit(),
    close() {
      app.unmount()
      painter.close()
      keys.close()
    },
  }
}
