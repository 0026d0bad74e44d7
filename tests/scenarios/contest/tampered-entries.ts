import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import type { OpenedPack } from '../../../src/scenarios/contest/pack/pack.js'
import { checkAcrossEntries } from '../../../src/scenarios/contest/standings/across.js'
import { type CheckedEntry, checkEntry } from '../../../src/scenarios/contest/standings/check-entry.js'
import { signedEntry } from '../../../src/scenarios/store/entry-key.js'
import { canonicalText, scenarioHash } from '../../../src/scenarios/store/hashes.js'
import type { BlockRecord } from '../../../src/scenarios/store/record.js'
import { recordDigest } from '../../../src/scenarios/store/record-digest.js'
import { freshKey, keyFromText, type SigningKey } from '../../../src/scenarios/store/signing.js'
import { mutated } from '../files/text/mutations.js'
import { fileOf, folder, type PlayedForTests } from './contest-for-tests.js'

/** What was done to a good entry. */
export const TAMPERINGS = [
  'a field, nothing made anew',
  'a field, digests made anew',
  'a field, another key',
  'a decision, another key',
  'a decision, own key',
  'truncated text',
  'truncated decisions, own key',
  'swapped decisions, another key',
  "another's decisions, another key",
  'another name, another key',
  'made by a policy, own key',
  'played outside, own key',
  'a copy of the file',
] as const
type Tampering = (typeof TAMPERINGS)[number]

export interface Answer {
  readonly tampering: Tampering
  readonly entry: CheckedEntry
  readonly text: string
}

interface Forging {
  readonly opened: OpenedPack
  readonly good: PlayedForTests
  readonly other: PlayedForTests
}

type Data = BlockRecord & Record<string, unknown>

/** The key that an entry's own machine has. */
function ownKey({ data }: PlayedForTests, record: Data): SigningKey {
  return keyFromText(readFileSync(join(data, 'contests', `${record.contest!.entry}.key`), 'utf8'))!
}

const anew = (record: Data): Data => {
  const hashed = { ...record, scenarioHash: scenarioHash(record.scenario) }
  return { ...hashed, digest: recordDigest(hashed) }
}

const signedBy = (record: Data, key: SigningKey): Data => {
  if (typeof record.contest !== 'object' || record.contest === null) return anew(record)
  const keyed = {
    ...record,
    contest: { ...record.contest, key: key.publicText },
    scenarioHash: scenarioHash(record.scenario),
  }
  return anew(signedEntry(keyed, key) as Data)
}

const dataOf = ({ path }: PlayedForTests): Data => JSON.parse(readFileSync(path, 'utf8')) as Data

/** Changes one decision, and not what it is said to have left. */
function edited(record: Data, at: number, by: number): Data {
  const index = at % record.decisions.length
  const decision = record.decisions[index]!
  const changed =
    by % 2 === 0
      ? { ...decision, feet: decision.feet + 1 + (by % 5) }
      : { ...decision, target: Math.max(2, decision.target - 1 - (by % 5)) }
  return { ...record, decisions: record.decisions.with(index, changed) }
}

function swapped(record: Data, at: number): Data {
  const { decisions } = record
  const index = at % (decisions.length - 1)
  return { ...record, decisions: decisions.with(index, decisions[index + 1]!).with(index + 1, decisions[index]!) }
}

function tamperedText(tampering: Tampering, { good, other }: Forging, seed: number): string {
  const record = dataOf(good)
  const slip = (): Data => fc.sample(mutated(record), { numRuns: 1, seed })[0] as unknown as Data
  const isObject = (one: unknown): one is Data => typeof one === 'object' && one !== null && !Array.isArray(one)
  const own = ownKey(good, record)
  const stranger = freshKey()
  const written = (one: unknown): string => JSON.stringify(one)
  switch (tampering) {
    case 'a field, nothing made anew':
      return written(slip())
    case 'a field, digests made anew': {
      const one = slip()
      return written(isObject(one) ? anew(one) : one)
    }
    case 'a field, another key': {
      const one = slip()
      return written(isObject(one) ? signedBy(one, stranger) : one)
    }
    case 'a decision, another key':
      return written(signedBy(edited(record, seed, seed >> 3), stranger))
    case 'a decision, own key':
      return written(signedBy(edited(record, seed, seed >> 3), own))
    case 'truncated text': {
      const text = readFileSync(good.path, 'utf8')
      return text.slice(0, 1 + (seed % (text.length - 2)))
    }
    case 'truncated decisions, own key':
      return written(signedBy({ ...record, decisions: record.decisions.slice(0, seed % record.decisions.length) }, own))
    case 'swapped decisions, another key':
      return written(signedBy(swapped(record, seed), stranger))
    case "another's decisions, another key":
      return written(signedBy({ ...record, decisions: dataOf(other).decisions }, stranger))
    case 'another name, another key':
      return written(signedBy({ ...record, player: `Somebody ${seed}` }, stranger))
    case 'made by a policy, own key':
      return written(
        signedBy(
          {
            ...record,
            origin: { ...record.origin, cameToBe: seed % 2 === 0 ? 'auto' : 'contest' },
            decisions: record.decisions.map((one) => ({ ...one, by: 'policy' as const })),
          },
          own,
        ),
      )
    case 'played outside, own key':
      return written(
        signedBy({ ...record, origin: { ...record.origin, cameToBe: seed % 2 === 0 ? 'played' : 'drill' } }, own),
      )
    case 'a copy of the file':
      return readFileSync(good.path, 'utf8')
  }
}

/** Tampers with an entry `count` times and checks each beside the good one, with a list of who entered. */
export async function answersToTampered(forging: Forging, count: number, from = 0): Promise<Answer[]> {
  const { opened, good, other } = forging
  const wanted = { luck: false, accounts: null }
  const sound = await checkEntry(good.path, opened, wanted)
  const second = await checkEntry(other.path, opened, wanted)
  const entrants = [sound, second].map(({ player, code }) => ({ name: player, code }))
  const original = canonicalText(dataOf(good))
  const into = folder()
  const answers: Answer[] = []
  for (let number = from; answers.length < count; number++) {
    const tampering = TAMPERINGS[number % TAMPERINGS.length]!
    const text = tamperedText(tampering, forging, number)
    // A slip may put back what was there.
    if (tampering !== 'a copy of the file' && isSameData(text, original)) continue
    const path = fileOf(`zz-${number}.json`, text, into)
    const checked = await checkEntry(path, opened, wanted)
    const [, , entry] = checkAcrossEntries([sound, second, checked], { tries: 1, entrants })
    answers.push({ tampering, entry: entry!, text })
  }
  return answers
}

function isSameData(text: string, original: string): boolean {
  try {
    return canonicalText(JSON.parse(text)) === original
  } catch {
    return false
  }
}
