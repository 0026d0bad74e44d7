import { defineConfig } from 'vitest/config'

/** Tests that replace modules, which must not leak into others. */
const WITH_MODULES_OF_THEIR_OWN = ['tests/scenarios/reports/debrief/one-pass.test.ts']
/** Tests of screens and processes, each in a world of its own. */
const OF_PROGRAMS = ['tests/tui/**/*.test.ts', 'tests/tui/**/*.test.tsx', 'tests/cli/**/*.test.ts']

export default defineConfig({
  test: {
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    pool: 'forks',
    projects: [
      {
        extends: true,
        test: {
          name: 'pure',
          include: ['tests/**/*.test.ts'],
          exclude: [...OF_PROGRAMS, ...WITH_MODULES_OF_THEIR_OWN],
          // nothing here keeps state between tests, so that what one has loaded serves all
          isolate: false,
        },
      },
      {
        extends: true,
        test: { name: 'apart', include: [...OF_PROGRAMS, ...WITH_MODULES_OF_THEIR_OWN] },
      },
    ],
  },
})
