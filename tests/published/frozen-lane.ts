import { carryDistribution, newCarryDistribution } from '../../src/sim/analysis/carry/carry-table.js'
import { spareOddsOf } from '../../src/sim/analysis/value/pricing.js'
import { stream } from '../../src/sim/random.js'
import { countPins } from '../../src/sim/world/pins/leaves.js'
import { tally } from '../../src/sim/world/scoring/game.js'
import { deliver, type MatchedBowler, offsetOf } from './frame-bowling.js'

const chances = newCarryDistribution()

/**
 * Games on a lane frozen in time, the quick way: the keyed delivery of every first ball is rolled as in a block, but its
 * leave is picked from the carry table by the keyed rank, and spares go by the bowler's tabulated odds. One array of
 * frames a game, each the pins of its one or two balls; the tenth frame has its fill balls.
 */
export function frozenGames(bowler: MatchedBowler, seed: string, games: number): number[][][] {
  const oddsOf = spareOddsOf(bowler.profile)
  const leaveOf = (game: number, frame: number, ball: number): number => {
    const key = { seed, game, frame, ball }
    const entry = deliver(bowler, { ...bowler.line, release: 'strike' }, key)
    if (entry.inGutter) return 1023
    carryDistribution(offsetOf(entry), entry.angleRadians, entry.speedMetresPerSecond, chances)
    let left = stream({ ...key, purpose: 'carry-rank' })()
    for (let k = 0; k < chances.count; k++) {
      left -= chances.chance[k]!
      if (left <= 0) return chances.mask[k]!
    }
    return chances.mask[chances.count - 1]!
  }
  const secondBall = (leave: number, game: number, frame: number, ball: number): number => {
    const { conversion, missPins } = oddsOf(leave)
    const luck = stream({ seed, game, frame, ball, purpose: 'study' })
    if (luck() < conversion) return countPins(leave)
    const floor = Math.floor(missPins)
    return Math.min(countPins(leave) - 1, floor + (luck() < missPins - floor ? 1 : 0))
  }
  return Array.from({ length: games }, (_, index) => {
    const game = index + 1
    return Array.from({ length: 10 }, (_, at) => {
      const frame = at + 1
      const pins: number[] = []
      let leave = 0
      for (let ball = 1; ball <= 3; ball++) {
        const fresh = leave === 0
        if (ball > 1 && frame < 10 && (fresh || ball === 3)) break
        if (ball === 3 && pins[0]! !== 10 && pins[0]! + pins[1]! !== 10) break
        if (fresh) {
          leave = leaveOf(game, frame, ball)
          pins.push(10 - countPins(leave))
        } else {
          pins.push(secondBall(leave, game, frame, ball))
          leave = 0
        }
      }
      return pins
    })
  })
}

/** Correlation of a strike with a strike in the frame before, within games. */
export function strikeAutocorrelation(games: readonly (readonly (readonly number[])[])[]): number {
  let pairs = 0
  let both = 0
  let first = 0
  let second = 0
  for (const game of games)
    for (let frame = 1; frame < game.length; frame++) {
      const before = game[frame - 1]![0] === 10 ? 1 : 0
      const now = game[frame]![0] === 10 ? 1 : 0
      pairs++
      first += before
      second += now
      both += before * now
    }
  const p = first / pairs
  const q = second / pairs
  return (both / pairs - p * q) / Math.sqrt(p * (1 - p) * q * (1 - q))
}

export const scoresOf = (games: readonly (readonly (readonly number[])[])[]): number[] =>
  games.map((game) => tally('ten-pin', game).total)
