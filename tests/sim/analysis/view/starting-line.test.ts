import { describe, expect, it } from 'vitest'
import { playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { benchmarkOf } from '../../../../src/sim/analysis/view/starting-line.js'
import { metresToBoard } from '../../../../src/sim/units.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import type { BlockSetup } from '../../../../src/sim/world/block/types.js'
import { levelProfile } from '../../../../src/sim/world/bowler/levels.js'
import { intendedLaunch } from '../../../../src/sim/world/bowler/release.js'
import { layPattern, type OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { bag, plastic, sandedSolid } from '../../world/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../../world/lane/patterns-for-tests.js'
import { setup } from '../grade/block-for-tests.js'

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
