import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it, vi } from 'vitest'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-streams-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const loader = createRequire(import.meta.url).resolve('tsx')
const DRYBOARD = `'${process.execPath}' --import '${loader}' src/cli.ts`

/** A shell line with `dryboard` in it, and what standard error said. */
function shell(line: string): Promise<{ code: number | null; err: string }> {
  const child = spawn('bash', ['-c', line.replaceAll('dryboard', DRYBOARD)], {
    env: { ...process.env, DRYBOARD_DATA: join(folder, 'data'), DRYBOARD_CONFIG: folder },
  })
  let err = ''
  child.stderr.on('data', (chunk) => {
    err += chunk
  })
  child.stdout.resume()
  child.stdin.end()
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, err })))
}

describe('streams that fail', () => {
  it.runIf(existsSync('/dev/full')).each([
    [
      'a full device',
      'dryboard scenario schema > /dev/full',
      73,
      /^standard output: cannot be written \(.*ENOSPC.*\.$/,
    ],
    ['standard error that nobody reads', 'dryboard pattern no-such-file 2> >(exec true)', 66, /^$/],
    ['a full standard error', 'dryboard pattern no-such-file 2> /dev/full', 66, /^$/],
  ])('end in a sentence and their code: %s', async (_, line, code, says) => {
    const ended = await shell(line)
    expect(ended.code).toBe(code)
    expect(ended.err.trim().split('\n')[0]).toMatch(says)
    expect(ended.err).not.toMatch(/\n\s+at /)
  })

  it('keep the block when its terminal hangs up, and end with 129', async () => {
    const [code, err, data] = ['code', 'err', 'hung'].map((name) => join(folder, name)) as [string, string, string]
    const inner = `trap : HUP; ${DRYBOARD} play house-forty --plain --no-grade --data ${data} 2> ${err}; echo $? > ${code}`
    const child = spawn('script', ['-qec', inner, '/dev/null'])
    let shown = ''
    child.stdout.on('data', (chunk) => {
      shown += chunk
    })
    child.stdin.on('error', () => {})
    await vi.waitFor(() => expect(shown).toContain('Enter throws'), { timeout: 30_000, interval: 50 })
    child.stdin.write('\n')
    await vi.waitFor(() => expect(shown).toContain('Practice throw 2'), { timeout: 30_000, interval: 50 })
    child.kill('SIGKILL')
    await vi.waitFor(() => expect(existsSync(code) && readFileSync(code, 'utf8')).toBe('129\n'), { timeout: 30_000 })
    expect(readdirSync(join(data, 'records'))).toHaveLength(1)
    expect(readFileSync(err, 'utf8')).not.toMatch(/\n\s+at |went wrong/)
  }, 90_000)
})

it('shows what is hidden in a name on the real streams', async () => {
  const child = spawn(process.execPath, ['--import', loader, 'src/cli.ts', 'pattern', 'x\u001B[31m\u202E\n.yaml'])
  let err = ''
  child.stderr.on('data', (chunk) => {
    err += chunk
  })
  await new Promise((done) => child.on('close', done))
  expect(err).toContain('x\\x1b[31m\\u202e\\n.yaml: there is no such file')
  expect(err.replaceAll('\n', '')).toMatch(/^[\x20-\x7e]*$/)
})
