import { basename, dirname, join } from 'node:path'

/**
 * A block's files while it is played lie in one folder and share a stem. `NAME.TURN.jsonl` is the journal: NAME is unique in
 * the folder and stays, TURN counts who has taken the block up. `NAME.TURN.lock` says who plays it, `NAME.TURN.part` is a draft
 * of theirs, and `NAME.said.json` is what the player said meanwhile. Before there were locks TURN was the player's process number.
 */
export interface JournalName {
  readonly folder: string
  readonly name: string
  readonly turn: number
}

/** Where the journals of a data folder lie. */
export const journalsFolder = (data: string): string => join(data, 'unfinished')

const fileOf = ({ folder, name, turn }: JournalName, ending: string): string =>
  join(folder, `${name}.${turn}.${ending}`)
export const journalPath = (journal: JournalName): string => fileOf(journal, 'jsonl')
export const lockPath = (journal: JournalName): string => fileOf(journal, 'lock')
export const draftPath = (journal: JournalName): string => fileOf(journal, 'part')
export const saidPath = ({ folder, name }: Pick<JournalName, 'folder' | 'name'>): string =>
  join(folder, `${name}.said.json`)

const FILE = /^(.+)\.(\d{1,15})\.(jsonl|lock|part)$/

/** Which block's file this is, and of what kind; null for any other file. */
export function namedBy(path: string): (JournalName & { readonly ending: 'jsonl' | 'lock' | 'part' }) | null {
  const [, name, turn, ending] = FILE.exec(basename(path)) ?? []
  if (name === undefined || turn === undefined) return null
  return { folder: dirname(path), name, turn: Number(turn), ending: ending as 'jsonl' | 'lock' | 'part' }
}
