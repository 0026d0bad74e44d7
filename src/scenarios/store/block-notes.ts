import { z } from 'zod'
import { TAG_KINDS, type TagKind } from '../../sim/analysis/debrief/findings/tag.js'
import type { Contact } from '../../sim/world/block/types.js'

/** When grades are told: before each result, once the block is over, or only in the debrief. */
export const MODES = ['drill', 'block', 'test'] as const
export type Mode = (typeof MODES)[number]

/** Reactions that can be called before a throw. */
export const CALL_CONTACTS = [
  'gutter',
  'missed',
  'light',
  'pocket',
  'high',
  'nose',
  'crossover',
] as const satisfies readonly Contact[]
export const CALL_CONFIDENCES = [50, 60, 70, 80, 90] as const

/** How the bowler says the coming ball will meet the rack, and how sure they are. */
export interface Call {
  readonly contact: (typeof CALL_CONTACTS)[number]
  readonly confidencePercent: (typeof CALL_CONFIDENCES)[number]
}

/** What players say of a dear choice before they are told: one of our findings, or that nothing was wrong with it. */
export const OWN_FINDINGS = ['nothing-wrong', ...TAG_KINDS] as const
export type OwnFinding = 'nothing-wrong' | TagKind

/** What a block holds beside its record: nothing that the simulator needs, all that the player said. */
export interface BlockNotes {
  readonly mode: Mode
  /** By the throw's number; a throw without a call has null. */
  readonly calls: readonly (Call | null)[]
  readonly ownFindings: readonly { readonly throwIndex: number; readonly finding: OwnFinding }[]
}

export const noNotes = (mode: Mode): BlockNotes => ({ mode, calls: [], ownFindings: [] })

const FORMAT = 'dryboard-said'
/** What the format was called when a coach's notes had the same name. */
const OLD_FORMAT = 'dryboard-notes'

const notesSchema = z.strictObject({
  format: z.literal([FORMAT, OLD_FORMAT]),
  version: z.literal(1),
  mode: z.enum(MODES),
  calls: z.array(
    z.strictObject({ contact: z.enum(CALL_CONTACTS), confidencePercent: z.literal(CALL_CONFIDENCES) }).nullable(),
  ),
  ownFindings: z.array(z.strictObject({ throwIndex: z.int().min(0), finding: z.enum(OWN_FINDINGS) })),
})

export function notesText(notes: BlockNotes): string {
  return `${JSON.stringify({ format: FORMAT, version: 1, ...notes })}\n`
}

/** Notes as kept; null where the text holds none that this program understands. */
export function readNotes(text: string): BlockNotes | null {
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    return null
  }
  const checked = notesSchema.safeParse(data)
  if (!checked.success) return null
  const { mode, calls, ownFindings } = checked.data
  return { mode, calls, ownFindings }
}
