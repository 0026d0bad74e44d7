import type { z } from 'zod'
import { refuseNewer } from '../files/text/newer-version.js'
import { problemSentences } from '../files/text/problems.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { checkScenarioHash } from './hashes.js'
import type { BlockRecord } from './record.js'
import {
  decisionSchema,
  JOURNAL_VERSION,
  journalHeadSchema,
  type KeptDecision,
  RECORD_FORMAT,
  RECORD_VERSION,
} from './record-schema.js'

/**
 * A journal as the record it will become, and how many bytes of it are whole lines. A last line without its end is what a
 * dying program left, and does not count.
 *
 * @throws ScenarioError
 */
export function journalFromText(path: string, text: string): { record: BlockRecord; wholeBytes: number } {
  const whole = text.slice(0, text.lastIndexOf('\n') + 1)
  const [first, ...rest] = whole.split('\n').slice(0, -1)
  if (first === undefined)
    throw new ScenarioError([`${path}: the journal ends before its first line does; nothing was thrown.`])
  const head = lineAs(journalHeadSchema, `${path}:1`, first, (data) =>
    refuseNewer(locateNowhere(path, data), JOURNAL_VERSION),
  )
  checkScenarioHash(path, JSON.parse(first))
  const decisions = rest.map((line, index): KeptDecision => lineAs(decisionSchema, `${path}:${index + 2}`, line))
  return {
    record: { ...head, format: RECORD_FORMAT, version: RECORD_VERSION, decisions },
    wholeBytes: Buffer.byteLength(whole),
  }
}

function lineAs<Schema extends z.ZodType>(
  schema: Schema,
  place: string,
  line: string,
  precheck: (data: unknown) => void = () => {},
): z.output<Schema> {
  let data: unknown
  try {
    data = JSON.parse(line)
  } catch {
    throw new ScenarioError([`${place}: this line is not JSON.`])
  }
  precheck(data)
  const checked = schema.safeParse(data)
  if (!checked.success) throw new ScenarioError(problemSentences(locateNowhere(place, data), checked.error.issues))
  return checked.data
}
