import { readdir, stat } from 'node:fs/promises'
import { join } from 'node:path'
import { ScenarioError } from '../files/text/scenario-error.js'

const isNotes = (name: string): boolean => name.endsWith('.notes.json')

/**
 * The record files that paths name: files as they are, notes beside records passed over, and of a folder all its records in the
 * order of their names, numbers counted as numbers.
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

async function recordsIn(folder: string): Promise<string[]> {
  const names = (await readdir(folder)).filter(
    (name) => name.endsWith('.json') && !name.startsWith('.') && !isNotes(name),
  )
  if (names.length === 0) throw new ScenarioError([`${folder}: no record lies in this folder.`], true)
  const inOrder = new Intl.Collator('en', { numeric: true })
  return names.sort(inOrder.compare).map((name) => join(folder, name))
}
