import { spawn } from 'node:child_process'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import xterm from '@xterm/headless'
import { afterEach, expect, it, vi } from 'vitest'

const program = fileURLToPath(new URL('./edges-program.ts', import.meta.url))
const loader = createRequire(import.meta.url).resolve('tsx')

/** An interactive shell in a pseudo-terminal, with xterm.js as the judge of what stands on the screen. */
function shell() {
  const child = spawn(
    'script',
    ['-qec', 'stty rows 12 cols 60; PS1="shell> " exec bash --norc --noprofile -i', '/dev/null'],
    {
      env: { ...process.env, TERM: 'xterm', NODE_OPTIONS: '' },
    },
  )
  const emulator = new xterm.Terminal({ cols: 60, rows: 12, allowProposedApi: true })
  child.stdout.on('data', (chunk: Buffer) => emulator.write(chunk))
  const screen = async () => {
    await new Promise<void>((done) => emulator.write('', done))
    const { active } = emulator.buffer
    return Array.from({ length: 12 }, (_, y) => active.getLine(active.viewportY + y)!.translateToString(true)).join(
      '\n',
    )
  }
  return {
    type: (keys: string) => void child.stdin.write(keys),
    until: (text: string | RegExp) =>
      vi.waitFor(async () => expect(await screen()).toMatch(text), { timeout: 20_000, interval: 50 }),
    screen,
    alternate: () => emulator.buffer.active.type === 'alternate',
    close: () => child.kill('SIGKILL'),
  }
}

let open: ReturnType<typeof shell> | undefined
afterEach(() => open?.close())

// What any full-screen program does under a shell with job control (POSIX.1-2017, 11.1.9 and 2.4.3).
it('stops on Ctrl-Z with the terminal given back, draws itself anew on fg, and ends on Ctrl-\\ with it given back', async () => {
  open = shell()
  const { type, until, alternate, screen } = open
  await until('shell> ')
  type(`'${process.execPath}' --import '${loader}' '${program}'\n`)
  await until('on the screen')
  expect(alternate()).toBe(true)
  type('a')
  await until('on the screen a')

  type('\u001A')
  await until(/Stopped/)
  expect(alternate()).toBe(false)
  type('stty -a | grep -o "[-]*icanon"; echo said\n')
  await until(/\nicanon/)

  type('fg\n')
  await until('on the screen a')
  expect(alternate()).toBe(true)
  type('b')
  await until('on the screen ab')

  type('\u001C')
  await until(/shell> $/m)
  expect(alternate()).toBe(false)
  type('echo "ended with $?"; stty -a | grep -o "[-]*echo "\n')
  await until(/ended with 131\necho/)
  expect(await screen()).not.toContain('on the screen')
}, 60_000)
