import { join } from 'node:path'
import { z } from 'zod'
import { replaceFile } from '../../files/text/replace-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { textAt } from '../../files/text/text-at.js'

const TOKENS_FILE = 'host-tokens.json'

const guestSchema = z.strictObject({
  entry: z.string(),
  player: z.string(),
  hand: z.enum(['right', 'left']).optional(),
  level: z.string().optional(),
})
export type Guest = z.output<typeof guestSchema>

/** Digests of players' tokens and whose they are: whoever reads the file can play for nobody. */
export async function readTokens(folder: string): Promise<Map<string, Guest>> {
  const path = join(folder, TOKENS_FILE)
  const text = await textAt(path)
  if (text === null) return new Map()
  try {
    return new Map(Object.entries(z.record(z.string(), guestSchema).parse(JSON.parse(text))))
  } catch {
    throw new ScenarioError([`${path}: this is not what a host keeps; move it away, and players join anew.`])
  }
}

export const writeTokens = (folder: string, tokens: ReadonlyMap<string, Guest>): Promise<void> =>
  replaceFile(join(folder, TOKENS_FILE), `${JSON.stringify(Object.fromEntries(tokens), null, 1)}\n`)

export const isSameName = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase()
