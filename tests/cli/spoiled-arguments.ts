import fc from 'fast-check'

const COMMANDS = [
  'play',
  'drill',
  'auto',
  'trace',
  'room',
  'bag',
  'rack',
  'pattern',
  'player',
  'debrief',
  'verify',
  'review',
  'progress',
]
const WORDS = ['scenario', 'new', 'check', 'list', 'schema', 'home', 'help', 'paly', '--help', '--version', '--']
const OPTIONS = [
  ...[
    'seed',
    'plain',
    'script',
    'no-grade',
    'resume',
    'take',
    'player',
    'data',
    'check',
    'at',
    'throws',
    'title',
    'policy',
  ],
  ...[
    'blocks',
    'save',
    'json',
    'ball',
    'feet',
    'target',
    'speed',
    'release',
    'lane',
    'after',
    'board',
    'angle',
    'standing',
  ],
  ...[
    'weight',
    'quick',
    'html',
    'note',
    'markdown',
    'csv',
    'fair',
    'length',
    'volume',
    'ratio',
    'bowler',
    'own-bowler',
    'since',
    'compare',
    'alias',
    'anonymous',
    'look-for',
    'drill',
  ],
].map((name) => `--${name}`)
/** Slips of what may stand there, and things that are something else. */
const VALUES = [
  '',
  '0',
  '-1',
  '1e9',
  'NaN',
  '7',
  '2-7',
  '3,7',
  '99-99',
  '180,left',
  'house-fourty',
  'no-such-file',
  'package.json',
]
const PLACES = [
  '.',
  '/',
  '/dev/null',
  '/dev/zero',
  '/proc/self/mem',
  'package.json/x',
  '../..',
  '\u001B[31m',
  '\u202E',
  'x'.repeat(5000),
]

/** Argument lists as a slip, a script or a stranger may write them; none of them names anything sound that takes long. */
export const spoiledArguments: fc.Arbitrary<string[]> = fc
  .tuple(
    fc.constantFrom(...COMMANDS, ...WORDS),
    fc.array(
      fc.oneof(
        fc.constantFrom(...OPTIONS),
        fc.constantFrom(...VALUES, ...PLACES),
        fc.constantFrom(...WORDS),
        fc.string({ unit: 'binary', maxLength: 12 }).map((text) => text.replaceAll('\0', '')),
      ),
      { maxLength: 7 },
    ),
  )
  .map(([command, others]) => (command === 'home' ? others : [command, ...others]))
  // The trainer and its demonstration open where nothing is asked; what is written goes nowhere but into the data folder.
  .filter(([command]) => command !== undefined && command !== 'home' && command !== '--')
