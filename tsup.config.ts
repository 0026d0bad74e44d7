import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { defineConfig, type Options } from 'tsup'

type Plugin = NonNullable<Options['esbuildPlugins']>[number]

const NOTICES = 'dist/THIRD-PARTY-NOTICES.txt'
const LICENCE_FILE = /^(licen[cs]e|copying|notice)([.-].*)?$/i

/** The folder of the package that a bundled file comes from; null for a file of ours. */
function packageFolder(input: string): string | null {
  return /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1] ?? null
}

/** What a package's licence asks to be carried along: its name, who wrote it and the licence in full. */
function notice(folder: string): string {
  const { name, version, license, author } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'))
  const texts = readdirSync(folder)
    .filter((file) => LICENCE_FILE.test(file))
    .map((file) => readFileSync(join(folder, file), 'utf8').trim())
  const by = typeof author === 'string' ? author : author?.name
  if (typeof license !== 'string' || (texts.length === 0 && by === undefined)) {
    throw new Error(`${folder}: it says neither under what licence it is nor by whom.`)
  }
  const own = texts.length > 0 ? texts.join('\n\n') : `Copyright (c) ${by}. Licence: ${license}.`
  return `${name} ${version} (${license})\n\n${own}\n`
}

/** Writes the licences of all that went into the bundle beside it. */
const notices: Plugin = {
  name: 'third-party-notices',
  setup(build) {
    build.initialOptions.metafile = true
    build.onEnd(({ metafile }) => {
      if (!metafile) return
      const folders = Object.keys(metafile.inputs).flatMap((input) => packageFolder(input) ?? [])
      const told = [...new Set(folders)].filter((folder) => existsSync(join(folder, 'package.json'))).sort()
      mkdirSync(dirname(NOTICES), { recursive: true })
      writeFileSync(
        NOTICES,
        `Dryboard holds parts of the packages below, each under its own licence.\n\n${told.map(notice).join(`\n${'-'.repeat(80)}\n\n`)}`,
      )
    })
  },
}

/** ink imports its devtools bridge statically; the trainer never opens it. */
const noReactDevtools: Plugin = {
  name: 'no-react-devtools',
  setup(build) {
    build.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'stub', namespace: 'stub' }))
    build.onLoad({ filter: /.*/, namespace: 'stub' }, () => ({ contents: 'export default {}' }))
  },
}

export default defineConfig({
  entry: {
    cli: 'src/cli.ts',
    thinker: 'src/tui/worker/worker.ts',
    'contest-worker': 'src/scenarios/contest/standings/worker.ts',
    'debrief-worker': 'src/scenarios/reports/review/debrief-worker.ts',
  },
  format: ['esm'],
  target: 'node20',
  platform: 'node',
  splitting: true,
  minify: true,
  clean: true,
  silent: true,
  noExternal: [/.*/],
  define: { 'process.env.NODE_ENV': '"production"', 'process.env.DEV': '"false"' },
  banner: {
    js: "import { createRequire as __createRequire } from 'node:module';const require = __createRequire(import.meta.url);",
  },
  esbuildPlugins: [noReactDevtools, notices],
})
