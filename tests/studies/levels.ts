import { mean, sampleStandardDeviation } from 'simple-statistics'
import { thumbGame } from '../../src/sim/analysis/explore/bowler-average.js'
import type { BlockSetup } from '../../src/sim/world/block/types.js'
import { LEVELS, type Level, levelProfile, STYLES, type Style } from '../../src/sim/world/bowler/levels.js'
import { aloneOn, FITTED, HELD_OUT, patternOf } from '../facts/lessons/lanes.js'

/**
 * House-like oil of several makes: the level is what a bowler averages over all of them by ordinary play, which is following the
 * misses by rule of thumb from the line one starts with who knows the sheet.
 */
export const HOUSES = [
  FITTED.house,
  HELD_OUT['heavy house 42 ft'],
  HELD_OUT['light house 38 ft'],
  patternOf('long house', { lengthFeet: 44, millilitres: 26, ratio: 8 }),
] as const

const PRACTICE_THROWS = 4

/** Scores of games by rule of thumb, one block each, by turns on every house. */
export function scoresOnHouse(level: Level, style: Style, games: number, first = 0): number[] {
  const setups = HOUSES.map(
    (pattern): BlockSetup => ({ ...aloneOn(pattern, levelProfile(level, style)), practiceThrows: PRACTICE_THROWS }),
  )
  return Array.from({ length: games }, (_, game) => {
    const number = first + game
    return thumbGame(setups[number % setups.length]!, `levels-${number}`)
  })
}

/** What each level averages on house oil: `npm run study levels [GAMES] [all]`; `all` for every style, else the one in the middle. */
export function run(args: readonly string[]): void {
  const games = Number(args[0] ?? 400)
  const styles = args[1] === 'all' ? STYLES : (['tweener'] as const)
  for (const level of LEVELS)
    for (const style of styles) {
      const scores = scoresOnHouse(level, style, games)
      const error = sampleStandardDeviation(scores) / Math.sqrt(games)
      process.stdout.write(
        `${level.padEnd(14)}${style.padEnd(12)}${mean(scores).toFixed(1).padStart(7)} (${error.toFixed(1)})  spread of a game ${sampleStandardDeviation(scores).toFixed(1)}\n`,
      )
    }
}
