import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

const packed = JSON.parse(readFileSync('package.json', 'utf8'))

it('is packed as the program, what to copy from, what to read and the licence, and nothing else', () => {
  expect(packed.files.filter((name: string) => !/^(dist|demo|scenarios-demo|README\.md|LICENSE)$/.test(name))).toEqual(
    [],
  )
  expect(packed.files).toContain('dist')
  const listed = JSON.parse(
    execFileSync('npm', ['pack', '--dry-run', '--ignore-scripts', '--json'], { encoding: 'utf8' }),
  )
  const paths: string[] = listed[0].files.map(({ path }: { readonly path: string }) => path)
  expect(paths.filter((path) => !/^(dist|demo|scenarios-demo)\//.test(path)).sort()).toEqual([
    'LICENSE',
    'README.md',
    'package.json',
  ])
})

it('needs no other package where it is installed, for all are in the bundle', () => {
  expect(packed.dependencies ?? {}).toEqual({})
})

// The text is that of the Open Source Initiative; package.json says MIT.
it('carries the MIT licence', () => {
  const licence = readFileSync('LICENSE', 'utf8')
  expect(packed.license).toBe('MIT')
  expect(licence).toMatch(/^MIT License\n\nCopyright \(c\) \d{4} The Dryboard maintainers\n/)
  expect(licence).toMatch(/The above copyright notice and this permission notice shall be included in all\ncopies/)
})
