import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { answerAt, type Desk, nextOpen, sitDown } from '../../src/scenarios/practice/desk.js'
import { idealAnswerOf } from '../../src/sim/analysis/practice/scoring.js'
import { sessionLength } from '../../src/sim/analysis/practice/session.js'
import { type BenchRow, figuresOf } from './measure.js'

/** Between an answer and the next question, with that one made ready while the last was thought about. */
const GOAL_MILLISECONDS = 200
const NOW = new Date('2026-03-08T12:00:00Z')

/** A twenty-minute session answered by the ideal observer: how long a position takes to make ready, and how long one waits for it. */
export async function benchPractice(): Promise<BenchRow[]> {
  const data = mkdtempSync(join(tmpdir(), 'practice-bench-'))
  const [ready, waited, memory]: number[][] = [[], [], []]
  try {
    let desk: Desk = await sitDown({ data, player: undefined, minutes: 20, kinds: null, now: NOW })
    const make = async (from: Desk) => {
      const begun = performance.now()
      const next = await nextOpen(from)
      if (next) ready!.push(performance.now() - begun)
      return next
    }
    let ahead = await make(desk)
    while (ahead) {
      const { open } = ahead
      const drawnOn = {
        ...desk,
        session: { ...ahead.desk.session, learner: desk.session.learner, answered: desk.session.answered },
      }
      // Made ready while the player thinks, who takes longer than this.
      const next = await make(drawnOn)
      const begun = performance.now()
      const answered = await answerAt(drawnOn, open, { answer: idealAnswerOf(open.position), sureShare: null }, NOW)
      waited!.push(performance.now() - begun)
      desk = answered.desk
      ahead = next
      memory!.push(process.memoryUsage().heapUsed / 1e6)
    }
    if (waited!.length !== sessionLength(desk.session.plan))
      throw new Error(`The session ended after ${waited!.length} positions.`)
  } finally {
    rmSync(data, { recursive: true, force: true })
  }
  return [
    {
      name: 'practice: a position made ready',
      unit: 'ms',
      measured: figuresOf(ready!),
      goal: { of: 'p95', most: 2000 },
    },
    {
      name: 'practice: answer to next question',
      unit: 'ms',
      measured: figuresOf(waited!),
      goal: { of: 'p95', most: GOAL_MILLISECONDS },
    },
    { name: 'practice: heap over twenty minutes', unit: 'MB', measured: figuresOf(memory!) },
  ]
}
