import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { canonicalText, scenarioHash } from '../../src/scenarios/store/hashes.js'
import { recordDigest } from '../../src/scenarios/store/record-digest.js'
import { mutated } from '../scenarios/files/text/mutations.js'
import { runCommand } from './in-process.js'

/** How much of what vouches for a record the forger has made anew. */
export const FORGERIES = ['nothing', 'the scenario’s hash', 'every digest'] as const
type Forgery = (typeof FORGERIES)[number]

export interface TamperedAnswer {
  readonly forgery: Forgery
  /** What became of it: refused; the same but told by other lines; or taken for the record it was made from. */
  readonly answer: 'refused' | 'told' | 'silent'
  readonly record: string
}

/** Records with one to three changed fields, given to `verify`; those that came out as they were are left out. */
export async function answersToTampered(record: string, count: number, seed: number): Promise<TamperedAnswer[]> {
  const sound = JSON.parse(record) as Record<string, unknown>
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-tampered-'))
  const path = join(folder, 'record.json')
  const verified = async (text: string) => {
    writeFileSync(path, text)
    return runCommand(['verify', path])
  }
  const told = (await verified(record)).out
  const answers: TamperedAnswer[] = []
  for (const [at, changed] of fc.sample(mutated(sound), { numRuns: count, seed }).entries()) {
    if (canonicalText(changed) === canonicalText(sound)) continue
    const forgery = FORGERIES[at % FORGERIES.length]!
    const text = JSON.stringify(forged(changed, forgery))
    if (canonicalText(JSON.parse(text)) === canonicalText(sound)) continue
    const { exitCode, out } = await verified(text)
    const answer = exitCode !== 0 ? 'refused' : out === told ? 'silent' : 'told'
    answers.push({ forgery, answer, record: text })
  }
  rmSync(folder, { recursive: true, force: true })
  return answers
}

function forged(changed: unknown, forgery: Forgery): unknown {
  if (forgery === 'nothing' || typeof changed !== 'object' || changed === null || Array.isArray(changed)) return changed
  const { scenario } = changed as { readonly scenario?: unknown }
  const hashed = scenario === undefined ? changed : { ...changed, scenarioHash: scenarioHash(scenario) }
  return forgery === 'every digest' ? { ...hashed, digest: recordDigest(hashed) } : hashed
}
