import { type Answer, type Position, SKILLS, type Skill } from '../../../src/sim/analysis/practice/position.js'
import { idealInterval, lossOf } from '../../../src/sim/analysis/practice/scoring.js'
import type { RandomSource } from '../../../src/sim/random.js'

/**
 * A simulated learner: in each skill a weakness from 0 (ideal observer) to 1 (knows nothing, or follows a bias), and how it shows. Learning from
 * feedback is a delta rule on the pins shown: each answer that was told takes `rate` of the weakness off for every pin it cost, and half as much for a
 * sound one (model, no source).
 */
export interface SimulatedLearner {
  readonly name: string
  readonly weak: Readonly<Record<Skill, number>>
  /** Where a choice goes when it is not weighed: the standing line, the same ball, away from the miss; or anywhere. */
  readonly bias: 'stays' | 'own-ball' | 'follows' | 'none'
  readonly rate: number
}

const BASE = 0.25
const of = (weak: Partial<Record<Skill, number>>, base = BASE): SimulatedLearner['weak'] =>
  Object.fromEntries(SKILLS.map((skill) => [skill, weak[skill] ?? base])) as Record<Skill, number>

/** The kinds of learner, each with the skill it is weak in; the all-rounder has none by design. */
export const LEARNERS: readonly (SimulatedLearner & { readonly weakness: Skill | null })[] = [
  {
    name: 'good reader who moves late',
    weak: of({ timing: 1, read: 0.1, call: 0.1 }),
    bias: 'stays',
    rate: 0.02,
    weakness: 'timing',
  },
  { name: 'misreader', weak: of({ read: 1 }), bias: 'none', rate: 0.02, weakness: 'read' },
  { name: 'ball-loyal', weak: of({ ball: 1 }), bias: 'own-ball', rate: 0.02, weakness: 'ball' },
  { name: 'chaser', weak: of({ 'throw-or-lane': 1 }), bias: 'follows', rate: 0.02, weakness: 'throw-or-lane' },
  { name: 'noisy all-rounder', weak: of({}, 0.6), bias: 'none', rate: 0.02, weakness: null },
]

/** What a learner answers. */
export function learnerAnswer(
  { weak, bias }: Pick<SimulatedLearner, 'weak' | 'bias'>,
  position: Position,
  draw: RandomSource,
): Answer {
  const weakness = weak[position.skill]
  switch (position.kind) {
    case 'decide': {
      const { answers, standing } = position
      // A learner's eye: noise on the prices, the larger the weaker; and where it is weak, a habit in place of weighing.
      const isHabit = weakness > 0.5 && draw() < weakness
      if (isHabit && bias === 'stays' && standing !== null) return { kind: 'choice', place: standing }
      if (isHabit && bias === 'own-ball' && standing !== null) {
        const { ballId } = answers[standing]!.decision
        const own = answers.findIndex(({ decision }) => decision.ballId === ballId)
        return { kind: 'choice', place: standing >= 0 ? standing : own }
      }
      if (isHabit && bias === 'follows' && standing !== null) {
        const far = answers.reduce(
          (best, one, at) =>
            Math.abs(one.decision.aim.feetBoard - answers[standing]!.decision.aim.feetBoard) >
            Math.abs(answers[best]!.decision.aim.feetBoard - answers[standing]!.decision.aim.feetBoard)
              ? at
              : best,
          standing,
        )
        return { kind: 'choice', place: far }
      }
      const scale = 0.05 + 3 * weakness * weakness
      const seen = answers.map(({ costPins }) => costPins - scale * Math.log(-Math.log(draw())) * -1)
      return { kind: 'choice', place: seen.indexOf(Math.min(...seen)) }
    }
    case 'throw-or-lane':
      return {
        kind: 'share',
        share: mixed(position.ideal, bias === 'follows' && weakness > 0.5 ? 0 : 0.5, weakness, draw),
      }
    case 'call': {
      const [low, high] = idealInterval(position.ideal)
      const off = 2.5 * weakness * (draw() + draw() - 1)
      return { kind: 'interval', low: low + off - weakness, high: high + off + weakness }
    }
    case 'read': {
      if (position.question === 'shape' || position.question === 'length') {
        const drawn = [draw(), draw(), draw()]
        const sum = drawn[0]! + drawn[1]! + drawn[2]!
        return {
          kind: 'shares',
          shares: position.ideal.map((share, i) => (1 - weakness) * share + (weakness * drawn[i]!) / sum),
        }
      }
      const [low, high] = idealInterval(position.ideal)
      const [wideLow, wideHigh] = idealInterval(position.before)
      const off = weakness * (wideHigh - wideLow) * 0.5 * (draw() + draw() - 1)
      return {
        kind: 'interval',
        low: low + weakness * (wideLow - low) + off,
        high: high + weakness * (wideHigh - high) + off,
      }
    }
  }
}

const mixed = (ideal: number, lean: number, weakness: number, draw: RandomSource): number =>
  Math.min(1, Math.max(0, (1 - weakness) * ideal + weakness * (lean + 0.3 * (draw() - 0.5))))

/** The learner after feedback on one answer. */
export function taught(learner: SimulatedLearner, position: Position, pins: number): SimulatedLearner {
  const { skill } = position
  const taken = learner.rate * Math.min(3, 0.5 + pins)
  return { ...learner, weak: { ...learner.weak, [skill]: learner.weak[skill] * (1 - taken) } }
}

/** Mean pins a position that a learner loses in a skill, over the whole store. */
export function trueLoss(
  learner: SimulatedLearner,
  store: readonly Position[],
  skill: Skill,
  draw: RandomSource,
  times = 40,
): number {
  const own = store.filter((one) => one.skill === skill)
  let sum = 0
  for (const position of own)
    for (let time = 0; time < times; time++) sum += lossOf(position, learnerAnswer(learner, position, draw)).pins
  return own.length === 0 ? 0 : sum / (own.length * times)
}
