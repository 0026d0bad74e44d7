import { FRAMES, PINS, type Scoring } from '../../world/scoring/frame.js'

/** What the second ball does with something a first ball left. */
export interface Leave {
  /** Pins felled by the first ball; 10 is a strike. */
  readonly felled: number
  /** Chance that the second ball clears the rest; not read for a strike. */
  readonly conversion: number
  /** Mean pins of the second ball when it does not clear the rest; not read for a strike. */
  readonly missPins: number
}

/** A leave and the chance that the first ball makes it. */
export interface FirstBallOutcome extends Leave {
  readonly chance: number
}

/** What expected scores need to know of a frame: means over everything that can happen in it. */
export interface FrameOdds {
  /** Chance of a strike. */
  readonly strike: number
  /** Chance that the frame ends in a spare. */
  readonly spare: number
  /** Mean pins of a first ball, a strike counting 10. */
  readonly firstBallPins: number
  /** Mean pins of the second ball, 0 after a strike, spares included. */
  readonly secondBallPins: number
  /** Mean of (first-ball pins when a spare follows, else 0). */
  readonly firstBallPinsOfSpares: number
}

/** Bonuses waiting for the first (b1) and the second (b2) ball of a frame; fractions are averages. */
export interface PendingBonus {
  readonly b1: number
  readonly b2: number
}

/** What each thing that happens in a frame adds to the expected score, in game pins. */
export interface FrameWeights {
  readonly perFirstBallPin: number
  readonly perSecondBallPin: number
  /** Added for a strike, beyond its ten pins. */
  readonly strike: number
  /** Added for a spare, beyond its ten pins. */
  readonly spare: number
  /** Added for each first-ball pin of a spare. */
  readonly perFirstBallPinOfSpare: number
}

/** Mean pins of the second ball at a leave, made or missed. */
export function meanSecondBallPins({ felled, conversion, missPins }: Leave): number {
  return felled === PINS ? 0 : conversion * (PINS - felled) + (1 - conversion) * missPins
}

/**
 * The odds of a frame from everything its first ball may leave.
 *
 * @throws RangeError when the chances do not add up to 1 within 1e-9
 */
export function frameOdds(outcomes: readonly FirstBallOutcome[]): FrameOdds {
  let chances = 0
  let strike = 0
  let spare = 0
  let firstBallPins = 0
  let secondBallPins = 0
  let firstBallPinsOfSpares = 0
  for (const outcome of outcomes) {
    const { felled, chance, conversion } = outcome
    chances += chance
    firstBallPins += chance * felled
    if (felled === PINS) {
      strike += chance
      continue
    }
    spare += chance * conversion
    secondBallPins += chance * meanSecondBallPins(outcome)
    firstBallPinsOfSpares += chance * conversion * felled
  }
  if (!(Math.abs(chances - 1) <= 1e-9))
    throw new RangeError(`The chances of a first ball's outcomes add up to ${chances}, not to 1.`)
  return { strike, spare, firstBallPins, secondBallPins, firstBallPinsOfSpares }
}

/** Expected pins of the next two balls from the start of a fresh frame. */
function nextTwoBalls(frame: FrameOdds, frameAfter: FrameOdds): number {
  return frame.firstBallPins + frame.secondBallPins + frame.strike * frameAfter.firstBallPins
}

/**
 * Weights of a frame's outcomes when the frames after it go as `next` and `afterNext` say. Expected scores add up over
 * frames, so the difference two choices make to the whole game is the difference these weights give, in the tenth
 * frame too, whose fill balls stand for frames 11 and 12. In current-frame scoring nothing depends on other frames.
 */
export function frameWeights(
  scoring: Scoring,
  bonus: PendingBonus,
  next: FrameOdds,
  afterNext: FrameOdds = next,
): FrameWeights {
  if (scoring === 'current-frame')
    return { perFirstBallPin: 1, perSecondBallPin: 1, strike: 20, spare: 0, perFirstBallPinOfSpare: 1 }
  return {
    perFirstBallPin: 1 + bonus.b1,
    perSecondBallPin: 1 + bonus.b2,
    // the second waiting bonus falls on the first ball of the next frame when this one ends in a strike
    strike: nextTwoBalls(next, afterNext) + bonus.b2 * next.firstBallPins,
    spare: next.firstBallPins,
    perFirstBallPinOfSpare: 0,
  }
}

/** Expected game pins of a frame with these odds, up to what no choice in it can change. */
export function weighFrame(weights: FrameWeights, odds: FrameOdds): number {
  return (
    weights.perFirstBallPin * odds.firstBallPins +
    weights.perSecondBallPin * odds.secondBallPins +
    weights.strike * odds.strike +
    weights.spare * odds.spare +
    weights.perFirstBallPinOfSpare * odds.firstBallPinsOfSpares
  )
}

/** Expected game pins from one first-ball outcome on, on the same footing as `weighFrame`. */
export function weighLeave(weights: FrameWeights, leave: Leave): number {
  const first = weights.perFirstBallPin * leave.felled
  if (leave.felled === PINS) return first + weights.strike
  return first + weighSecondBall(weights, leave.felled, leave.conversion, meanSecondBallPins(leave))
}

/**
 * Expected game pins of a throw at a leave: what a spare attempt adds to what already fell.
 *
 * @param felled pins the first ball felled
 * @param conversion chance of clearing the rest
 * @param meanPins mean pins of this ball, cleared or not
 */
export function weighSecondBall(weights: FrameWeights, felled: number, conversion: number, meanPins: number): number {
  return weights.perSecondBallPin * meanPins + conversion * (weights.spare + weights.perFirstBallPinOfSpare * felled)
}

export const NO_BONUS: PendingBonus = { b1: 0, b2: 0 }

/**
 * Expected score of a game, exact when the bowler's choices do not depend on the score: each frame's own pins plus,
 * for each mark, the expected pins of the balls it earns.
 *
 * @param odds one for all frames, or ten to twelve in order; fill balls not given go as the tenth frame
 */
export function expectedGame(scoring: Scoring, odds: FrameOdds | readonly FrameOdds[]): number {
  const list = Array.isArray(odds) ? (odds as readonly FrameOdds[]) : [odds as FrameOdds]
  const at = (index: number): FrameOdds => list[Math.min(index, list.length - 1)]
  let expected = 0
  for (let index = 0; index < FRAMES; index += 1)
    expected += weighFrame(frameWeights(scoring, NO_BONUS, at(index + 1), at(index + 2)), at(index))
  return expected
}

/** Mean bonuses waiting at the start of a frame for a bowler who always has these odds; exact to use, as worth is linear in both. */
export function stationaryBonus({ strike, spare }: FrameOdds): PendingBonus {
  return { b1: spare + strike + strike * strike, b2: strike }
}

/**
 * Worth of a first-ball leave in game pins, against the average outcome of a bowler with the baseline odds: what it
 * adds to or takes from the expected score of the game.
 *
 * @param bonus `stationaryBonus(baseline)` for a worth free of the score, `waitingBonus(...)` for the game at hand
 */
export function leaveWorth(
  baseline: FrameOdds,
  bonus: PendingBonus,
  scoring: Scoring,
  felled: number,
  conversion: number,
  missPins: number,
): number {
  const weights = frameWeights(scoring, bonus, baseline)
  return weighLeave(weights, { felled, conversion, missPins }) - weighFrame(weights, baseline)
}
