import type { RackPicture } from '../pins/rack-motion.js'
import { watchPins } from './throw.js'
import type { BlockState } from './types.js'

/** The pins of a throw at fixed instants, and what is left of them. */
export interface PinFall {
  readonly standing: number
  /** None where the ball never came to the pins. */
  readonly pictures: readonly RackPicture[]
}

/**
 * The pins of a throw of a block as they fell: the same throw again, by the rack engine, looked at while it runs. It ends
 * with the leave on record.
 *
 * @param block after the throw, or any time later
 * @param index of the throw
 * @param instantsSeconds since the ball first touched a pin, ascending
 */
export function pinFall(
  { setup, seed, throws }: BlockState,
  index: number,
  instantsSeconds: readonly number[],
): PinFall {
  const record = throws[index]
  const ball = record && setup.bag.find(({ id }) => id === record.decision.ballId)
  if (!record || !ball) throw new RangeError(`Throw ${index} is not among the ${throws.length} of the block.`)
  const { spot, decision, truth, standingBefore } = record
  return watchPins(
    {
      lane: truth.laneBefore,
      ball,
      profile: setup.bowler,
      aim: decision.aim,
      release: decision.release,
      standing: standingBefore,
      seed,
      game: spot.game,
      frame: spot.frame,
      ballInFrame: spot.ball,
      bowlerIndex: 0,
    },
    instantsSeconds,
  )
}
