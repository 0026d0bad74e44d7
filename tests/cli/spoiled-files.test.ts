import { expect, it } from 'vitest'
import { answersToArguments } from './answers-to-arguments.js'
import { answersToSpoiled, complaintAbout } from './mutated-files.js'

it('answers 200 spoiled files of every kind in sentences, at once, and writes nothing', async () => {
  const answers = await answersToSpoiled(200, 20)
  expect(answers.map(complaintAbout).filter((one) => one !== null)).toEqual([])
  expect(answers.filter(({ exitCode }) => exitCode !== 0).length).toBeGreaterThan(100)
})

it('answers 200 spoiled argument lists with a code that says what was wrong, and no trace', async () => {
  const answers = await answersToArguments(200, 21)
  expect(answers.flatMap(({ argv, complaint }) => (complaint === null ? [] : [{ argv, complaint }]))).toEqual([])
})
