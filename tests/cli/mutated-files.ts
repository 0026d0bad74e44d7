import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc from 'fast-check'
import { beginScenario } from '../../src/scenarios/begin-scenario.js'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { loadScenario } from '../../src/scenarios/load.js'
import { keptDecision, recordOf } from '../../src/scenarios/record.js'
import { JOURNAL_FORMAT } from '../../src/scenarios/record-schema.js'
import { advance } from '../../src/sim/block/advance.js'
import { playerView } from '../../src/sim/decision/player-view.js'
import { mangled, mutated } from '../scenarios/mutations.js'
import { runCommand } from './in-process.js'

export interface Answer {
  readonly kind: string
  readonly exitCode: number
  readonly err: string
  readonly out: string
  readonly processorSeconds: number
  /** Names in the data folder afterwards but for the file itself. */
  readonly written: readonly string[]
}

interface Spoiled {
  readonly kind: 'scenario' | 'record' | 'journal'
  readonly text: string
}

/** No process has a number this high on any system we know. */
const JOURNAL_NAME = `left-1.${2 ** 30}.jsonl`

/** Scenario, record and journal files with slips of data or of the pen in them. */
async function spoiledFiles(): Promise<fc.Arbitrary<Spoiled>> {
  const scenario = JSON.parse(JSON.stringify(builtInScenario('crankers-ahead')))
  const played = await loadScenario('unseen-draw')
  let state = beginScenario(played, 'spoil')
  for (let number = 0; number < 2; number++) state = advance(state, playerView(state)!.suggestion)
  const record = recordOf(played, state)
  const { format: _format, decisions: _decisions, ...head } = record
  const lines = [{ ...head, format: JOURNAL_FORMAT }, ...state.throws.map(keptDecision)]
  const journal = `${lines.map((line) => JSON.stringify(line)).join('\n')}\n`
  const either = (data: unknown): fc.Arbitrary<string> =>
    fc.oneof(
      mutated(data).map((one) => JSON.stringify(one, null, 1)),
      mangled(JSON.stringify(data, null, 1)),
    )
  const kindOf =
    (kind: Spoiled['kind']) =>
    (text: string): Spoiled => ({ kind, text })
  return fc.oneof(
    either(scenario).map(kindOf('scenario')),
    either(record).map(kindOf('record')),
    mangled(journal).map(kindOf('journal')),
  )
}

/** Gives spoiled files to the command that reads their kind, and tells what each answered. */
export async function answersToSpoiled(count: number, seed: number): Promise<Answer[]> {
  const files = fc.sample(await spoiledFiles(), { numRuns: count, seed })
  const answers: Answer[] = []
  for (const file of files) answers.push(await answerTo(file))
  return answers
}

async function answerTo({ kind, text }: Spoiled): Promise<Answer> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-spoiled-'))
  const folder = kind === 'journal' ? join(data, 'unfinished') : data
  mkdirSync(folder, { recursive: true })
  const path = join(folder, kind === 'journal' ? JOURNAL_NAME : `${kind}.json`)
  writeFileSync(path, text)
  const argv = {
    scenario: ['pattern', path],
    record: ['verify', path],
    journal: ['play', '--resume', '--no-grade', '--data', data],
  }[kind]
  const begun = process.cpuUsage()
  const { exitCode, err, out } = await runCommand(argv)
  const { user, system } = process.cpuUsage(begun)
  const written = readdirSync(data, { recursive: true }).filter((name) => !path.endsWith(String(name)))
  rmSync(data, { recursive: true, force: true })
  return {
    kind,
    exitCode,
    err: err.replaceAll(path, 'FILE').replaceAll(data, 'FILE'),
    out: out.replaceAll(path, 'FILE'),
    processorSeconds: (user + system) / 1e6,
    written: written.map(String).filter((name) => name !== 'unfinished'),
  }
}

/** What is wrong with an answer, or null where it is as it should be. */
export function complaintAbout({ kind, exitCode, err, out, written, processorSeconds }: Answer): string | null {
  const refused = exitCode !== 0
  const said = kind === 'record' ? out : err
  if (![0, 1, 65, 66].includes(exitCode)) return `ends with ${exitCode}: ${err}`
  if ((exitCode === 1) !== (refused && kind === 'record')) return `a ${kind} ends with ${exitCode}`
  if (/\n\s+at /.test(err + out)) return `shows a stack trace: ${err}`
  if (refused && !said.split('\n').every((line) => /^FILE.*[.!?]$/.test(line)))
    return `does not speak in sentences: ${said}`
  if (refused && written.length > 0) return `writes ${written.join(', ')}`
  return processorSeconds < 1 ? null : `takes ${processorSeconds} s`
}
