import { sampleStandardDeviation } from 'simple-statistics'
import { playPolicyGame } from '../../src/scenarios/ladder.js'
import { builtInNames } from '../../src/scenarios/library/library.js'
import { loadScenario } from '../../src/scenarios/load.js'
import { POLICIES, type Policy } from '../../src/sim/fair/policies.js'
import { keepLines, keptLines } from '../sim/fair/kept-lines.js'

/** The first game of one scenario under one seed, by every policy: expected pins on first balls, as in the study policy-ladder. */
interface Rung {
  readonly scenario: string
  readonly seed: number
  readonly expected: Readonly<Record<Policy, number>>
  readonly scores: Readonly<Record<Policy, number>>
  readonly processorSeconds: number
}

/** A step is reversed where the lower policy is ahead by more than so many standard errors. */
const REVERSED_ERRORS = 2

/**
 * Whether known ≥ fair ≥ thumb ≥ stay ≥ random on every built-in scenario. Arguments: folder, number of the first game, games
 * (0 to only add up). Game n is scenario n modulo the library's size under seed n over it, so that any run of games covers the
 * library evenly; the luck of a seed is the same for all policies. About 21 processor seconds a game; the library has 35.
 *
 *     all 35 scenarios, one seed each; expected pins a game (standard error over scenarios)
 *     known 8.3, fair 5.4, thumb -6.1, stay -12.1, random -53.4
 *     known over fair 2.9 (0.4), fair over thumb 11.5 (1.0), thumb over stay 6.1 (1.8), stay over random 41.2 (2.1)
 *
 * Known gap: over the library the order holds, every step by more than 3 standard errors; scenario by scenario it is not
 * shown, since one seed has no error. On that seed thumb over stay is reversed on 12 of the 35, by 0.3 to 10.5 pins;
 * no other step is, by more than a tenth of a pin.
 */
export async function run(args: readonly string[] = []): Promise<void> {
  const names = builtInNames()
  const first = Number(args[1] ?? 0)
  const games = Number(args[2] ?? 0)
  const keep = keepLines<Rung>(args[0], first, games)
  for (let game = first; game < first + games; game++) {
    keep(await playRung(names[game % names.length]!, Math.floor(game / names.length)))
    process.stderr.write(`${game + 1 - first} of ${games}\n`)
  }
  report(keptLines<Rung>(args[0] ?? ''))
}

async function playRung(name: string, seed: number): Promise<Rung> {
  const scenario = await loadScenario(name)
  const begun = process.cpuUsage()
  const played = POLICIES.map((policy) => [policy, playPolicyGame(policy, scenario, `ladder ${seed}`)] as const)
  const { user, system } = process.cpuUsage(begun)
  return {
    scenario: name,
    seed,
    expected: Object.fromEntries(played.map(([policy, game]) => [policy, game.expectedPins])) as Rung['expected'],
    scores: Object.fromEntries(played.map(([policy, game]) => [policy, game.score])) as Rung['scores'],
    processorSeconds: (user + system) / 1e6,
  }
}

function report(rungs: readonly Rung[]): void {
  const seconds = rungs.reduce((sum, one) => sum + one.processorSeconds, 0) / Math.max(1, rungs.length)
  console.log(
    `${rungs.length} games a policy, ${seconds.toFixed(1)} processor seconds for the five of one scenario and seed`,
  )
  console.log(
    'expected game pins of the first balls; then each step with its standard error; ! reversed by more than 2 of them\n',
  )
  const steps = POLICIES.slice(1).map((lower, at) => `${POLICIES[at]}-${lower}`)
  console.log(
    `${'scenario'.padEnd(21)}seeds${POLICIES.map((one) => one.padStart(8)).join('')}${steps.map((one) => one.padStart(17)).join('')}`,
  )
  const names = builtInNames().filter((name) => rungs.some(({ scenario }) => scenario === name))
  let holding = 0
  for (const name of names) {
    const own = rungs.filter(({ scenario }) => scenario === name)
    const { cells, holds } = stepsOf(own)
    if (holds && own.length > 1) holding++
    const means = POLICIES.map((policy) =>
      mean(own.map(({ expected }) => expected[policy]))
        .toFixed(1)
        .padStart(8),
    )
    console.log(
      `${name.padEnd(21)}${String(own.length).padStart(5)}${means.join('')}${cells.join('')}  ${own.length < 2 ? 'one seed' : holds ? 'holds' : 'REVERSED'}`,
    )
  }
  if (rungs.length === 0) return
  const { cells } = stepsOf(rungs)
  const means = POLICIES.map((policy) =>
    mean(rungs.map(({ expected }) => expected[policy]))
      .toFixed(1)
      .padStart(8),
  )
  console.log(`${'all'.padEnd(21)}${String(rungs.length).padStart(5)}${means.join('')}${cells.join('')}`)
  const told = names.filter((name) => rungs.filter(({ scenario }) => scenario === name).length > 1)
  console.log(
    `\nthe order holds on ${holding} of the ${told.length} scenarios with two seeds or more; few seeds tell only large steps`,
  )
}

/** Steps of the ladder over games under the same seeds; a standard error needs two of them. */
function stepsOf(rungs: readonly Rung[]): { cells: string[]; holds: boolean } {
  const steps = POLICIES.slice(1).map((lower, at) => {
    const gaps = rungs.map(({ expected }) => expected[POLICIES[at]!] - expected[lower])
    const error = gaps.length > 1 ? sampleStandardDeviation(gaps) / Math.sqrt(gaps.length) : Number.NaN
    const isReversed = mean(gaps) < -REVERSED_ERRORS * error
    const words = `${mean(gaps).toFixed(1)} (${Number.isNaN(error) ? '-' : error.toFixed(1)})${isReversed ? '!' : ' '}`
    return { cell: words.padStart(17), isReversed }
  })
  return { cells: steps.map(({ cell }) => cell), holds: steps.every(({ isReversed }) => !isReversed) }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
