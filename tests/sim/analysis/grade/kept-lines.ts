import { appendFileSync, existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/**
 * Results of a long study, one JSON line each, so that it can be run in parts: every part writes its own file in a
 * folder, and the folder is added up.
 * @throws RangeError when the same part is there already
 */
export function keepLines<T>(folder: string | undefined, first: number, count: number): (result: T) => void {
  if (folder === undefined) throw new RangeError('Say in which folder the results are kept.')
  mkdirSync(folder, { recursive: true })
  const file = join(folder, `part-${first}-${count}.jsonl`)
  if (count > 0 && existsSync(file)) throw new RangeError(`${file} is there already; nothing must be counted twice.`)
  return (result) => appendFileSync(file, `${JSON.stringify(result)}\n`)
}

/** Everything that the parts of a study left in a folder and the folders in it. */
export function keptLines<T>(folder: string): T[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.jsonl'))
    .flatMap((name) => readFileSync(join(folder, name), 'utf8').split('\n').filter(Boolean))
    .map((line) => JSON.parse(line) as T)
}
