import type { BlockState } from '../../sim/world/block/types.js'
import type { Answers, Question, Steps } from './thoughts.js'

/** An answer on its way. Once given up it never comes, and no step either. */
export interface Asked<Result> {
  readonly answer: Promise<Result>
  giveUp(): void
}

/** Works out what takes long. */
export interface Thinker {
  /** Whether it thinks apart from the screen, which then stays free meanwhile. */
  readonly isApart: boolean
  /** Makes ready for the first question where it thinks apart; nothing waits for that. */
  wake(): void
  ask<Kind extends Question['kind']>(
    block: BlockState,
    question: Extract<Question, { kind: Kind }>,
    onStep?: (step: Steps[Kind]) => void,
  ): Asked<Answers[Kind]>
  close(): void
}

/** Thinks in the screen's own thread, a step a turn: for where there are no workers, and for tests. */
export function inlineThinker(): Thinker {
  return {
    isApart: false,
    wake() {},
    ask<Kind extends Question['kind']>(
      block: BlockState,
      question: Extract<Question, { kind: Kind }>,
      onStep?: (step: Steps[Kind]) => void,
    ) {
      let isWanted = true
      const work = async () => {
        const { answer } = await import('./thoughts.js')
        const steps = answer(block, question)
        for (;;) {
          await new Promise((turn) => setImmediate(turn))
          if (!isWanted) return new Promise<never>(() => {})
          const step = steps.next()
          if (step.done) return step.value as Answers[Kind]
          if (step.value !== null) onStep?.(step.value as Steps[Kind])
        }
      }
      return {
        answer: work(),
        giveUp() {
          isWanted = false
        },
      }
    },
    close() {},
  }
}
