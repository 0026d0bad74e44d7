import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import fc from 'fast-check'
import { fileKeeper } from '../../src/scenarios/store/keeping.js'
import { readSettings } from '../../src/tui/settings/settings-file.js'
import { type CommandResult, runCommand } from './in-process.js'
import { KINDS, type Kind, type Spoiled, soundRecord, spoiledFiles } from './spoiled-sources.js'

export interface Answer extends CommandResult {
  readonly kind: Kind
  readonly processorSeconds: number
  /** What became of the data folder's files: names added, gone or changed. */
  readonly changed: readonly string[]
}

const CONTEST = 'scenarios-demo/contest-autumn.yaml'
const JOURNAL_NAME = 'left-1.1.jsonl'

/** Where each kind lies within its folder, and who is asked to read it. */
const READERS: Readonly<
  Record<Kind, { readonly name: string; readonly read: (path: string, data: string) => Promise<CommandResult> }>
> = {
  scenario: { name: 'scenario.json', read: (path) => runCommand(['pattern', path]) },
  record: { name: 'record.json', read: (path) => runCommand(['verify', path]) },
  journal: {
    name: join('unfinished', JOURNAL_NAME),
    read: (_path, data) => runCommand(['play', '--resume', '--no-grade', '--data', data]),
  },
  drill: { name: 'drill.json', read: (path) => runCommand(['drill', path, '--check']) },
  'drill-key': { name: 'keyed.json', read: (path) => runCommand(['drill', 'key', path]) },
  notes: {
    name: 'sound.notes.json',
    read: (_path, data) => runCommand(['review', join(data, 'sound.json'), '--at', '1', '--note', 'And then?']),
  },
  'contest-key': {
    name: 'organiser.key',
    read: (path, data) =>
      runCommand([
        'contest',
        'seal',
        CONTEST,
        '--key',
        path,
        '--out',
        join(data, 'a.pack.json'),
        '--passphrase',
        'one two',
      ]),
  },
  profile: {
    name: 'profile.json',
    read: (_path, data) => runCommand(['player'], { environment: { DRYBOARD_CONFIG: data } }),
  },
  settings: {
    name: 'settings.json',
    read: async (_path, data) => saidOnScreen(await readSettings({ DRYBOARD_CONFIG: data })),
  },
  kit: {
    name: 'kit.json',
    read: async (_path, data) => saidOnScreen(await fileKeeper({ DRYBOARD_DATA: data }).findKit()),
  },
}

/** The screen opens without what it cannot read and says so; told here as a refusal, for it is held to the same rules. */
const saidOnScreen = ({ problem }: { readonly problem: string }): CommandResult => ({
  exitCode: problem === '' ? 0 : 65,
  out: '',
  err: problem,
})

/** Gives spoiled files to whoever reads their kind, and tells what each answered. */
export async function answersToSpoiled(count: number, seed: number, kinds: readonly Kind[] = KINDS): Promise<Answer[]> {
  const files = fc.sample(await spoiledFiles(kinds), { numRuns: count, seed })
  const record = await soundRecord()
  // A command is loaded when it is first asked for, which is no part of reading a file.
  for (const kind of kinds) {
    const first = files.find((file) => file.kind === kind)
    if (first) await answerTo(first, record)
  }
  const answers: Answer[] = []
  for (const file of files) answers.push(await answerTo(file, record))
  return answers
}

async function answerTo({ kind, text }: Spoiled, record: string): Promise<Answer> {
  const data = mkdtempSync(join(tmpdir(), 'dryboard-spoiled-'))
  const { name, read } = READERS[kind]
  const path = join(data, name)
  mkdirSync(dirname(path), { recursive: true })
  writeFileSync(path, text)
  if (kind === 'notes') writeFileSync(join(data, 'sound.json'), record)
  const before = filesIn(data)
  const begun = process.cpuUsage()
  const { exitCode, err, out } = await read(path, data)
  const { user, system } = process.cpuUsage(begun)
  const after = filesIn(data)
  rmSync(data, { recursive: true, force: true })
  const names = new Set([...before.keys(), ...after.keys()])
  return {
    kind,
    exitCode,
    err: err.replaceAll(path, 'FILE').replaceAll(data, 'FILE'),
    out: out.replaceAll(path, 'FILE'),
    processorSeconds: (user + system) / 1e6,
    changed: [...names].filter((one) => before.get(one) !== after.get(one)),
  }
}

function filesIn(data: string): Map<string, string> {
  const files = readdirSync(data, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile())
  return new Map(
    files.map(({ name, parentPath }) => [join(parentPath, name), readFileSync(join(parentPath, name), 'utf8')]),
  )
}

/** What is wrong with an answer, or null where it is as it should be. */
export function complaintAbout({ kind, exitCode, err, out, changed, processorSeconds }: Answer): string | null {
  const refused = exitCode !== 0
  const said = kind === 'record' ? out : err
  if (![0, 1, 65, 66].includes(exitCode)) return `ends with ${exitCode}: ${err}`
  if ((exitCode === 1) !== (refused && kind === 'record')) return `a ${kind} ends with ${exitCode}`
  if (/\n\s+at /.test(err + out)) return `shows a stack trace: ${err}`
  if (refused && !said.split('\n').every((line) => /^(FILE|The usual|Your bag).*[.!?]$/.test(line)))
    return `does not speak in sentences: ${said}`
  if (refused && changed.length > 0) return `writes ${changed.join(', ')}`
  return processorSeconds < 2 ? null : `a ${kind} takes ${processorSeconds} s`
}
