import { spawn } from 'node:child_process'
import { mkdtempSync, readdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const CONTROL = new RegExp(`${String.fromCharCode(27)}|\\r(?!\\n)`)

const THROWS = 6

/** The program on a pseudo-terminal that util-linux's `script` opens, Enter pressed at so many offers of a throw, then quit. */
function playedAloud(data: string): Promise<{ readonly code: number | null; readonly heard: string }> {
  const command = `exec '${process.execPath}' --import tsx src/cli.ts`
  const child = spawn('script', ['-qfec', command, '/dev/null'], {
    env: {
      ...process.env,
      INK_SCREEN_READER: 'true',
      DRYBOARD_DATA: data,
      DRYBOARD_CONFIG: join(data, 'config'),
      TERM: 'xterm-256color',
    },
    stdio: ['pipe', 'pipe', 'ignore'],
  })
  let heard = ''
  let answered = 0
  child.stdin.on('error', () => {})
  child.stdout.on('data', (bytes: Buffer) => {
    heard += bytes.toString()
    for (const offers = heard.split('Enter throws:').length - 1; answered < offers; answered++)
      child.stdin.write(answered < THROWS ? '\n' : 'quit\n')
  })
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, heard })))
}

describe('a screen reader', () => {
  it('is told in one sentence that nothing is drawn, and hears a block from its start to where it is left', async () => {
    const data = mkdtempSync(join(tmpdir(), 'dryboard-aloud-'))
    const { code, heard } = await playedAloud(data)
    const lines = heard.split('\r\n')
    expect(lines[0]).toMatch(/^dryboard: INK_SCREEN_READER is set, so a block is played line by line; [^.]*\.$/)
    expect(heard.split('INK_SCREEN_READER')).toHaveLength(2)
    expect(heard).toMatch(/Practice throw 1, lane 3\. Full rack\./)
    expect(heard).toMatch(/Game 1, frame 1, ball 1/)
    expect(heard).toMatch(/The block stops here, unfinished\./)
    expect(heard).not.toMatch(CONTROL)
    expect(code).toBe(0)
    expect(readdirSync(join(data, 'records'))).toHaveLength(1)
  }, 180_000)
})
