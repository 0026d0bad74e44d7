import { Box, render, Text, useInput } from 'ink'
import SelectInput from 'ink-select-input'
import { useState } from 'react'
import { describe, expect, it, vi } from 'vitest'
import { createKeyReader } from '../../../src/tui/terminal/key-reader.js'
import { createPainter } from '../../../src/tui/terminal/painter.js'
import { fakeKeySource } from './fake-key-source.js'
import { fakeTerminal } from './fake-terminal.js'

function Probe({ rows, onPick }: { rows: number; onPick: (value: string) => void }) {
  const [heard, setHeard] = useState<string[]>([])
  useInput((input, key) => {
    const name = key.backspace ? 'backspace' : key.escape ? 'escape' : key.leftArrow ? 'left' : input
    if (name !== '') setHeard((before) => [...before, name])
  })
  return (
    <Box flexDirection="column" height={rows}>
      <Text>heard {heard.join(' ')}</Text>
      <SelectInput
        items={['one', 'two', 'three'].map((value) => ({ label: value, value }))}
        onSelect={(item) => onPick(item.value)}
      />
      <Box flexGrow={1} />
      <Text>bottom row</Text>
    </Box>
  )
}

function mount() {
  const terminal = fakeTerminal(40, 10)
  const painter = createPainter(terminal)
  const source = fakeKeySource()
  const reader = createKeyReader(source, { onInterrupt: () => {} })
  const onPick = vi.fn()
  const app = render(<Probe rows={10} onPick={onPick} />, {
    stdout: painter as unknown as NodeJS.WriteStream,
    stdin: reader as unknown as NodeJS.ReadStream,
    debug: true,
    patchConsole: false,
    exitOnCtrlC: false,
  })
  return { terminal, source, app, onPick }
}

describe('Ink between the two edges', () => {
  it('fills the whole screen and hears keys one by one', async () => {
    const { terminal, source, app } = mount()
    await vi.waitFor(async () => expect((await terminal.screen())[9]).toBe('bottom row'))
    source.emit('data', 'xx\u007f\u001B[D\u001B[1;5Py')
    await vi.waitFor(async () => expect((await terminal.screen())[0]).toBe('heard x x backspace left y'))
    source.emit('data', '\u001B')
    await vi.waitFor(async () => expect((await terminal.screen())[0]).toBe('heard x x backspace left y escape'))
    app.unmount()
  })

  it('drives ink-select-input', async () => {
    const { terminal, source, app, onPick } = mount()
    await vi.waitFor(async () => expect((await terminal.screen())[1]).toContain('one'))
    source.emit('data', '\u001B[B\r')
    await vi.waitFor(() => expect(onPick).toHaveBeenCalledWith('two'))
    app.unmount()
  })
})
