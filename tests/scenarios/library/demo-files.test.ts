import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { builtInScenario, DEMO_NAMES } from '../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { metresToFeet } from '../../../src/sim/units.js'
import { layPattern, measurePattern } from '../../../src/sim/world/lane/pattern.js'
import { flatFortyFive, houseForty, shortThirtyFive } from '../../sim/world/lane/patterns-for-tests.js'

const fileOf = (name: string): string => `scenarios-demo/${name}.yaml`

describe('the demo files and the built-in scenarios', () => {
  it.each(DEMO_NAMES.map((name) => [name]))('%s: the file holds exactly what is built in', (name) => {
    expect(parse(readFileSync(fileOf(name), 'utf8'))).toEqual(JSON.parse(JSON.stringify(builtInScenario(name))))
  })

  it.each(DEMO_NAMES.map((name) => [name]))('%s: file and name load as the same block', async (name) => {
    const [fromName, fromFile] = [await loadScenario(name), await loadScenario(fileOf(name))]
    expect(fromFile.setup).toEqual(fromName.setup)
    expect(fromFile.name).toBe(name)
  })

  // What the demo's own table of lanes says; the ratio rule is the governing body's, worse side at 22 ft and 2 ft before the end.
  it.each([
    ['house-forty', 40, 24, 10, 'standard'],
    ['flat-forty-five', 45, 26, 2.5, 'sport'],
    ['short-thirty-five', 35, 23, 3, 'sport'],
  ])('%s measures %d ft, %d mL, %d:1, %s', async (name, feet, millilitres, ratio, laneClass) => {
    const { oil } = (await loadScenario(name)).setup.lanes[0]
    if (oil.kind !== 'pattern') throw new Error('a written pattern was expected')
    const measured = measurePattern(layPattern(oil.pattern))
    expect(metresToFeet(measured.lengthMetres)).toBeCloseTo(feet, 6)
    expect(Math.abs(measured.volumeMicrolitres / 1000 - millilitres)).toBeLessThan(0.1)
    expect(Math.abs(measured.ratio / ratio - 1)).toBeLessThan(0.05)
    expect(measured.laneClass).toBe(laneClass)
  })

  // The motion and wear checks are made on these very patterns, so what they find holds for the demo lanes.
  it.each([
    ['house-forty', houseForty],
    ['flat-forty-five', flatFortyFive],
    ['short-thirty-five', shortThirtyFive],
  ])('%s is the oil that the lane is checked on', async (name, checked) => {
    const { oil } = (await loadScenario(name)).setup.lanes[0]
    if (oil.kind !== 'pattern') throw new Error('a written pattern was expected')
    const [demo, expected] = [layPattern(oil.pattern).microns, layPattern(checked).microns]
    expect(demo.every((microns, cell) => Math.abs(microns - expected[cell]) < 1e-9)).toBe(true)
  })
})
