import { z } from 'zod'
import { identifier, line, listOf, oneOf, table, wholeFrom } from '../files/schema/fields.js'
import { scenarioSchema } from '../files/schema/scenario.js'

/** Formats of the files a block is kept in; versions count up and old ones stay readable. */
export const RECORD_FORMAT = 'dryboard-record'
export const RECORD_VERSION = 1
export const JOURNAL_FORMAT = 'dryboard-journal'
export const JOURNAL_VERSION = 1

export const decisionSchema = table(
  {
    ball: identifier(),
    feet: z.number({ error: () => 'a board' }),
    target: z.number({ error: () => 'a board' }),
    speed: oneOf('softer', 'usual', 'firmer'),
    release: oneOf('strike', 'spare'),
    standing: wholeFrom(0, 1023),
  },
  'a decision and the pins left standing after it',
)

/** One throw as kept: what was decided, and the pins it left as bits, bit n − 1 for pin n. */
export type KeptDecision = z.output<typeof decisionSchema>

const blockFields = {
  program: line(40),
  /** What the pins were thrown by, what the choices were priced by, and what was played: see `hashes.ts`. */
  model: line(80),
  carryTable: line(80),
  scenarioHash: line(80),
  name: line(200),
  scenario: scenarioSchema,
  seed: line(80),
  /** Who played; nobody has said where it is left out. */
  player: line(60).optional(),
}

export const recordSchema = table(
  {
    format: z.literal(RECORD_FORMAT, { error: () => `"${RECORD_FORMAT}"` }),
    version: z.literal(RECORD_VERSION, { error: () => String(RECORD_VERSION) }),
    ...blockFields,
    decisions: listOf(decisionSchema, 0, 2000, 'decisions'),
  },
  'a record',
)

export const journalHeadSchema = table(
  {
    format: z.literal(JOURNAL_FORMAT, { error: () => `"${JOURNAL_FORMAT}"` }),
    version: z.literal(JOURNAL_VERSION, { error: () => String(JOURNAL_VERSION) }),
    ...blockFields,
  },
  "a journal's first line",
)
export type JournalHead = z.output<typeof journalHeadSchema>
