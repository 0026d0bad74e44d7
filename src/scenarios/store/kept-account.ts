import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Account } from '../../sim/analysis/debrief/account.js'
import type { FairGrade } from '../../sim/analysis/grade/grade-types.js'
import { replaceFile } from '../files/text/replace-file.js'
import { debriefName } from './debrief-name.js'
import type { BlockRecord } from './record.js'
import { sealedText, unsealed } from './sealed-text.js'

/** What was worked out of a block: the grades as far as they came, and the whole account once there is one. */
export interface KeptAccount {
  /** By the throw's number; undefined where nobody has asked, null where a throw is not priced. */
  readonly grades: readonly (FairGrade | null | undefined)[]
  readonly account: Account | null
}

const FORMAT = 'dryboard-account'
const VERSION = 3

/** Unlike a review's debrief it holds every figure to the last bit, for the screen goes on working with it. */
const pathOf = (folder: string, record: BlockRecord): string => join(folder, `${debriefName(record)}.account.json`)

/** Keeps what was worked out of a record's block among the debriefs. @throws WriteError */
export async function keepAccount(
  folder: string,
  record: BlockRecord,
  { grades, account }: KeptAccount,
): Promise<void> {
  await replaceFile(pathOf(folder, record), sealedText(FORMAT, VERSION, JSON.stringify({ grades, account }, spelt)))
}

/** What is kept of a record's block; null where there is nothing that fits it, which can always be worked out anew. */
export async function readKeptAccount(folder: string, record: BlockRecord): Promise<KeptAccount | null> {
  try {
    const text = unsealed(FORMAT, VERSION, await readFile(pathOf(folder, record), 'utf8'))
    if (text === null) return null
    const { grades, account } = JSON.parse(text, read) as Partial<KeptAccount>
    const count = record.decisions.length
    if (grades?.length !== count || account === undefined) return null
    if (account !== null && account.throws.length !== count) return null
    return { grades: Array.from(grades, (grade) => (isUnasked(grade) ? undefined : grade)), account }
  } catch {
    return null
  }
}

const UNASKED = 'not asked'
const isUnasked = (grade: unknown): boolean => grade === UNASKED

/** JSON has no arrays of doubles, no NaN, no infinities and no minus zero; they are spelt out. */
function spelt(_name: string, value: unknown): unknown {
  if (value === undefined) return UNASKED
  if (value instanceof Float64Array) {
    return { doubles: Buffer.from(value.buffer, value.byteOffset, value.byteLength).toString('base64') }
  }
  if (typeof value === 'number' && (!Number.isFinite(value) || Object.is(value, -0))) {
    return { number: Object.is(value, -0) ? '-0' : String(value) }
  }
  return value
}

function read(_name: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value
  if ('doubles' in value && typeof value.doubles === 'string') {
    const bytes = new Uint8Array(Buffer.from(value.doubles, 'base64'))
    return new Float64Array(bytes.buffer)
  }
  if ('number' in value && typeof value.number === 'string') return Number(value.number)
  return value
}
