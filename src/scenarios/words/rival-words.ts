import type { BlockState, ThrowRecord } from '../../sim/world/block/types.js'
import { tally } from '../../sim/world/scoring/game.js'
import { fellWords } from './throw-words.js'
import { shortDecision } from './words.js'

/**
 * The last of a rival's throws, and the score up to it: `Theirs 3: ball 5 22/9, 9 pins, leaving the 10; 59 so far.`
 *
 * @param isBrief without what was left standing
 */
export function rivalThrowWords(
  block: BlockState,
  throws: readonly ThrowRecord[],
  name: string,
  isBrief = false,
): string {
  const last = throws.at(-1)
  if (!last) return `${name} nothing yet.`
  const { bag, bowler } = block.setup
  const { phase, frame, ball } = last.spot
  const place = phase === 'practice' ? `p${frame}` : ball === 1 ? `${frame}` : `${frame}${'abc'[ball - 1]}`
  const fell = fellWords(last, bowler.hand)
    .replace(/\.$/, '')
    .replace(/^./, (letter) => letter.toLowerCase())
  const told = isBrief ? fell.replace(/, leaving .*$/, '') : fell
  return `${name} ${place}: ball ${shortDecision(last.decision, bag)}, ${told}; ${scoreAfter(block, throws)} so far.`
}

/** Pins certain in the games of a block as far as some of its throws go. */
export function scoreAfter({ setup, balls }: BlockState, throws: readonly ThrowRecord[]): number {
  return balls.reduce((sum, game, index) => {
    const ofGame = throws.filter(({ spot }) => spot.phase === 'game' && spot.game === index + 1)
    const frames = game.map((frame, at) => frame.slice(0, ofGame.filter(({ spot }) => spot.frame === at + 1).length))
    return sum + tally(setup.scoring, frames).total
  }, 0)
}
