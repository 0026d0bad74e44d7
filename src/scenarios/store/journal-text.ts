import type { z } from 'zod'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { checkScenarioHash } from './hashes.js'
import { UNKNOWN_ORIGIN } from './origin.js'
import type { BlockRecord } from './record.js'
import {
  decisionSchema,
  decisionSchema1,
  filingSchema,
  JOURNAL_VERSION,
  type JournalHead,
  journalHeadSchema,
  journalHeadSchema1,
  type KeptDecision,
  RECORD_FORMAT,
  RECORD_VERSION,
} from './record-schema.js'

export interface JournalText {
  /** The record the block would be as it was left. */
  readonly record: BlockRecord
  /** The name of the record it was about to be filed as; null where it was not. */
  readonly filing: string | null
}

/** One line of a journal, its end included. */
export const journalLine = (line: JournalHead | KeptDecision | { readonly filing: string }): string =>
  `${JSON.stringify(line)}\n`

/** Bytes of the lines of a journal that are whole: what a dying program left after them does not count. */
const wholeText = (text: string): string => text.slice(0, text.lastIndexOf('\n') + 1)

/**
 * Reads a journal of either version.
 *
 * @throws ScenarioError
 */
export function journalFromText(path: string, text: string): JournalText {
  const [first, ...rest] = wholeText(text).split('\n').slice(0, -1)
  if (first === undefined)
    throw new ScenarioError([`${path}: the journal ends before its first line does; nothing was thrown.`])
  const head = parsed(`${path}:1`, first)
  refuseNewer(locateNowhere(path, head), JOURNAL_VERSION)
  return (head as { readonly version?: unknown } | null)?.version === 1
    ? { record: firstVersion(path, head, rest), filing: null }
    : todaysVersion(path, head, rest)
}

function todaysVersion(path: string, data: unknown, rest: readonly string[]): JournalText {
  const { origin, ...head } = checked(journalHeadSchema, `${path}:1`, data)
  checkScenarioHash(path, data)
  const decisions: KeptDecision[] = []
  let filing: string | null = null
  for (const [index, line] of rest.entries()) {
    const place = `${path}:${index + 2}`
    const one = parsed(place, line)
    if (typeof one === 'object' && one !== null && 'filing' in one) filing = checked(filingSchema, place, one).filing
    else decisions.push(checked(decisionSchema, place, one))
  }
  const record: BlockRecord = {
    ...head,
    format: RECORD_FORMAT,
    version: RECORD_VERSION,
    origin: { ...origin, ended: null },
    decisions,
  }
  return { record, filing }
}

function firstVersion(path: string, data: unknown, rest: readonly string[]): BlockRecord {
  const head = checked(journalHeadSchema1, `${path}:1`, data)
  checkScenarioHash(path, data)
  const decisions = rest.map((line, index) => ({
    ...checked(decisionSchema1, `${path}:${index + 2}`, parsed(`${path}:${index + 2}`, line)),
    by: 'unknown' as const,
  }))
  return { ...head, format: RECORD_FORMAT, version: 1, block: null, origin: UNKNOWN_ORIGIN, decisions }
}

function parsed(place: string, line: string): unknown {
  try {
    return JSON.parse(line)
  } catch {
    throw new ScenarioError([`${place}: this line is not JSON.`])
  }
}

function checked<Schema extends z.ZodType>(schema: Schema, place: string, data: unknown): z.output<Schema> {
  const result = schema.safeParse(data)
  if (!result.success) throw new ScenarioError(problemSentences(locateNowhere(place, data), result.error.issues))
  return result.data
}
