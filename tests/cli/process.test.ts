import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { keptPath } from './played-record.js'

interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

const data = mkdtempSync(join(tmpdir(), 'dryboard-'))

/** The program in a process of its own, without a terminal. */
function dryboard(argv: readonly string[], input = '', environment: Record<string, string> = {}): Promise<Ended> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli.ts', ...argv], {
    env: { ...process.env, DRYBOARD_DATA: data, ...environment },
  })
  let [out, err] = ['', '']
  child.stdout.on('data', (chunk) => {
    out += chunk
  })
  child.stderr.on('data', (chunk) => {
    err += chunk
  })
  child.stdin.on('error', () => {})
  child.stdin.end(input)
  return new Promise((resolve) => child.on('close', (code) => resolve({ code, out, err })))
}

describe('the program as a process', () => {
  it('shows a demonstration where there is no terminal', async () => {
    const { code, out, err } = await dryboard([])
    expect([code, err]).toEqual([0, ''])
    expect(out).toMatch(/demonstration/)
    expect(out).toMatch(/Game 1, frame 2, ball 1/)
    expect(out).toMatch(/^(Cost \d+\.\d pins|Good as the best)\. /m)
  })

  it('plays a piped block with results apart from messages, keeps it and replays it', async () => {
    const piped = 'ball 3 feet 24 target 12\n?\n2 and 1 left\n\nfeet 99\n\n'
    const played = await dryboard(['play', 'house-forty', '--plain', '--no-grade', '--seed', 'pipe'], piped)
    expect(played.code).toBe(0)
    expect(played.out).toMatch(/2 and 1 left/)
    expect(played.out).toMatch(/Slide can be from board 8 to 46, not 99\./)
    expect(played.out).toMatch(/The block stops here, unfinished\./)
    const path = keptPath(played)
    expect(JSON.parse(readFileSync(path, 'utf8')).decisions).toHaveLength(4)
    const verified = await dryboard(['verify', path])
    expect(verified.code).toBe(0)
    expect(verified.out.split('\n')[0]).toBe(`${path}: the same, 4 throws, unfinished, nothing scored`)
  })

  it('ends quietly when its reader has seen enough', async () => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli.ts', 'pattern', 'house-forty'])
    let err = ''
    child.stderr.on('data', (chunk) => {
      err += chunk
    })
    child.stdout.destroy()
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect([code, err]).toEqual([0, ''])
  })

  it('keeps what was thrown when it is interrupted, and ends with 130', async () => {
    const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli.ts', 'play', 'house-forty', '--plain'], {
      env: { ...process.env, DRYBOARD_DATA: data },
    })
    let [out, err] = ['', '']
    child.stderr.on('data', (chunk) => {
      err += chunk
    })
    child.stdout.on('data', (chunk) => {
      out += chunk
      if (out.includes('Practice throw 2') && !child.killed) child.kill('SIGINT')
    })
    child.stdin.write('\n')
    const code = await new Promise((resolve) => child.on('close', resolve))
    expect(code).toBe(130)
    expect(err).toMatch(/^Record kept: /)
  })

  it('ends with 73 where a record cannot be written', async () => {
    const file = join(data, 'a-file')
    writeFileSync(file, '')
    const { code, err } = await dryboard(['play', 'house-forty', '--plain', '--data', file], '\n')
    expect(code).toBe(73)
    expect(err).toMatch(/cannot be written/)
    expect(err).not.toMatch(/ at .*\.[jt]s:/)
  })
})
