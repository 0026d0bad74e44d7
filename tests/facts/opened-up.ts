import { knownSearch } from '../../src/sim/analysis/oracle/known-choice.js'
import { leastMove } from '../../src/sim/analysis/shots/least-move.js'
import type { BallSpecification } from '../../src/sim/world/ball/specification.js'
import { throwBall } from '../../src/sim/world/block/throw.js'
import type { BlockSetup } from '../../src/sim/world/block/types.js'
import type { Aim } from '../../src/sim/world/bowler/release.js'
import type { LaneState } from '../../src/sim/world/lane/wear.js'
import { FULL_RACK } from '../../src/sim/world/pins/leaves.js'

export const SEEDS = Array.from({ length: 20 }, (_, index) => `facts-${index}`)

/** The setup with a bag of one ball. */
export const withOnly = (setup: BlockSetup, ball: BallSpecification): BlockSetup => ({ ...setup, bag: [ball] })

/** The best line of one ball on a lane with its oil in sight. */
export const bestAim = (setup: BlockSetup, lane: LaneState, ball: BallSpecification): Aim =>
  knownSearch(withOnly(setup, ball), lane).best.aim

/** The shortest move of a ball's line that is as good as its best. */
export const movedAim = (setup: BlockSetup, lane: LaneState, ball: BallSpecification, last: Aim): Aim =>
  leastMove(knownSearch(withOnly(setup, ball), lane), setup.bowler, { ballIndex: 0, aim: last }).aim

/** One ball of the setup's bowler, its keyed error included. */
export function bowl(
  setup: BlockSetup,
  lane: LaneState,
  ball: BallSpecification,
  aim: Aim,
  seed: string,
  shot: number,
) {
  return throwBall({
    lane,
    ball,
    profile: setup.bowler,
    aim,
    release: 'strike',
    standing: FULL_RACK,
    seed,
    game: 1,
    frame: shot,
    ballInFrame: 1,
    bowlerIndex: 0,
  })
}

export interface OpenedUp {
  readonly lane: LaneState
  /** Every move of the first ball's feet that was not zero, in boards, left positive. */
  readonly feetMoves: readonly number[]
}

/** Balls thrown in turn on their own best lines, each moved no further than needed once a round. */
export function openUp(
  setup: BlockSetup,
  fresh: LaneState,
  balls: readonly BallSpecification[],
  seed: string,
  shots: number,
): OpenedUp {
  const aims = balls.map((ball) => bestAim(setup, fresh, ball))
  const feetMoves: number[] = []
  let lane = fresh
  for (let shot = 0; shot < shots; shot++) {
    const turn = shot % balls.length
    if (shot >= balls.length) {
      const moved = movedAim(setup, lane, balls[turn], aims[turn])
      if (turn === 0 && moved.feetBoard !== aims[turn].feetBoard) feetMoves.push(moved.feetBoard - aims[turn].feetBoard)
      aims[turn] = moved
    }
    lane = bowl(setup, lane, balls[turn], aims[turn], seed, shot + 1).lane
  }
  return { lane, feetMoves }
}
