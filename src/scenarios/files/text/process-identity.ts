import { createHash } from 'node:crypto'
import { readFileSync, readlinkSync } from 'node:fs'
import { hostname } from 'node:os'

/** Who holds something: enough to tell this process from any other that has had or will have its number. */
export interface ProcessIdentity {
  readonly host: string
  /**
   * Names the set of processes among which a number means one process: host, boot and, where there is such a thing, the
   * process namespace (a container's own numbers).
   */
  readonly machine: string
  readonly pid: number
  /** When the process began, in ticks since the boot; null where the system does not tell. */
  readonly started: number | null
}

let own: ProcessIdentity | undefined

/** The identity of this process. */
export function ownIdentity(): ProcessIdentity {
  own ??= { host: hostname(), machine: machineName(), pid: process.pid, started: startOf('self')?.ticks ?? null }
  return own
}

/** Whether a process has ended; null where that cannot be told from here. */
export function isGone({ machine, pid, started }: Omit<ProcessIdentity, 'host'>): boolean | null {
  if (machine !== ownIdentity().machine) return null
  if (!isNumberTaken(pid)) return true
  const now = startOf(pid)
  if (now === null || started === null) return pid === process.pid ? started !== ownIdentity().started : false
  return now.hasEnded || now.ticks !== started
}

function machineName(): string {
  const boot = textOf('/proc/sys/kernel/random/boot_id') ?? ''
  const space = linkOf('/proc/self/ns/pid') ?? ''
  return createHash('sha256').update([hostname(), boot, space].join('\n')).digest('hex').slice(0, 12)
}

function isNumberTaken(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Field 22 of /proc/PID/stat, and whether field 3 says that it only waits to be collected: proc(5). */
function startOf(pid: number | 'self'): { readonly ticks: number; readonly hasEnded: boolean } | null {
  const text = textOf(`/proc/${pid}/stat`)
  if (text === null) return null
  // The second field is a name in brackets, which may hold anything.
  const fields = text.slice(text.lastIndexOf(')') + 2).split(' ')
  const ticks = Number(fields[19])
  return Number.isFinite(ticks) ? { ticks, hasEnded: fields[0] === 'Z' || fields[0] === 'X' } : null
}

function textOf(path: string): string | null {
  try {
    return readFileSync(path, 'utf8')
  } catch {
    return null
  }
}

function linkOf(path: string): string | null {
  try {
    return readlinkSync(path)
  } catch {
    return null
  }
}
