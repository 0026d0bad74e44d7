import { defineConfig } from 'tsup'

export default defineConfig({
  entry: { cli: 'src/cli.ts', thinker: 'src/tui/worker/worker.ts' },
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
  esbuildPlugins: [
    {
      // ink imports its devtools bridge statically; the trainer never opens it.
      name: 'no-react-devtools',
      setup(build) {
        build.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'stub', namespace: 'stub' }))
        build.onLoad({ filter: /.*/, namespace: 'stub' }, () => ({ contents: 'export default {}' }))
      },
    },
  ],
})
