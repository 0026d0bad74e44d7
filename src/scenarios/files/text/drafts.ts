import { randomBytes } from 'node:crypto'
import { basename, join, resolve } from 'node:path'
import { type FileLayer, NODE_FILES } from './file-layer.js'
import { isGone, ownIdentity } from './process-identity.js'

/** After so long a draft of a process that cannot be looked at from here counts as left. */
const FORGOTTEN_MILLISECONDS = 3_600_000

/** A hidden name for what will be called `path` once it is whole, with its writer in it. */
export function draftName(path: string): string {
  const stem = basename(path).slice(0, 120)
  return `.${stem}.${writerWords()}-${randomBytes(3).toString('hex')}.part`
}

/** Names this process in a draft's name or a claim's text. */
export function writerWords(): string {
  const { machine, pid, started } = ownIdentity()
  return `${machine}-${pid}-${started ?? 0}`
}

const WRITER = /([0-9a-f]{12})-(\d+)-(\d+)(?:-[0-9a-f]{6}\.part)?$/
/** What the program wrote before drafts had their writer's machine in the name. */
const OLD_DRAFT = /^\..+\.\d+\.part$|\.json\.\d+\.part$/

/** Takes away drafts that dying programs left in a folder; whatever cannot be taken away is left alone. */
export async function sweepDrafts(folder: string, files: FileLayer = NODE_FILES): Promise<void> {
  const names = await files.readdir(folder).catch(() => [])
  for (const name of names) {
    const isClaim = /^\..+\.claim$/.test(name)
    if (!isClaim && !name.endsWith('.part')) continue
    const path = join(folder, name)
    const writer = WRITER.exec(isClaim ? await files.readFile(path, 'utf8').catch(() => '') : name)
    if (!writer && !isClaim && !OLD_DRAFT.test(name)) continue
    const [, machine = '', pid, started] = writer ?? []
    const gone = writer ? isGone({ machine, pid: Number(pid), started: Number(started) || null }) : null
    if (gone ?? (await isForgotten(path, files))) await files.unlink(path).catch(() => {})
  }
}

async function isForgotten(path: string, files: FileLayer): Promise<boolean> {
  try {
    return Date.now() - (await files.lstat(path)).mtimeMs > FORGOTTEN_MILLISECONDS
  } catch {
    return false
  }
}

const swept = new Set<string>()

/** The same, but once a folder for the life of this process. */
export async function sweepOnce(folder: string, files: FileLayer = NODE_FILES): Promise<void> {
  const whole = resolve(folder)
  if (swept.has(whole)) return
  swept.add(whole)
  await sweepDrafts(folder, files)
}
