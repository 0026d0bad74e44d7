import { cpus } from 'node:os'
import type { BenchRow } from './measure.js'

/** Each bench by name, loaded when asked for. Pricing comes first, because its first run counts. */
const BENCHES: Readonly<Record<string, () => Promise<BenchRow[]>>> = {
  pricing: async () => (await import('./decision.js')).benchPricing(),
  trajectory: async () => (await import('./motion.js')).benchTrajectory(),
  wear: async () => (await import('./motion.js')).benchWear(),
  rack: async () => (await import('./rack.js')).benchRack(),
  search: async () => (await import('./decision.js')).benchSearch(),
  throw: async () => (await import('./decision.js')).benchThrow(),
  belief: async () => (await import('./fair.js')).benchBelief(),
  fair: async () => (await import('./fair.js')).benchFair(),
  latency: async () => (await import('./latency.js')).benchLatency(),
  start: async () => (await import('./start.js')).benchFirstPaint(),
  screen: async () => (await import('./screen.js')).benchScreen(),
  practice: async () => (await import('./practice.js')).benchPractice(),
  review: async () => (await import('./review.js')).benchReview(),
  contest: async () => (await import('./contest.js')).benchContest(),
}

/** Half an hour long unless told otherwise, and so only run when named. */
const SESSION = 'session'
const SESSION_MINUTES = 30

const USAGE =
  `Say which benches to run, or none for all: ${Object.keys(BENCHES).join(', ')}; --json for figures alone; ` +
  `or ${SESSION} [--minutes N], by itself, for memory over a session of ${SESSION_MINUTES} minutes; ` +
  'with --throws N played at speed until so many throws, or the minutes are over.'

const shown = (value: number): string => (value === 0 ? '0' : value.toPrecision(value >= 100 ? 4 : 3))

function reached({ measured, goal }: BenchRow): string {
  if (!goal) return ''
  const value = measured[goal.of]
  return `${value <= goal.most ? 'met' : 'MISSED'}: ${goal.of} at most ${goal.most}`
}

function tableLine(row: BenchRow): string {
  const { name, unit, measured, beside } = row
  const ratio = beside ? `${beside.name} ${shown(beside.median)}, ${shown(beside.median / measured.median)} times` : ''
  return [
    name.padEnd(40),
    shown(measured.least).padStart(8),
    shown(measured.median).padStart(8),
    shown(measured.p95).padStart(8),
    shown(measured.most).padStart(8),
    (measured.wallMedian === undefined ? '' : shown(measured.wallMedian)).padStart(8),
    unit.padEnd(3),
    String(measured.count).padStart(6),
    `  ${reached(row).padEnd(28)}`,
    ratio,
  ]
    .join(' ')
    .trimEnd()
}

async function main(args: readonly string[]): Promise<number> {
  const json = args.includes('--json')
  const figure = (name: string): number | undefined => {
    const asked = args.indexOf(name)
    return asked < 0 ? undefined : Number(args[asked + 1])
  }
  const minutes = figure('--minutes') ?? SESSION_MINUTES
  const throws = figure('--throws')
  const isFigure = (place: number): boolean => ['--minutes', '--throws'].includes(args[place] ?? '')
  const names = args.filter((arg, place) => arg !== '--json' && !isFigure(place) && !isFigure(place - 1))
  if (!(minutes > 0) || (throws !== undefined && !(throws > 0))) {
    process.stderr.write(`Minutes and throws are numbers above 0. ${USAGE}\n`)
    return 64
  }
  const unknown = names.filter((name) => name !== SESSION && !Object.hasOwn(BENCHES, name))
  if (unknown.length > 0) {
    process.stderr.write(`There is no bench "${unknown[0]}". ${USAGE}\n`)
    return 64
  }
  process.env.NODE_ENV ??= 'production'
  const wanted = Object.keys(BENCHES).filter((name) => names.length === 0 || names.includes(name))
  if (!json) {
    console.log(`Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}`)
    console.log('Processor time where there is a column for the wall clock too; else what the wall clock says.')
    console.log(
      `${''.padEnd(40)}    least   median      p95     most  on wall       runs  goal${''.padEnd(24)} beside it in the same run`,
    )
  }
  const rows: BenchRow[] = []
  const isSession = names.includes(SESSION)
  for (const name of isSession ? [SESSION] : wanted) {
    const made = isSession
      ? await (await import('./session.js')).benchSession({ minutes, ...(throws === undefined ? {} : { throws }) })
      : await BENCHES[name]!()
    rows.push(...made)
    if (!json) for (const row of made) console.log(tableLine(row))
  }
  if (json) console.log(JSON.stringify({ node: process.version, processor: cpus()[0]?.model ?? '', rows }, null, 1))
  return 0
}

process.exitCode = await main(process.argv.slice(2))
