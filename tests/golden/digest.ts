import { createHash, type Hash } from 'node:crypto'
import type { BlockEvent, BlockState, Observation, Truth } from '../../src/sim/world/block/types.js'
import type { LaneState } from '../../src/sim/world/lane/wear.js'
import { tally } from '../../src/sim/world/scoring/game.js'

const NOT_A_NUMBER = Buffer.from('7ff8000000000000', 'hex')

/** Takes exact bits in; only the many bit patterns that all mean "not a number" count as one. */
function takeNumbers(hash: Hash, values: ArrayLike<number>): void {
  const bytes = Buffer.alloc(8 * values.length)
  for (let index = 0; index < values.length; index++) {
    const value = values[index]!
    if (Number.isNaN(value)) NOT_A_NUMBER.copy(bytes, 8 * index)
    else bytes.writeDoubleBE(value, 8 * index)
  }
  hash.update(bytes)
}

function takeLane(hash: Hash, { film, laidMicrolitres, wipedMicrolitres }: LaneState): void {
  takeNumbers(hash, film.microns)
  takeNumbers(hash, [laidMicrolitres, wipedMicrolitres])
}

function takeObservation(hash: Hash, seen: Observation): void {
  hash.update(seen.contact)
  takeNumbers(hash, [seen.arrowsBoard, seen.breakpointBoard, seen.breakpointFeet, seen.speedMph, seen.standing])
}

function takeTruth(hash: Hash, truth: Truth): void {
  takeNumbers(hash, [
    truth.entryBoard,
    truth.entryAngleRadians,
    truth.entrySpeedMetresPerSecond,
    truth.breakpointBoard,
    truth.breakpointFeet,
    truth.hookStartFeet,
    truth.rollStartFeet,
    truth.leftLaneFeet,
    truth.touched ?? -1,
  ])
  takeNumbers(hash, truth.normals)
  takeNumbers(hash, truth.path)
  takeLane(hash, truth.laneBefore)
}

function takeEvent(hash: Hash, event: BlockEvent): void {
  hash.update(event.type)
  if (event.type === 'throw') {
    const { spot, decision, standingBefore, standingAfter, observation, truth } = event.record
    hash.update(JSON.stringify([spot.phase, decision.ballId, decision.release]))
    takeNumbers(hash, [spot.lane, spot.game, spot.frame, spot.ball, standingBefore, standingAfter])
    takeNumbers(hash, [decision.aim.feetBoard, decision.aim.targetBoard, decision.aim.speedStep])
    takeObservation(hash, observation)
    takeTruth(hash, truth)
  } else if (event.type === 'field-throw') {
    const { lane, bowlerIndex, aim, observation, truth } = event.record
    takeNumbers(hash, [lane, bowlerIndex, aim.feetBoard, aim.targetBoard, aim.speedStep])
    takeObservation(hash, observation)
    takeTruth(hash, truth)
  } else if (event.type === 'game-done' || event.type === 'block-done') takeNumbers(hash, [event.total])
}

/** What a block is held to: a digest of every bit of every event and of the oil left, and a few figures to read. */
export interface GoldenFigures {
  readonly throws: number
  readonly fieldThrows: number
  /** Pins certain so far, game by game. */
  readonly scores: readonly number[]
  readonly sha256: string
}

export function goldenFigures(state: BlockState): GoldenFigures {
  const hash = createHash('sha256')
  for (const event of state.events) takeEvent(hash, event)
  for (const lane of state.lanes) takeLane(hash, lane)
  const scores = state.balls.map((game) => tally(state.setup.scoring, game).total)
  takeNumbers(hash, scores)
  return {
    throws: state.throws.length,
    fieldThrows: state.fieldThrows.length,
    scores,
    sha256: hash.digest('hex'),
  }
}
