import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

/** What a module imports before it runs, itself and onwards: files of ours and packages. Types vanish and do not count. */
function startsWith(file: string, seen = new Set<string>()): Set<string> {
  if (seen.has(file)) return seen
  seen.add(file)
  const source = readFileSync(file, 'utf8')
  for (const [, from] of source.matchAll(/^(?:import|export) (?!type )[^;']*?from '([^']+)'/gm)) {
    if (from.startsWith('.')) startsWith(join(file, '..', from.replace(/\.js$/, '.ts')), seen)
    else seen.add(from)
  }
  return seen
}

it('parses a command line with nothing but the option table loaded', () => {
  const loaded = [...startsWith('src/cli.ts')]
  expect(loaded.filter((name) => !name.startsWith('src/') && !name.startsWith('node:'))).toEqual(['commander'])
  expect(loaded.filter((name) => name.startsWith('src/sim/') || name.startsWith('src/tui/'))).toEqual([])
})
