import { levelProfile } from '../../../src/sim/world/bowler/levels.js'
import type { OilPattern } from '../../../src/sim/world/lane/pattern.js'
import { bag } from '../../sim/world/ball/bag-for-tests.js'
import { aloneOn, freshOn } from './lanes.js'
import { pinsAGame, search, wornBy } from './measures.js'

const FOUR = [
  levelProfile('elite', 'cranker'),
  levelProfile('elite', 'tweener'),
  levelProfile('220', 'two-handed'),
  levelProfile('220', 'stroker'),
]
const ROUND = 20

/**
 * What the first of four bowlers gains with the best line, and with each ball's best, after so many throws of all four, who each
 * take their best line of the four strongest balls anew every twenty throws; pins a game against fresh oil.
 */
export function gainsInTraffic(pattern: OilPattern, seed: string, at: readonly number[]) {
  const setups = FOUR.map((bowler) => aloneOn(pattern, bowler, bag.slice(0, 5)))
  let lane = freshOn(pattern)
  const fresh = search(setups[0]!, lane)
  let thrown = 0
  return at.map((throws) => {
    while (thrown < throws) {
      const from = lane
      for (const [index, setup] of setups.entries())
        lane = wornBy(setup, lane, search(setup, from).best, `${seed} ${index}`, (thrown + ROUND) / 4, thrown / 4 + 1)
      thrown += ROUND
    }
    const found = search(setups[0]!, lane)
    return {
      throws,
      best: pinsAGame(found.best.worth - fresh.best.worth),
      perBall: found.perBall.map((line) => pinsAGame(line.worth - fresh.best.worth)),
      bestBall: found.best.ballIndex,
      firstLine: pinsAGame(found.worthOf(fresh.best.ballIndex, fresh.best.aim) - fresh.best.worth),
    }
  })
}
