/**
 * Which room may import which, checked by dependency-cruiser (`npm run lint:arrows`). A room is a folder under src; it may always
 * import its own files. Rooms come in the order in which they build on each other, so that a cycle cannot be written down.
 */
const SIM = 'sim'
const WORLD = 'sim/world'
const ANALYSIS = 'sim/analysis'
const SCENARIOS = 'scenarios'
const TUI = 'tui'

const inside = (house, rooms) => rooms.map((room) => `${house}/${room}`)
/** Rooms on one floor, each building on those named after it. The loose files of `src/sim` are everybody's. */
const floor = (house, below, rooms) =>
  Object.entries(rooms).map(([room, allowed]) => [`${house}/${room}`, [...below, ...inside(house, allowed)]])

const ARROWS = [
  [SIM, []],
  ...floor(WORLD, [], {
    lane: [],
    ball: ['lane'],
    bowler: ['ball'],
    pins: [],
    scoring: [],
    block: ['lane', 'ball', 'bowler', 'pins', 'scoring'],
  }),
  ...floor(ANALYSIS, [WORLD], {
    carry: [],
    value: ['carry'],
    shots: ['carry', 'value'],
    belief: ['carry', 'value', 'shots'],
    view: ['carry', 'value', 'shots', 'belief'],
    grade: ['carry', 'value', 'shots', 'view', 'belief'],
    oracle: ['carry', 'value', 'shots', 'view', 'belief', 'grade'],
    policies: ['value', 'shots', 'view', 'belief', 'oracle', 'grade'],
    'debrief/ledger': ['carry', 'value', 'shots', 'view', 'belief', 'oracle', 'grade'],
    'debrief/reading': ['carry', 'value', 'shots', 'view', 'belief', 'oracle', 'grade', 'debrief/ledger'],
    'debrief/findings': ['value', 'shots', 'view', 'grade', 'debrief/ledger', 'debrief/reading'],
    debrief: ['carry', 'value', 'shots', 'view', 'belief', 'oracle', 'grade', 'debrief'],
    explore: ['carry', 'value', 'shots', 'view', 'belief', 'oracle', 'grade', 'policies', 'debrief'],
    practice: ['shots', 'view', 'belief', 'grade', 'policies', 'debrief'],
  }),
  ...floor(SCENARIOS, [WORLD, ANALYSIS], {
    threads: [],
    'files/text': [],
    'files/schema': ['files/text'],
    'files/scenario': ['files/text', 'files/schema'],
    library: ['files'],
    store: ['files', 'library'],
    words: ['files'],
    plain: ['files', 'words'],
    'reports/debrief': ['files', 'store', 'words'],
    'reports/review': ['threads', 'files', 'store', 'words', 'reports/debrief'],
    'reports/progress': ['files', 'store', 'words', 'practice', 'reports/debrief', 'reports/review'],
    'reports/html': ['files', 'store', 'words', 'reports/debrief', 'reports/review', 'reports/progress'],
    drills: ['files', 'library', 'store', 'words', 'reports'],
    practice: ['files', 'library', 'store', 'words', 'drills'],
    'contest/pack': ['files', 'library', 'store', 'words'],
    'contest/entry': ['files', 'library', 'store', 'words', 'contest/pack'],
    'contest/evidence': [],
    'contest/standings': [
      'threads',
      'files',
      'store',
      'words',
      'reports',
      'contest/pack',
      'contest/entry',
      'contest/evidence',
    ],
    'contest/host': ['files', 'store', 'words', 'reports', 'contest/pack', 'contest/entry'],
    'commands/console': ['files'],
    commands: ['files', 'library', 'store', 'words', 'plain', 'reports', 'drills', 'practice', 'commands/console'],
    'commands/contest': ['files', 'library', 'store', 'words', 'plain', 'contest', 'commands', 'commands/console'],
    'commands/argv': ['files', 'store', 'words', 'commands', 'commands/console'],
  }),
  ...floor(
    TUI,
    [
      WORLD,
      ANALYSIS,
      ...inside(SCENARIOS, ['files', 'library', 'store', 'words', 'drills', 'contest', 'practice', 'reports/progress']),
    ],
    {
      terminal: [],
      draw: ['terminal'],
      settings: ['draw', 'terminal'],
      keys: [],
      forms: [],
      worker: [],
      state: ['draw', 'terminal', 'settings', 'keys', 'forms', 'worker'],
      parts: ['draw', 'terminal', 'keys', 'state'],
      'screens/menus': ['draw', 'terminal', 'settings', 'keys', 'forms', 'state', 'parts'],
      'screens/play': ['draw', 'terminal', 'settings', 'keys', 'forms', 'state', 'parts'],
      'screens/practice': ['draw', 'terminal', 'settings', 'keys', 'forms', 'state', 'parts'],
      'screens/debrief': ['draw', 'terminal', 'settings', 'keys', 'forms', 'state', 'parts'],
      screens: ['draw', 'terminal', 'settings', 'keys', 'forms', 'state', 'parts', 'screens'],
      app: ['draw', 'terminal', 'settings', 'keys', 'forms', 'worker', 'state', 'parts', 'screens'],
    },
  ),
  ['tools', [SIM, WORLD, ANALYSIS, ...inside(SCENARIOS, ['files', 'library', 'store', 'practice'])]],
]

const files = (room) => `^src/${room}/[^/]+$`
const EVERYBODYS = files(SIM)

export default {
  forbidden: [
    ...ARROWS.map(([room, allowed]) => ({
      name: `from ${room}`,
      comment: `src/${room} may import ${allowed.length > 0 ? allowed.join(', ') : 'nothing else of src'}.`,
      severity: 'error',
      from: { path: files(room) },
      to: {
        path: '^src/',
        pathNot: [files(room), EVERYBODYS, ...allowed.map((other) => (other === SIM ? EVERYBODYS : `^src/${other}/`))],
      },
    })),
    {
      name: 'no room without a rule',
      comment: 'A new folder gets its line in tests/lint/arrows.mjs and in DEVELOPERS.md.',
      severity: 'error',
      from: { path: '^src/.+/', pathNot: ARROWS.map(([room]) => files(room)) },
      to: {},
    },
    { name: 'no circle of files', severity: 'error', from: { path: '^src/' }, to: { circular: true } },
    {
      name: 'no circle of folders',
      severity: 'error',
      scope: 'folder',
      from: { path: '^src/' },
      to: { path: '^src/', circular: true },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    includeOnly: '^src/',
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    combinedDependencies: false,
    enhancedResolveOptions: { extensions: ['.ts', '.tsx', '.d.ts', '.js'] },
  },
}
