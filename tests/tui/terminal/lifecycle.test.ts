import { spawn } from 'node:child_process'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { faultSentence } from '../../../src/tui/terminal/lifecycle.js'

const program = fileURLToPath(new URL('./lifecycle-program.ts', import.meta.url))
const loader = createRequire(import.meta.url).resolve('tsx')

interface Ending {
  code: number | null
  output: string
  errors: string
}

function run(way: string, signal?: NodeJS.Signals): Promise<Ending> {
  return new Promise((done) => {
    const child = spawn(process.execPath, ['--import', loader, program, way])
    const ending: Ending = { code: null, output: '', errors: '' }
    child.stdout.on('data', (data) => {
      ending.output += data
      if (signal && ending.output.endsWith('ready')) child.kill(signal)
    })
    child.stderr.on('data', (data) => {
      ending.errors += data
    })
    child.on('close', (code) => done({ ...ending, code }))
  })
}

const restored = '\u001B[?25h\u001B[?1049l'

// Exit codes: 128 + n for a signal is the shells' common practice; 70 is EX_SOFTWARE of sysexits.h.
describe('giving the terminal back', () => {
  it.each([
    ['SIGINT', 130],
    ['SIGTERM', 143],
    ['SIGHUP', 129],
  ] as const)('on %s leaves the alternate screen and exits %i', async (signal, code) => {
    const ending = await run('wait', signal)
    expect(ending.code).toBe(code)
    expect(ending.output.endsWith(restored)).toBe(true)
  })

  it.each(['throw', 'reject'])('on an uncaught fault (%s) says one sentence on stderr and exits 70', async (way) => {
    const ending = await run(way)
    expect(ending.code).toBe(70)
    expect(ending.output.endsWith(restored)).toBe(true)
    expect(ending.errors).toBe(faultSentence(new Error('the pins are on fire')))
  })

  it('restores once when the program simply ends', async () => {
    const ending = await run('end')
    expect(ending.code).toBe(0)
    expect(ending.output.split('\u001B[?1049l')).toHaveLength(2)
  })
})
