import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { withBallsTaken } from '../../../src/scenarios/files/scenario/take-balls.js'
import { BUILT_IN_HARDNESS } from '../../../src/scenarios/library/hardness-data.js'
import { builtInNames } from '../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { oilSheet } from '../../../src/scenarios/library/oil-sheet.js'
import { laneSummaries } from '../../../src/scenarios/library/scenario-summary.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { feetToMetres, metresToFeet } from '../../../src/sim/units.js'
import { filmVolumeMicrolitres } from '../../../src/sim/world/lane/film.js'
import { layPattern, measurePattern } from '../../../src/sim/world/lane/pattern.js'
import { FULL_RACK } from '../../../src/sim/world/pins/leaves.js'

describe('the built-in library', () => {
  // Lengths and volumes met in play (published lane pages): 32 to 48 ft, 18 to 32 mL, 1.5:1 to 12:1.
  it.each(builtInNames().map((name) => [name]))(
    '%s lies within what is met in play, says its purpose and can be begun',
    async (name) => {
      const scenario = await loadScenario(name)
      for (const { lengthFeet, volumeMillilitres, ratio } of laneSummaries(scenario, '1')) {
        expect(lengthFeet).toBeGreaterThanOrEqual(32)
        expect(lengthFeet).toBeLessThanOrEqual(48)
        expect(volumeMillilitres).toBeGreaterThanOrEqual(18)
        expect(volumeMillilitres).toBeLessThanOrEqual(32)
        expect(ratio).toBeGreaterThanOrEqual(1.5)
        expect(ratio).toBeLessThanOrEqual(12)
      }
      expect(scenario.purpose.length).toBeGreaterThan(40)
    },
  )

  it('knows how hard each is', () => {
    expect(Object.keys(BUILT_IN_HARDNESS)).toEqual(builtInNames())
  })

  it('has no two of one title, both hands, all lengths and all classes', async () => {
    const all = await Promise.all(builtInNames().map(loadScenario))
    expect(all.length).toBeGreaterThanOrEqual(24)
    expect(new Set(all.map(({ title }) => title)).size).toBe(all.length)
    const lanes = all.flatMap((one) => laneSummaries(one, '1'))
    expect(new Set(lanes.map(({ laneClass }) => laneClass))).toEqual(new Set(['sport', 'challenge', 'standard']))
    expect(all.filter(({ data }) => data.bowler.hand === 'left').length).toBeGreaterThan(2)
    expect(all.filter(({ data }) => data.fieldFramesBefore > 0).length).toBeGreaterThan(4)
  })

  // The ratio rule is the governing body's: middle five boards over boards 3-7, worse side, at 22 ft and 2 ft before the end.
  it('makes oil that measures as it was wanted', () => {
    for (const wanted of [
      { lengthFeet: 37, millilitres: 21.5, ratio: 2.4, crown: [7, 14] as const },
      { lengthFeet: 46, millilitres: 29, ratio: 1.6, crown: [6, 16] as const, edge: 1 },
      { lengthFeet: 41, millilitres: 24, ratio: 9 },
      { lengthFeet: 41, millilitres: 24, ratio: 5, lean: 2, crown: [9, 14] as const },
    ]) {
      const passes = oilSheet(wanted).map(
        ({ direction, microlitresPerBoard, boards, fromFeet, toFeet, taperFeet = 0 }) => ({
          direction,
          microlitresPerBoard,
          fromBoard: boards[0],
          toBoard: boards[1],
          fromMetres: feetToMetres(fromFeet),
          toMetres: feetToMetres(toFeet),
          taperMetres: feetToMetres(taperFeet),
        }),
      )
      const measured = measurePattern(layPattern({ name: 'wanted', passes }))
      expect(metresToFeet(measured.lengthMetres)).toBeCloseTo(wanted.lengthFeet, 6)
      expect(Math.abs(measured.volumeMicrolitres / 1000 - wanted.millilitres)).toBeLessThan(0.05)
      expect(Math.abs(measured.ratio / wanted.ratio - 1)).toBeLessThan(0.01)
    }
  })
})

describe('a field that has bowled before', () => {
  it('has worn the lanes, was watched, and leaves no trace on the sheet', async () => {
    const worn = await loadScenario('short-worn')
    const { fieldFramesBefore: _frames, ...setup } = worn.setup
    const before = beginScenario({ ...worn, setup }, 'seed')
    const after = beginScenario(worn, 'seed')
    const missing = filmVolumeMicrolitres(before.lanes[0].film) - filmVolumeMicrolitres(after.lanes[0].film)
    expect(missing).toBeGreaterThan(100)
    // What is not on the lane went off with the balls: oil is conserved.
    expect(Math.abs(after.lanes[0].wipedMicrolitres - missing)).toBeLessThan(1e-6 * after.lanes[0].laidMicrolitres)
    expect(after.fieldThrows).toHaveLength(20)
    expect(after.events).toHaveLength(20)
    expect([after.spot?.frame, after.throws.length, after.standing]).toEqual([1, 0, FULL_RACK])
    expect(playerView(after)?.posted).toEqual(playerView(before)?.posted)
    expect(beginScenario(await loadScenario('short-worn'), 'seed').lanes[0].film).toEqual(after.lanes[0].film)
  })
})

describe('balls taken along', () => {
  it('are as many as the scenario says, and the field keeps its own', async () => {
    const scenario = await loadScenario('three-of-six')
    const taken = withBallsTaken(scenario, ['1', 'weak-pearl', '5'])
    expect(taken.setup.bag.map(({ id }) => id)).toEqual(['sanded-asymmetric', 'weak-pearl', 'urethane'])
    expect(() => withBallsTaken(scenario, ['1', '1', '2'])).toThrow(
      /found 2 balls; allowed are 3 of sanded-asymmetric, /,
    )
    expect(() => withBallsTaken(scenario, undefined)).toThrow(/say which balls you take; allowed are 3 of/)
    expect(() => withBallsTaken(scenario, ['1', '2', 'marble'])).toThrow(/no ball "marble"/)
    const house = await loadScenario('house-forty')
    expect(withBallsTaken(house, undefined)).toBe(house)
    expect(() => withBallsTaken(house, ['1'])).toThrow(/nothing to take/)
  })
})
