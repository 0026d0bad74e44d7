import { expect, it } from 'vitest'
import { drillNamed } from '../../../../src/scenarios/practice/library-drill.js'
import { suggestedDrill } from '../../../../src/scenarios/reports/review/suggested-drill.js'
import { SKILLS } from '../../../../src/sim/analysis/debrief/findings/skills.js'

it('suggests drills that the library has, for what costs most', async () => {
  const named = SKILLS.map((skill) => {
    const finding = { skill, record: 'a.json', pins: 2, practise: 'Move less.' }
    return suggestedDrill([{ skill, mean: 2 }], [finding])!.library
  })
  expect(named.filter((name) => name !== null)).toHaveLength(6)
  // A name of the library is found without opening its positions: only one that is not there is refused.
  await expect(drillNamed('library:nothing')).rejects.toThrow(/there is no such drill; the library has/)
  const told = await drillNamed('library:nothing').catch((fault: Error) => fault.message)
  for (const name of named) {
    if (name !== null) expect(told).toContain(name === 'library:hand-or-lane' ? 'library:throw-or-lane' : name)
  }
  expect(suggestedDrill([{ skill: 'ball', mean: 0.2 }], [])).toBeNull()
})
