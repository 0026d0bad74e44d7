import { existsSync } from 'node:fs'
import { readTextFile } from '../../files/text/read-text-file.js'
import { replaceFile } from '../../files/text/replace-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { freshKey, keyFromText, keyText, type SigningKey } from '../../store/signing.js'

/** Reads an organiser's key. @throws ScenarioError where the file holds none */
export async function readKey(path: string): Promise<SigningKey> {
  const key = keyFromText(await readTextFile(path))
  if (key) return key
  throw new ScenarioError([`${path}: this is no Ed25519 key; dryboard contest seal writes one where there is no file.`])
}

/** The key of a file, which is made where there is none. @throws ScenarioError, WriteError */
export async function keyAt(path: string): Promise<{ readonly key: SigningKey; readonly isNew: boolean }> {
  if (existsSync(path)) return { key: await readKey(path), isNew: false }
  const key = freshKey()
  await replaceFile(path, keyText(key))
  return { key, isNew: true }
}
