import type { Decision } from '../../sim/world/block/types.js'
import { countPins, FULL_RACK } from '../../sim/world/pins/leaves.js'
import { nextBall } from '../../sim/world/scoring/game.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { locateNowhere } from '../files/text/source-text.js'
import { type BlockRecord, decisionsOf } from './record.js'

/** A throw as a record has it, without a lane: what was decided, what stood before it and what it left. */
export interface KeptThrow {
  readonly decision: Decision
  /** 0 for practice. */
  readonly game: number
  readonly frame: number
  readonly standingBefore: number
  readonly standingAfter: number
}

/** What a record tells of a block without playing it again. */
export interface KeptBlock {
  readonly scenario: Scenario
  readonly throws: readonly KeptThrow[]
  /** Pins felled a ball, by game and frame. */
  readonly balls: readonly (readonly (readonly number[])[])[]
}

/**
 * Reads a block off its record: the pins each throw left say the score whatever the lane was, so that a block of an earlier
 * model, which no longer comes out the same, is not lost.
 * @throws ScenarioError where the scenario inside cannot be read
 */
export function keptBlock(record: BlockRecord, name: string): KeptBlock {
  const scenario = scenarioFrom(record.name, locateNowhere(`${name} scenario`, record.scenario))
  const { practiceThrows, lanes, scoring, games } = scenario.setup
  const practice = practiceThrows * lanes.length
  const balls: number[][][] = []
  const throws: KeptThrow[] = []
  let standing = FULL_RACK
  for (const [index, decision] of decisionsOf(record).entries()) {
    const standingAfter = record.decisions[index].standing
    if (index < practice) {
      throws.push({ decision, game: 0, frame: index + 1, standingBefore: FULL_RACK, standingAfter })
      continue
    }
    let game = balls.at(-1) ?? []
    let next = balls.length === 0 ? null : nextBall(scoring, game)
    if (next === null) {
      if (balls.length === games) break
      game = []
      balls.push(game)
      next = nextBall(scoring, game)
    }
    if (next === null) break
    const standingBefore = next.standingReset ? FULL_RACK : standing
    game[next.frame - 1] ??= []
    game[next.frame - 1].push(countPins(standingBefore) - countPins(standingAfter))
    throws.push({ decision, game: balls.length, frame: next.frame, standingBefore, standingAfter })
    standing = standingAfter
  }
  return { scenario, throws, balls }
}
