import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { z } from 'zod'
import { SKILL_OF, SKILLS, type Skill } from '../../sim/analysis/debrief/findings/skills.js'
import { replaceFile } from '../files/text/replace-file.js'
import { debriefName } from './debrief-name.js'
import { type KeptAccount, readKeptAccount } from './kept-account.js'
import { type BlockRecord, ownThrows } from './record.js'
import { sealedText, unsealed } from './sealed-text.js'

/** The few figures of a block that a list of blocks needs; all of them come from its kept account. */
export interface BlockSummary {
  /** What the player's own choices cost; null while not every one of them is graded. */
  readonly costPins: number | null
  /** The part of it that findings name, by skill; null while there is no account. */
  readonly skillPins: Readonly<Partial<Record<Skill, number>>> | null
  /** How each throw met the rack, by the throw's number; empty while there is no account. */
  readonly contacts: readonly string[]
}

const FORMAT = 'dryboard-summary'
const FORMAT_VERSION = 1
const schema = z.strictObject({
  costPins: z.number().min(0).nullable(),
  skillPins: z.partialRecord(z.enum(SKILLS), z.number()).nullable(),
  contacts: z.array(z.string()),
})

const pathOf = (folder: string, record: BlockRecord): string => join(folder, `${debriefName(record)}.summary.json`)

/**
 * The figures of a record's block, read from the summary kept beside its account, else taken from that account; null where there is
 * neither. Nothing is graded here.
 */
export async function summaryOfRecord(folder: string, record: BlockRecord): Promise<BlockSummary | null> {
  const kept = await readSummary(folder, record)
  if (kept?.skillPins) return kept
  const worked = await readKeptAccount(folder, record)
  if (!worked) return kept
  const summary = summaryOf(worked, record)
  await replaceFile(pathOf(folder, record), sealedText(FORMAT, FORMAT_VERSION, JSON.stringify(summary))).catch(() => {})
  return summary
}

/** The figures of what was worked out of a block. */
export function summaryOf({ grades, account }: KeptAccount, record: BlockRecord): BlockSummary {
  const own = ownThrows(record)
  const isGraded = grades.every((grade) => grade !== undefined)
  const skillPins: Partial<Record<Skill, number>> = {}
  for (const { kind, pins } of account?.tags ?? []) {
    skillPins[SKILL_OF[kind]] = (skillPins[SKILL_OF[kind]] ?? 0) + pins
  }
  const graded = grades.reduce((sum, grade, index) => sum + (own[index] ? (grade?.givenAwayPins ?? 0) : 0), 0)
  return {
    costPins: account?.sums.block.chargedPins ?? (isGraded ? graded : null),
    skillPins: account && skillPins,
    contacts: account?.throws.map(({ observation }) => observation.contact) ?? [],
  }
}

async function readSummary(folder: string, record: BlockRecord): Promise<BlockSummary | null> {
  try {
    const text = unsealed(FORMAT, FORMAT_VERSION, await readFile(pathOf(folder, record), 'utf8'))
    const checked = text === null ? null : schema.safeParse(JSON.parse(text))
    return checked?.success ? checked.data : null
  } catch {
    return null
  }
}
