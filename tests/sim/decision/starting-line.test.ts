import { describe, expect, it } from 'vitest'
import { dynamicsOf } from '../../../src/sim/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../src/sim/ball/motion.js'
import { buildStepTable } from '../../../src/sim/ball/step-table.js'
import { beginBlock } from '../../../src/sim/block/begin.js'
import type { BlockSetup } from '../../../src/sim/block/types.js'
import { levelProfile } from '../../../src/sim/bowler/levels.js'
import { intendedLaunch } from '../../../src/sim/bowler/release.js'
import { playerView } from '../../../src/sim/decision/player-view.js'
import { benchmarkOf } from '../../../src/sim/decision/starting-line.js'
import { layPattern, type OilPattern } from '../../../src/sim/lane/pattern.js'
import { metresToBoard } from '../../../src/sim/units.js'
import { bag, plastic, sandedSolid } from '../ball/bag-for-tests.js'
import { setup } from '../fair/block-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../lane/patterns-for-tests.js'

const on = (pattern: OilPattern, level: '180' | '200' | '220' = '200'): BlockSetup => ({
  ...setup,
  bag,
  bowler: levelProfile(level),
  field: [],
  lanes: [{ name: 'lane 1', oil: { kind: 'pattern', pattern } }],
  posted: 'sheet',
})

const outcome = newRollOutcome()

// What a sensible bowler starts with: common practice, no source.
describe('the starting line', () => {
  it.each([houseForty, flatForty, flatFortyFive, shortThirtyFive].map((pattern) => [pattern.name, pattern] as const))(
    'meets the pocket within a board on the sheet of %s, without a miss',
    (_, pattern) => {
      const block = on(pattern)
      const view = playerView(beginBlock(block, 'start'))
      const { ballId, aim } = view!.suggestion
      const film = layPattern(pattern)
      const ball = bag.find(({ id }) => id === ballId)!
      rollBall(film, buildStepTable(film), dynamicsOf(ball), intendedLaunch(block.bowler, aim, 'strike'), outcome)
      expect(Math.abs(metresToBoard(outcome.lateralAtPinsMetres) - 17.5)).toBeLessThan(1)
    },
  )

  it('is thrown with the middle of the bag by strength, the spare ball left out', () => {
    const middle = benchmarkOf(bag)
    expect(middle.cover).not.toBe('plastic')
    expect(middle.id).not.toBe(sandedSolid.id)
    expect(benchmarkOf([plastic])).toBe(plastic)
  })

  it('is the same whatever the seed laid: it knows the sheet only', () => {
    const [one, other] = ['a', 'b'].map((seed) => playerView(beginBlock(on(houseForty), seed))!.suggestion)
    expect(one).toEqual(other)
  })
})
