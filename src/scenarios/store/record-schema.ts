import { z } from 'zod'
import { identifier, line, listOf, oneOf, table, wholeFrom } from '../files/schema/fields.js'
import { scenarioSchema } from '../files/schema/scenario.js'
import { contestSectionSchema } from './contest-section.js'
import { beginningSchema, blockId, MAKERS, originSchema } from './origin.js'

/** Formats of the files a block is kept in; versions count up and old ones stay readable. */
export const RECORD_FORMAT = 'dryboard-record'
export const RECORD_VERSION = 2
export const JOURNAL_FORMAT = 'dryboard-journal'
export const JOURNAL_VERSION = 2

const decisionFields = {
  ball: identifier(),
  feet: z.number({ error: () => 'a board' }),
  target: z.number({ error: () => 'a board' }),
  speed: oneOf('softer', 'usual', 'firmer'),
  release: oneOf('strike', 'spare'),
  standing: wholeFrom(0, 1023),
}
const DECISION_WORDS = 'a decision and the pins left standing after it'

export const decisionSchema = table({ ...decisionFields, by: oneOf(...MAKERS) }, DECISION_WORDS)
export const decisionSchema1 = table(decisionFields, DECISION_WORDS)

/** One throw as kept: what was decided and by whom, and the pins it left as bits, bit n − 1 for pin n. */
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

const literal = <const Value extends string | number>(value: Value) =>
  z.literal(value, { error: () => (typeof value === 'string' ? `"${value}"` : String(value)) })

const MOST_DECISIONS = 2000

export const recordSchema = table(
  {
    format: literal(RECORD_FORMAT),
    version: literal(RECORD_VERSION),
    block: blockId(),
    origin: originSchema,
    ...blockFields,
    /** What contest it is an entry of; none where it is left out. */
    contest: contestSectionSchema.optional(),
    decisions: listOf(decisionSchema, 0, MOST_DECISIONS, 'decisions'),
    /** Of all the rest of the record: see `record-digest.ts`. */
    digest: line(80),
  },
  'a record',
)

/** The first version had neither identity nor origin nor digest. */
export const recordSchema1 = table(
  {
    format: literal(RECORD_FORMAT),
    version: literal(1),
    ...blockFields,
    decisions: listOf(decisionSchema1, 0, MOST_DECISIONS, 'decisions'),
  },
  'a record',
)

const HEAD_WORDS = "a journal's first line"

export const journalHeadSchema = table(
  {
    format: literal(JOURNAL_FORMAT),
    version: literal(JOURNAL_VERSION),
    block: blockId(),
    origin: beginningSchema,
    ...blockFields,
    contest: contestSectionSchema.optional(),
  },
  HEAD_WORDS,
)
export type JournalHead = z.output<typeof journalHeadSchema>

export const journalHeadSchema1 = table(
  { format: literal(JOURNAL_FORMAT), version: literal(1), ...blockFields },
  HEAD_WORDS,
)

/** A line of a journal that names the record its block is about to be filed as. */
export const filingSchema = table({ filing: line(255) }, 'the name of the record it is filed as')
