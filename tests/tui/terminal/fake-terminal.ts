import { EventEmitter } from 'node:events'
import xterm from '@xterm/headless'

/** A terminal emulator standing in for the real one: what was written, and what stands on its screen. */
export interface FakeTerminal extends EventEmitter {
  columns: number
  rows: number
  written: string[]
  write(data: string): boolean
  resizeTo(columns: number, rows: number): void
  screen(): Promise<string[]>
  scrollback(): Promise<number>
}

/** xterm.js in headless mode is the judge: an independent reading of the escape sequences we send. */
export function fakeTerminal(columns = 80, rows = 24): FakeTerminal {
  const emulator = new xterm.Terminal({ cols: columns, rows, allowProposedApi: true, scrollback: 500 })
  const settled = () => new Promise<void>((done) => emulator.write('', done))
  const terminal = Object.assign(new EventEmitter(), {
    columns,
    rows,
    written: [] as string[],
    write(data: string) {
      terminal.written.push(data)
      emulator.write(data)
      return true
    },
    resizeTo(newColumns: number, newRows: number) {
      terminal.columns = newColumns
      terminal.rows = newRows
      emulator.resize(newColumns, newRows)
      terminal.emit('resize')
    },
    async screen() {
      await settled()
      const buffer = emulator.buffer.active
      return Array.from(
        { length: terminal.rows },
        (_, y) => buffer.getLine(buffer.viewportY + y)?.translateToString(true) ?? '',
      )
    },
    async scrollback() {
      await settled()
      return emulator.buffer.normal.baseY
    },
  })
  return terminal
}
