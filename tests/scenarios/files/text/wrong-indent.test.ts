import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { scenarioFrom } from '../../../../src/scenarios/files/scenario/scenario.js'
import { ScenarioError } from '../../../../src/scenarios/files/text/scenario-error.js'
import { readSourceText } from '../../../../src/scenarios/files/text/source-text.js'

function faultsOf(text: string): readonly string[] {
  try {
    scenarioFrom('lane', readSourceText('lane.yaml', text))
    return []
  } catch (fault) {
    if (!(fault instanceof ScenarioError)) throw fault
    return fault.sentences
  }
}

it('tells one fault for one line indented wrongly, whichever it is and however far', () => {
  const lines = readFileSync('scenarios-demo/short-thirty-five.yaml', 'utf8').split('\n')
  const several: string[] = []
  let near = 0
  let tried = 0
  for (const [at, line] of lines.entries()) {
    const bare = line.trimStart()
    if (bare === '' || bare.startsWith('#')) continue
    const by = [-2, -1, 1, 2][at % 4]!
    const indent = line.length - bare.length
    if (indent + by < 0) continue
    const faults = faultsOf(lines.with(at, ' '.repeat(indent + by) + bare).join('\n'))
    tried++
    if (faults.length !== 1) several.push(`${at + 1} by ${by}: ${faults.length}`)
    const told = Number(/^lane\.yaml:(\d+):/.exec(faults[0] ?? '')?.[1])
    if (Math.abs(told - (at + 1)) <= 3) near++
  }
  expect(several).toEqual([])
  expect(tried).toBeGreaterThan(50)
  expect(near / tried).toBeGreaterThan(0.9)
})
