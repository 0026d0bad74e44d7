/**
 * What answering by a rule costs on the ready positions, against the ideal observer (0) and a careful, human-like player: `npm run study
 * practice-strategies`, some seconds. Pins a position over the kinds each rule speaks of; `careful` is the careful player on the same positions. On 218 positions:
 *
 * | rule | positions | rule | careful |
 * | --- | --- | --- | --- |
 * | the last line again | 144 | 2.75 | 0.09 |
 * | always 2 left | 144 | 2.79 | 0.10 |
 * | always the first | 144 | 2.34 | 0.09 |
 * | always the middle | 144 | 1.68 | 0.09 |
 * | always "pocket" | 20 | 1.91 | 0.12 |
 * | always 50 % | 24 | 2.21 | 0.28 |
 * | a third each, or the sheet | 30 | 2.00 | 0.98 |
 */
import { readyPositions } from '../../src/scenarios/practice/position-set.js'
import type { Answer, Position } from '../../src/sim/analysis/practice/position.js'
import { idealAnswerOf, lossOf } from '../../src/sim/analysis/practice/scoring.js'
import { stream } from '../../src/sim/random.js'
import { learnerAnswer, type SimulatedLearner } from './practice/learners.js'

const TIMES = 60

/** Careful: sees prices with some noise and reads with some doubt, without a habit. */
const CAREFUL: Pick<SimulatedLearner, 'weak' | 'bias'> = {
  weak: {
    line: 0.35,
    ball: 0.35,
    'move-size': 0.35,
    timing: 0.35,
    spare: 0.35,
    'throw-or-lane': 0.35,
    read: 0.35,
    call: 0.35,
  },
  bias: 'none',
}

const source = stream({ seed: 'strategies', game: 0, frame: 0, ball: 0, purpose: 'study' })

/** A rule's answer; null where it says nothing. */
type Rule = (position: Position) => Answer | null

const twoLeft: Rule = (position) => {
  if (position.kind !== 'decide' || position.standing === null) return null
  const from = position.answers[position.standing]!.decision
  const place = position.answers.findIndex(
    ({ decision }) => decision.ballId === from.ballId && decision.aim.feetBoard - from.aim.feetBoard === 2,
  )
  return { kind: 'choice', place: place < 0 ? position.standing : place }
}

const RULES: Readonly<Record<string, Rule>> = {
  'ideal observer': idealAnswerOf,
  'careful player': (position) => learnerAnswer(CAREFUL, position, source),
  'the last line again': (position) =>
    position.kind === 'decide' && position.standing !== null ? { kind: 'choice', place: position.standing } : null,
  'always 2 left': twoLeft,
  'always the first': (position) => (position.kind === 'decide' ? { kind: 'choice', place: 0 } : null),
  'always the middle': (position) =>
    position.kind === 'decide' ? { kind: 'choice', place: Math.floor(position.answers.length / 2) } : null,
  'always "pocket"': (position) => (position.kind === 'call' ? { kind: 'interval', low: 16.6, high: 18.4 } : null),
  'always 50 %': (position) => (position.kind === 'throw-or-lane' ? { kind: 'share', share: 0.5 } : null),
  'a third each, or the sheet': (position) => {
    if (position.kind !== 'read') return null
    if (position.question === 'shape' || position.question === 'length')
      return { kind: 'shares', shares: [1 / 3, 1 / 3, 1 / 3] }
    const sorted = [...position.before].sort((a, b) => a - b)
    return { kind: 'interval', low: sorted[3]!, high: sorted[35]! }
  },
}

export async function run(): Promise<void> {
  const { positions } = await readyPositions()
  console.log(`${positions.length} positions; pins a position`)
  console.log(
    `${'rule'.padEnd(28)}${'positions'.padStart(10)}${'rule'.padStart(8)}${'careful'.padStart(9)}${'ideal'.padStart(7)}`,
  )
  for (const [name, rule] of Object.entries(RULES)) {
    let [count, sum, careful] = [0, 0, 0]
    for (const position of positions) {
      if (rule(position) === null) continue
      count++
      for (let time = 0; time < TIMES; time++) {
        sum += lossOf(position, rule(position)!).pins / TIMES
        careful += lossOf(position, learnerAnswer(CAREFUL, position, source)).pins / TIMES
      }
    }
    console.log(
      `${name.padEnd(28)}${String(count).padStart(10)}${(sum / count).toFixed(2).padStart(8)}${(careful / count).toFixed(2).padStart(9)}${'0.00'.padStart(7)}`,
    )
  }
}
