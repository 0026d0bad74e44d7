import { join } from 'node:path'
import { sampleStandardDeviation } from 'simple-statistics'
import { builtInNames } from '../../src/scenarios/library/library.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { playPolicyGame } from '../../src/sim/analysis/explore/ladder.js'
import { POLICIES, type Policy } from '../../src/sim/analysis/policies/policies.js'
import { keepLines, keptLines } from '../sim/analysis/grade/kept-lines.js'

/** The first game of one scenario under one seed by a policy: expected pins on first balls, as in the study policy-ladder. */
interface Rung {
  readonly scenario: string
  readonly seed: number
  readonly policy: Policy
  readonly expected: number
  readonly score: number
  readonly processorSeconds: number
}

/** A step is shown, or reversed, where one policy is ahead of the other by more than so many standard errors. */
const SURE_ERRORS = 2

/**
 * Whether known ≥ fair ≥ thumb ≥ stay ≥ random on every built-in scenario. Arguments: folder, number of the first game, games
 * (0 to only add up), policies (all, or some with commas between). Game n is scenario n modulo the library's size under seed n
 * over it, so that any run of games covers the library evenly; the luck of a seed is the same for all policies, and a step
 * is counted over the seeds both of its policies played.
 *
 *     35 scenarios; expected pins a game: known 7.4, fair 5.0, thumb -7.9, stay -19.4, random -62.8
 *     known over fair     2.4 (0.2)   105 games   sure on 23, ahead on the other 12
 *     fair over thumb    14.4 (0.6)   105 games   sure on 34, ahead on the other one
 *     thumb over stay    11.5 (0.6)   210 games   sure on all 35
 *     stay over random   43.3 (1.0)   210 games   sure on all 35
 *
 * While every lane was bowled by the same middling hand, whom the opening rule is made for, one who never moves was surely
 * ahead of one who answers every miss on six of them: the opening line was good there, and single results say more of the
 * throw than of the lane. Neither waiting for two misses to the same side, nor judging by the mean of the last two or three,
 * nor leaving out what the miss at the arrows explains makes the rule of thumb better on the whole.
 */
export async function run(args: readonly string[] = []): Promise<void> {
  const names = builtInNames()
  const [folder = '', , , chosen = 'all'] = args
  const first = Number(args[1] ?? 0)
  const games = Number(args[2] ?? 0)
  const policies = POLICIES.filter((policy) => chosen === 'all' || chosen.split(',').includes(policy))
  const keep = keepLines<Rung>(args[0] && join(folder, chosen), first, games)
  for (let game = first; game < first + games; game++) {
    for (const policy of policies)
      keep(await playRung(names[game % names.length]!, Math.floor(game / names.length), policy))
    process.stderr.write(`${game + 1 - first} of ${games}\n`)
  }
  report(keptLines<Rung>(folder))
}

async function playRung(name: string, seed: number, policy: Policy): Promise<Rung> {
  const scenario = await loadScenario(name)
  const begun = process.cpuUsage()
  const { expectedPins, score } = playPolicyGame(policy, scenario, `ladder ${seed}`)
  const { user, system } = process.cpuUsage(begun)
  return { scenario: name, seed, policy, expected: expectedPins, score, processorSeconds: (user + system) / 1e6 }
}

const STEPS = POLICIES.slice(1).map((lower, at) => ({ higher: POLICIES[at]!, lower }))

function report(rungs: readonly Rung[]): void {
  for (const policy of POLICIES) {
    const own = rungs.filter((one) => one.policy === policy)
    const seconds = own.reduce((sum, one) => sum + one.processorSeconds, 0) / Math.max(1, own.length)
    console.log(`${policy}: ${own.length} games, ${seconds.toFixed(1)} processor seconds each`)
  }
  console.log(
    'expected game pins of the first balls; then each step with its standard error and seeds; ! reversed, ? not sure\n',
  )
  console.log(
    `${'scenario'.padEnd(21)}${POLICIES.map((one) => one.padStart(8)).join('')}${STEPS.map(({ higher, lower }) => `${higher}-${lower}`.padStart(19)).join('')}`,
  )
  const names = builtInNames().filter((name) => rungs.some(({ scenario }) => scenario === name))
  const steps = names.map((name) => {
    const own = rungs.filter(({ scenario }) => scenario === name)
    console.log(rowOf(name, own))
    return STEPS.map((step) => stepOf(own, step))
  })
  console.log(rowOf('all', rungs))
  STEPS.forEach(({ higher, lower }, at) => {
    const count = (wanted: Step['verdict']): number => steps.filter((own) => own[at]!.verdict === wanted).length
    console.log(
      `${higher} over ${lower}: sure on ${count('sure')} scenarios, ahead on ${count('ahead')} more, behind on ${count('behind')}, surely behind on ${count('reversed')}, too few games on ${count('untold')}`,
    )
  })
}

function rowOf(name: string, rungs: readonly Rung[]): string {
  const means = POLICIES.map((policy) => {
    const own = rungs.filter((one) => one.policy === policy)
    return (own.length > 0 ? mean(own.map(({ expected }) => expected)).toFixed(1) : '-').padStart(8)
  })
  return name.padEnd(21) + means.join('') + STEPS.map((step) => stepOf(rungs, step).words.padStart(19)).join('')
}

interface Step {
  readonly words: string
  readonly verdict: 'sure' | 'ahead' | 'behind' | 'reversed' | 'untold'
}

/** A step over the games that both policies played; a standard error needs two of them. */
function stepOf(rungs: readonly Rung[], { higher, lower }: (typeof STEPS)[number]): Step {
  const placeOf = ({ scenario, seed }: Rung): string => `${scenario} ${seed}`
  const lows = new Map(rungs.filter(({ policy }) => policy === lower).map((one) => [placeOf(one), one.expected]))
  const gaps = rungs
    .filter(({ policy }) => policy === higher)
    .flatMap((one) => {
      const low = lows.get(placeOf(one))
      return low === undefined ? [] : [one.expected - low]
    })
  if (gaps.length < 2) return { words: '-', verdict: 'untold' }
  const gap = mean(gaps)
  const error = sampleStandardDeviation(gaps) / Math.sqrt(gaps.length)
  const isSure = Math.abs(gap) > SURE_ERRORS * error
  const verdict = gap > 0 ? (isSure ? 'sure' : 'ahead') : isSure ? 'reversed' : 'behind'
  const mark = isSure ? (gap > 0 ? ' ' : '!') : '?'
  return { words: `${gap.toFixed(1)} (${error.toFixed(1)}) ${String(gaps.length).padStart(2)}${mark}`, verdict }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
