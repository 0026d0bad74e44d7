import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type KilledPlay, lookedOver } from './kill-moments.js'

/** One system call of the program that fails: which, with what, the how-manieth, and whether all after it do too. */
export interface FailingCall {
  readonly call: string
  readonly code: string
  readonly at: number
  readonly forEver: boolean
}

export interface FailedPlay extends KilledPlay {
  readonly exitCode: number | null
  /** What of a stack trace was printed. */
  readonly trace: string
}

/** Whether the tracing tool of Linux distributions is there and may trace. */
export const canTrace = (): boolean => spawnSync('strace', ['-f', '-o', '/dev/null', 'true']).status === 0

/** Plays a few throws to the end of a script with one system call made to fail, and looks at what is on the disk. */
export async function playFailing(
  { call, code, at, forEver }: FailingCall,
  program: readonly string[],
): Promise<FailedPlay> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-failing-'))
  const script = join(data, 'script.txt')
  writeFileSync(script, '\n'.repeat(3))
  const inject = `inject=${call}:error=${code}:when=${at}${forEver ? '+' : ''}`
  const play = ['play', 'house-forty', '--script', script, '--seed', 'fails', '--no-grade', '--data', data]
  const argv = [
    '-f',
    '-qq',
    '-o',
    '/dev/null',
    '-e',
    `trace=${call}`,
    '-e',
    inject,
    process.execPath,
    ...program,
    ...play,
  ]
  const { stdout, stderr, status } = spawnSync('strace', argv, { encoding: 'utf8' })
  const told = stdout.match(/ Seen: /g)?.length ?? 0
  const trace = /^\s+at .*$/m.exec(stderr)?.[0] ?? ''
  return { ...(await lookedOver(data, told)), exitCode: status, trace }
}
