import { FRAMES, type FrameReading } from './frame.js'

/** What one frame is worth. */
export interface FrameScore {
  /** Final score of the frame, null while a ball it depends on is still to come. */
  readonly score: number | null
  /** Pins of it that nothing can take away any more. */
  readonly certain: number
}

const BONUS_BALLS = { strike: 2, spare: 1, open: 0 } as const

/**
 * Scores frames by the ten-pin rule: a strike is 10 plus the next two balls, a spare 10 plus the next one; the tenth is
 * the sum of its balls. (International Bowling Federation playing rules 2.1.1-2.1.6.)
 */
export function scoreTenPin(frames: readonly FrameReading[]): FrameScore[] {
  return frames.map((frame, index) => {
    const own = frame.counted.reduce((sum, pins) => sum + pins, 0)
    if (index === FRAMES - 1) return { score: frame.complete ? own : null, certain: own }
    const owed = frame.result === null ? 0 : BONUS_BALLS[frame.result]
    const bonus = frames
      .slice(index + 1, index + 1 + owed)
      .flatMap((later) => later.counted)
      .slice(0, owed)
    const certain = bonus.reduce((sum, pins) => sum + pins, own)
    return { score: frame.complete && bonus.length === owed ? certain : null, certain }
  })
}
