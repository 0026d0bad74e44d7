import { WriteError } from '../../files/text/atomic-write.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { ScenarioError } from '../../files/text/scenario-error.js'

interface FaultReport {
  readonly sentences: readonly string[]
  readonly exitCode: number
}

/** Calls of the system that look only; whatever else fails was to change something. */
const READING_CALLS = new Set([
  'open',
  'read',
  'stat',
  'lstat',
  'fstat',
  'scandir',
  'opendir',
  'readlink',
  'realpath',
  'access',
])
/** Reasons that only a file to be written gives. */
const WRITING_REASONS = new Set(['ENOSPC', 'EFBIG', 'EROFS', 'EDQUOT'])

/** What to say about a command that failed, and what to end with; never a stack trace. */
export function faultReport(fault: unknown): FaultReport {
  if (fault instanceof ScenarioError) {
    return { sentences: fault.sentences, exitCode: fault.missing ? EXIT.missingFile : EXIT.badData }
  }
  if (fault instanceof WriteError) return { sentences: [fault.message], exitCode: EXIT.cannotWrite }
  const bySystem = refusedBySystem(fault)
  if (bySystem) return bySystem
  const reason = fault instanceof Error ? fault.message : String(fault)
  return {
    sentences: [`dryboard: something went wrong on our side: ${reason.split('\n')[0]}`],
    exitCode: EXIT.ourFault,
  }
}

/** A file that the system would not open, read or write; null for any other fault. */
function refusedBySystem(fault: unknown): FaultReport | null {
  const { code, syscall, path } = (fault ?? {}) as NodeJS.ErrnoException
  if (!(fault instanceof Error) || typeof code !== 'string' || typeof syscall !== 'string') return null
  const reads = READING_CALLS.has(syscall) && !WRITING_REASONS.has(code)
  const what = path ?? (reads ? 'a file' : 'a file to be written')
  return {
    sentences: [`${what}: cannot be ${reads ? 'read' : 'written'} (${code}).`],
    exitCode: reads ? EXIT.missingFile : EXIT.cannotWrite,
  }
}
