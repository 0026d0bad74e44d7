import { spawn } from 'node:child_process'
import { choose } from '../../src/sim/analysis/policies/policies.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import type { BlockState, Decision } from '../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../src/sim/world/pins/leaves.js'
import { rehearsal } from '../../src/tui/worker/rehearsal.js'
import { answer, type Question } from '../../src/tui/worker/thoughts.js'
import { setupOf, statesByThumb } from './decision.js'
import { type BenchRow, startWatch, type Taken, timesOf } from './measure.js'

const GAMES = 2
const READY_MS = 150
const COLD_MS = 1000
const TAKEN_UP_AT = 12
const COLD_SEEDS = ['cold a', 'cold b', 'cold c', 'cold d', 'cold e', 'cold f', 'cold g', 'cold h'] as const

/** What a bowler's own ideas add to the rule of thumb, throw by throw: half boards of feet and target. */
const FEET = [0, 1, -0.5, 2, 0.5, -1] as const
const TARGET = [0, 0.5, 0, 1, -0.5] as const

/**
 * How long a player waits for the grade of a choice through a whole block of two games, another core kept busy as by a
 * screen: after the thinking that goes on ahead of the choice, and with nothing made ready at all.
 */
export async function benchLatency(): Promise<BenchRow[]> {
  const setup = { ...(await setupOf('unseen-draw')), games: GAMES }
  const screen = spawn(process.execPath, ['-e', 'for (;;) Math.sqrt(2)'], { stdio: 'ignore' })
  const early: Taken[] = []
  const later: Taken[] = []
  const spares: Taken[] = []
  const preparing: Taken[] = []
  const cold: Taken[] = []
  const takenUp: Taken[] = []
  const rehearsing: Taken[] = []
  const steps = rehearsal()
  for (let stop = startWatch(); !steps.next().done; stop = startWatch()) rehearsing.push(stop())
  for (const seed of COLD_SEEDS) {
    const fresh = beginBlock({ ...setup, practiceThrows: 0 }, seed)
    cold.push(timeOf(fresh, { kind: 'grade', decision: ownChoice(fresh, 1) }))
    const later = statesByThumb({ ...setup, practiceThrows: 0 }, `${seed} taken up`, TAKEN_UP_AT).at(-1)!
    takenUp.push(timeOf(later, { kind: 'grade', decision: ownChoice(later, 1) }))
  }
  let state: BlockState = beginBlock(setup, 'latency')
  for (let thrown = 0; state.spot; thrown++) {
    const decision = ownChoice(state, thrown)
    preparing.push(timeOf(state, { kind: 'prepare' }))
    if (state.spot.phase === 'game') {
      const isSpare = state.standing !== FULL_RACK
      const into = isSpare ? spares : state.spot.game === 1 && state.spot.frame <= 2 ? early : later
      into.push(timeOf(state, { kind: 'grade', decision }))
    }
    state = advance(state, decision)
  }
  screen.kill()
  return [
    { name: 'thinking ahead of a choice', unit: 'ms', measured: timesOf(preparing) },
    row('grade after the choice, all throws', [...early, ...later, ...spares], READY_MS),
    row('  first balls of the first two frames', early),
    row('  later first balls', later),
    row('  spares', spares),
    row('a step of the rehearsal at the start', rehearsing),
    row('grade of the first throw, nothing ready', cold, COLD_MS),
    row(`grade of throw ${TAKEN_UP_AT + 1}, nothing ready`, takenUp),
  ]
}

function row(name: string, runs: readonly Taken[], most?: number): BenchRow {
  return { name, unit: 'ms', measured: timesOf(runs), ...(most === undefined ? {} : { goal: { most, of: 'p95' } }) }
}

function timeOf(state: BlockState, question: Question): Taken {
  const stop = startWatch()
  const steps = answer(state, question)
  while (!steps.next().done);
  return stop()
}

/** Mostly another line, and now and then another ball, than anything made ready ahead. */
function ownChoice(state: BlockState, thrown: number): Decision {
  const habit = choose('thumb', state)
  const { bag } = state.setup
  if (state.standing !== FULL_RACK && thrown % 2 === 0) return habit
  const feetBoard = Math.min(38, Math.max(2, habit.aim.feetBoard + FEET[thrown % FEET.length]!))
  const targetBoard = Math.min(36, Math.max(2, habit.aim.targetBoard + TARGET[thrown % TARGET.length]!))
  const ballId = thrown % 4 === 3 ? bag[thrown % bag.length]!.id : habit.ballId
  return { ...habit, ballId, aim: { ...habit.aim, feetBoard, targetBoard } }
}
