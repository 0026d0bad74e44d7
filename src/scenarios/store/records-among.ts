import type { Dirent } from 'node:fs'
import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { ScenarioError } from '../files/text/scenario-error.js'

const isNotes = (name: string): boolean => name.endsWith('.notes.json')
/** Folders of a data folder that hold no records, and what nobody put there by hand. */
const PASSED_OVER = new Set(['debriefs', 'notes', 'unfinished', 'node_modules'])

/**
 * The files that paths name where records are asked for: files as they are, notes beside records passed over, and of a folder and of
 * the folders in it all JSON files in the order of their names, numbers counted as numbers. Links to folders are not followed.
 *
 * @throws ScenarioError for a folder without any
 */
export async function recordsAmong(paths: readonly string[]): Promise<string[]> {
  const found = await Promise.all(paths.map(async (path) => ((await isFolder(path)) ? recordsIn(path) : [path])))
  return found.flat().filter((path) => !isNotes(path))
}

async function isFolder(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory()
  } catch {
    return false
  }
}

/** Somebody named a whole disk by a slip. */
const MOST_ENTRIES = 10_000

interface Walk {
  readonly from: string
  entries: number
}

async function recordsIn(folder: string): Promise<string[]> {
  const found = await filesIn(folder, { from: folder, entries: 0 })
  if (found.length === 0) throw new ScenarioError([`${folder}: no record lies in this folder.`], true)
  return found
}

async function filesIn(folder: string, walk: Walk): Promise<string[]> {
  const inOrder = new Intl.Collator('en', { numeric: true })
  const entries = (await entriesOf(folder)).filter(({ name }) => !name.startsWith('.'))
  walk.entries += entries.length
  if (walk.entries > MOST_ENTRIES) {
    const sentence = `found more than ${MOST_ENTRIES} files and folders in it; allowed is at most as many`
    throw new ScenarioError([`${walk.from}: ${sentence}.`])
  }
  const sorted = entries.sort((a, b) => inOrder.compare(a.name, b.name))
  const found: string[] = []
  for (const entry of sorted) {
    const path = join(folder, entry.name)
    if (entry.isDirectory()) {
      if (!PASSED_OVER.has(entry.name)) found.push(...(await filesIn(path, walk)))
    } else if (entry.name.endsWith('.json') && !isNotes(entry.name)) found.push(path)
  }
  return found
}

async function entriesOf(folder: string): Promise<Dirent[]> {
  try {
    return await readdir(folder, { withFileTypes: true })
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault)
    throw new ScenarioError([`${folder}: this folder cannot be read (${code}).`], true)
  }
}
