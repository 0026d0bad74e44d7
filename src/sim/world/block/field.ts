import type { LaneState } from '../lane/wear.js'
import { FULL_RACK } from '../pins/leaves.js'
import { followTheMiss } from './follow-the-miss.js'
import { observe } from './seen.js'
import { throwBall } from './throw.js'
import type { BlockEvent, BlockSetup, FieldThrowRecord, Spot } from './types.js'

/**
 * One first ball of every other bowler on a lane, in their order; each follows their own miss from frame to frame.
 * Their spare balls, thrown straight and mostly on the dry, are left out of the wear.
 */
export function fieldThrows(
  setup: BlockSetup,
  seed: string,
  spot: Spot,
  lane: LaneState,
  earlier: readonly FieldThrowRecord[],
): { lane: LaneState; events: readonly BlockEvent[] } {
  const events: BlockEvent[] = []
  let worn = lane
  setup.field.forEach((bowler, place) => {
    const last = earlier.findLast((one) => one.bowlerIndex === place + 1 && one.lane === spot.lane)
    const aim = last ? followTheMiss(last.aim, last.observation) : bowler.aim
    const thrown = throwBall({
      lane: worn,
      ball: bowler.ball,
      profile: bowler.profile,
      aim,
      release: 'strike',
      standing: FULL_RACK,
      seed,
      game: spot.game,
      frame: spot.frame,
      ballInFrame: spot.lane + 1,
      bowlerIndex: place + 1,
    })
    worn = thrown.lane
    events.push({
      type: 'field-throw',
      record: {
        lane: spot.lane,
        bowlerIndex: place + 1,
        bowlerName: bowler.profile.name,
        hand: bowler.profile.hand,
        ballName: bowler.ball.name,
        aim,
        observation: observe(thrown.truth, thrown.arrowsBoard, thrown.standing, setup.seeing),
        truth: thrown.truth,
      },
    })
  })
  return { lane: worn, events }
}
