import { FEET_BOARDS, TARGET_BOARDS } from '../bowler/aim-boards.js'
import { countPins, FULL_RACK } from '../pins/leaves.js'
import { nextBall, tally } from '../scoring/game.js'
import { fieldThrows } from './field.js'
import { observe } from './seen.js'
import { throwBall } from './throw.js'
import type { BlockEvent, BlockState, Decision, Spot, ThrowRecord } from './types.js'

/** One sentence on what is wrong with a decision, or null where it can be thrown. */
export function checkDecision(state: BlockState, decision: Decision): string | null {
  if (!state.spot) return 'The block is over; there is nothing left to decide.'
  if (!state.setup.bag.some((ball) => ball.id === decision.ballId))
    return `There is no ball "${decision.ballId}" in the bag; it holds ${state.setup.bag.map((ball) => ball.id).join(', ')}.`
  const { feetBoard, targetBoard, speedStep } = decision.aim
  return (
    checkBoards('Slide', feetBoard, FEET_BOARDS) ??
    checkBoards('Target', targetBoard, TARGET_BOARDS) ??
    ([-1, 0, 1].includes(speedStep)
      ? null
      : `Speed is one step softer (-1), usual (0) or firmer (1), not ${speedStep}.`)
  )
}

function checkBoards(what: string, board: number, [low, high]: readonly [number, number]): string | null {
  if (!(board >= low && board <= high)) return `${what} can be from board ${low} to ${high}, not ${board}.`
  return Number.isInteger(board * 2) ? null : `${what} go by half boards, not ${board}.`
}

/**
 * The block after one more decision. Same state and decision, same result to the last bit.
 * Throws RangeError with the sentence of checkDecision on a decision that can't be thrown.
 *
 * @param left what it left, where it was thrown before and that is known: the same block, but for
 * the pins the ball touched, without a rack being thrown at
 */
export function advance(state: BlockState, decision: Decision, left?: number): BlockState {
  const problem = checkDecision(state, decision)
  const spot = state.spot
  if (problem !== null || !spot) throw new RangeError(problem ?? 'The block is over.')
  const ball = state.setup.bag.find((one) => one.id === decision.ballId)
  if (!ball) throw new RangeError('The ball left the bag.')

  const thrown = throwBall({
    lane: state.lanes[spot.lane],
    ball,
    profile: state.setup.bowler,
    aim: decision.aim,
    release: decision.release,
    standing: state.standing,
    seed: state.seed,
    game: spot.game,
    frame: spot.frame,
    ballInFrame: spot.ball,
    bowlerIndex: 0,
    ...(left === undefined ? {} : { left }),
  })
  const record: ThrowRecord = {
    spot,
    decision,
    standingBefore: state.standing,
    standingAfter: thrown.standing,
    observation: observe(thrown.truth, thrown.arrowsBoard, thrown.standing, state.setup.seeing),
    truth: thrown.truth,
  }
  const balls = spot.phase === 'game' ? withBall(state.balls, spot, felledBy(record)) : state.balls
  const after = whatFollows(state, spot, balls, thrown.standing)

  const events: BlockEvent[] = [{ type: 'throw', record }]
  let lane = thrown.lane
  let fieldRecords = state.fieldThrows
  if (after.spotClosed) {
    const others = fieldThrows(state, spot, lane, state.fieldThrows)
    lane = others.lane
    events.push(...after.events, ...others.events)
    fieldRecords = [...fieldRecords, ...others.events.flatMap((e) => (e.type === 'field-throw' ? [e.record] : []))]
  }
  if (!after.spot) events.push({ type: 'block-done', total: blockTotal(state, balls) })

  return Object.freeze({
    ...state,
    lanes: state.lanes.map((old, index) => (index === spot.lane ? lane : old)),
    phase: after.spot ? after.spot.phase : 'done',
    spot: after.spot,
    standing: after.standing,
    balls,
    throws: [...state.throws, record],
    fieldThrows: fieldRecords,
    events: [...state.events, ...events],
  })
}

/** Pins the throw felled. */
export function felledBy(record: ThrowRecord): number {
  return countPins(record.standingBefore) - countPins(record.standingAfter)
}

type Balls = BlockState['balls']

function withBall(games: Balls, spot: Spot, felled: number): Balls {
  const frames = games[spot.game - 1] ?? []
  const balls = [...(frames[spot.frame - 1] ?? []), felled]
  return replaceOrAdd(games, spot.game - 1, replaceOrAdd(frames, spot.frame - 1, balls))
}

function replaceOrAdd<T>(list: readonly T[], index: number, value: T): readonly T[] {
  return index < list.length ? list.with(index, value) : [...list, value]
}

interface Following {
  readonly spot: Spot | null
  readonly standing: number
  /** True when the bowler's turn on the lane is over, so that the field bowls. */
  readonly spotClosed: boolean
  readonly events: readonly BlockEvent[]
}

function whatFollows(state: BlockState, spot: Spot, games: Balls, standing: number): Following {
  const laneCount = state.lanes.length
  if (spot.phase === 'practice') {
    const next = spot.frame + 1
    if (next <= state.setup.practiceThrows * laneCount)
      return {
        spot: { ...spot, lane: (next - 1) % laneCount, frame: next },
        standing: FULL_RACK,
        spotClosed: true,
        events: [],
      }
    const first: Spot = { phase: 'game', lane: 0, game: 1, frame: 1, ball: 1 }
    return { spot: first, standing: FULL_RACK, spotClosed: true, events: [{ type: 'practice-done' }] }
  }
  const scoring = state.setup.scoring
  const next = nextBall(scoring, games[spot.game - 1])
  if (next && next.frame === spot.frame)
    return {
      spot: { ...spot, ball: next.ball },
      standing: next.standingReset ? FULL_RACK : standing,
      spotClosed: false,
      events: [],
    }
  const frameDone: BlockEvent = { type: 'frame-done', game: spot.game, frame: spot.frame }
  if (next)
    return {
      spot: { ...spot, lane: (next.frame - 1) % laneCount, frame: next.frame, ball: 1 },
      standing: FULL_RACK,
      spotClosed: true,
      events: [frameDone],
    }
  const events: BlockEvent[] = [
    frameDone,
    { type: 'game-done', game: spot.game, total: tally(scoring, games[spot.game - 1]).total },
  ]
  if (spot.game === state.setup.games) return { spot: null, standing: FULL_RACK, spotClosed: true, events }
  return {
    spot: { phase: 'game', lane: 0, game: spot.game + 1, frame: 1, ball: 1 },
    standing: FULL_RACK,
    spotClosed: true,
    events,
  }
}

/** Sum of the block's games. */
export function blockTotal(state: BlockState, games: Balls = state.balls): number {
  return games.reduce((sum, game) => sum + tally(state.setup.scoring, game).total, 0)
}
