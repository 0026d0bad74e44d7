import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import type { ScenarioData } from '../files/schema/scenario.js'
import { replaceFile } from '../files/text/replace-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import type { ContestSection } from './contest-section.js'
import { contestsFolder } from './entry-key.js'
import { canonicalText } from './hashes.js'

const FORMAT = 'dryboard-contest-known'
const VERSION = 1

const knownSchema = z.strictObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  pack: z.string(),
  title: z.string(),
  deadline: z.string(),
  unsealed: z.boolean(),
  /** Names the oil of each lane. */
  oils: z.array(z.string()),
  /** Who sat down to it here, each time. */
  entries: z.array(
    z.strictObject({
      player: z.string(),
      entry: z.string(),
      starts: z.array(z.strictObject({ at: z.string(), throws: z.number() })),
    }),
  ),
})

/** A contest that was opened on this machine, and the entries begun here. */
export type KnownContest = Omit<z.output<typeof knownSchema>, 'format' | 'version'>

const pathOf = (data: string, pack: string): string => join(contestsFolder(data), `${pack.slice(0, 24)}.json`)

/** Names of the oils of a scenario, whatever its lanes are called, whoever bowls there and for how long. */
export function oilNames({ lanes }: Pick<ScenarioData, 'lanes'>): string[] {
  return lanes.map(({ name: _name, ...oil }) =>
    createHash('sha256').update(canonicalText(oil)).digest('hex').slice(0, 24),
  )
}

/** Notes that a contest was opened, or is over, on this machine. @throws WriteError */
export async function noteContest(data: string, known: KnownContest): Promise<void> {
  await replaceFile(
    pathOf(data, known.pack),
    `${JSON.stringify({ format: FORMAT, version: VERSION, ...known }, null, 1)}\n`,
  )
}

/** Contests opened on this machine; what cannot be read is passed over, for it vouches for nothing. */
export function knownContests(data: string): KnownContest[] {
  let names: string[]
  try {
    names = readdirSync(contestsFolder(data)).filter((name) => name.endsWith('.json') && !name.startsWith('.'))
  } catch {
    return []
  }
  return names.flatMap((name) => {
    try {
      const checked = knownSchema.safeParse(JSON.parse(readFileSync(join(contestsFolder(data), name), 'utf8')))
      if (!checked.success) return []
      const { format: _format, version: _version, ...known } = checked.data
      return [known]
    } catch {
      return []
    }
  })
}

const isOver = (deadline: string, now: Date): boolean => now.getTime() >= Date.parse(deadline)

const refusal = (name: string, { title, deadline }: Pick<KnownContest, 'title' | 'deadline'>): ScenarioError =>
  new ScenarioError([
    `${name}: this is the lane of the contest "${title}"; nothing is told of it before ${deadline}, or before the organiser unseals it.`,
  ])

/**
 * Refuses to tell of a lane that a contest opened on this machine is still bowled on. A player's own clock and data folder are all
 * there is to go by: it keeps honest people from looking by mistake, and nobody else.
 *
 * @throws ScenarioError
 */
export function refuseSealedLane(
  data: string,
  { name, data: scenario }: { readonly name: string; readonly data: ScenarioData },
  now = new Date(),
): void {
  const oils = new Set(oilNames(scenario))
  const sealed = knownContests(data).find(
    (known) => !known.unsealed && !isOver(known.deadline, now) && known.oils.some((one) => oils.has(one)),
  )
  if (sealed) throw refusal(name, sealed)
}

/** Whether grades and oil of an entry are still held back on this machine. */
function isSealedEntry(data: string, contest: ContestSection | undefined, now = new Date()): boolean {
  if (contest === undefined || isOver(contest.deadline, now)) return false
  return !knownContests(data).some(({ pack, unsealed }) => pack === contest.pack && unsealed)
}

/** Refuses to look back on a block of a lane or an entry that is still sealed. @throws ScenarioError */
export function refuseSealedRecord(
  data: string,
  path: string,
  record: { readonly contest?: ContestSection | undefined; readonly name: string; readonly scenario: ScenarioData },
  now = new Date(),
): void {
  if (isSealedEntry(data, record.contest, now)) throw refusal(path, record.contest!)
  if (record.contest === undefined) refuseSealedLane(data, { name: path, data: record.scenario }, now)
}
