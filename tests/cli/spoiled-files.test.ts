import { expect, it } from 'vitest'
import { answersToSpoiled, complaintAbout } from './mutated-files.js'

it('answers 200 spoiled files of every kind in sentences, at once, and writes nothing', async () => {
  const answers = await answersToSpoiled(200, 20)
  expect(answers.map(complaintAbout).filter((one) => one !== null)).toEqual([])
  expect(answers.filter(({ exitCode }) => exitCode !== 0).length).toBeGreaterThan(100)
})
