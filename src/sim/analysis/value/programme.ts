import { FRAMES, PINS, type Scoring } from '../../world/scoring/frame.js'
import { type FirstBallOutcome, meanSecondBallPins, type PendingBonus } from './worth.js'

/** How the frame before ended, as far as bonuses remember: an open frame (or none), a spare, one strike, two or more. */
export type Before = 'open' | 'spare' | 'strike' | 'double'

/** Bonuses waiting after each kind of frame before. */
export const BONUS_AFTER: Readonly<Record<Before, PendingBonus>> = {
  open: { b1: 0, b2: 0 },
  spare: { b1: 1, b2: 0 },
  strike: { b1: 1, b2: 1 },
  double: { b1: 2, b2: 1 },
}

const BEFORE = ['open', 'spare', 'strike', 'double'] as const

type Outcomes = readonly FirstBallOutcome[]

const mean = (outcomes: Outcomes, value: (outcome: FirstBallOutcome) => number): number =>
  outcomes.reduce((sum, outcome) => sum + outcome.chance * value(outcome), 0)

/** Expected pins of one frame and all that follow; `rest` is what follows once the frame has ended so. */
function frameValue(
  outcomes: Outcomes,
  { b1, b2 }: PendingBonus,
  rest: Readonly<Record<'strike' | 'spare' | 'open', number>>,
) {
  return mean(outcomes, ({ felled, conversion, missPins }) => {
    const first = (1 + b1) * felled
    if (felled === PINS) return first + rest.strike
    const made = (1 + b2) * (PINS - felled) + rest.spare
    const missed = (1 + b2) * missPins + rest.open
    return first + conversion * made + (1 - conversion) * missed
  })
}

/**
 * Expected pins still to come, by the backward programme over frames and waiting bonuses. It prices every ball when it
 * is thrown, where the closed form prices frames, so each is a check of the other.
 *
 * @param outcomes first-ball outcomes by frame, ten to twelve lists; fill balls not given go as the tenth frame
 * @param frame the frame about to start, 1 to 10
 * @param before how the frame before it ended
 */
export function expectedGameByProgramme(
  scoring: Scoring,
  outcomes: readonly Outcomes[],
  frame = 1,
  before: Before = 'open',
): number {
  const at = (number: number): Outcomes => outcomes[Math.min(number, outcomes.length) - 1]
  if (scoring === 'current-frame') {
    let sum = 0
    for (let number = frame; number <= FRAMES; number += 1)
      sum += mean(at(number), ({ felled, conversion, missPins }) =>
        felled === PINS ? 30 : conversion * (10 + felled) + (1 - conversion) * (felled + missPins),
      )
    return sum
  }
  const lastBall = mean(at(FRAMES + 2), ({ felled }) => felled)
  const fillBalls = (b2: number) =>
    mean(at(FRAMES + 1), (o) => (1 + b2) * o.felled + (o.felled === PINS ? lastBall : meanSecondBallPins(o)))
  const spareFill = mean(at(FRAMES + 1), ({ felled }) => felled)

  const tenth = (state: Before): number => {
    const bonus = BONUS_AFTER[state]
    return frameValue(at(FRAMES), bonus, { strike: fillBalls(bonus.b2), spare: spareFill, open: 0 })
  }
  let values = Object.fromEntries(BEFORE.map((state) => [state, tenth(state)])) as Record<Before, number>
  for (let number = FRAMES - 1; number >= frame; number -= 1) {
    const later = values
    values = Object.fromEntries(
      BEFORE.map((state) => {
        const bonus = BONUS_AFTER[state]
        const rest = { strike: bonus.b2 > 0 ? later.double : later.strike, spare: later.spare, open: later.open }
        return [state, frameValue(at(number), bonus, rest)]
      }),
    ) as Record<Before, number>
  }
  return values[before]
}
