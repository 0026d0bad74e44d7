import type { FrameReading } from './frame.js'
import type { FrameScore } from './ten-pin.js'

const STRIKE_SCORE = 30
const SPARE_SCORE = 10

/**
 * Scores frames by the international current-frame rule: a strike is 30 whatever follows, a spare 10 plus the first
 * ball of the same frame, an open frame its pins; ten frames alike, ten strikes 300.
 */
export function scoreCurrentFrame(frames: readonly FrameReading[]): FrameScore[] {
  return frames.map(({ counted, result, complete }) => {
    const [first = 0, second = 0] = counted
    const certain = result === 'strike' ? STRIKE_SCORE : result === 'spare' ? SPARE_SCORE + first : first + second
    return { score: complete ? certain : null, certain }
  })
}
