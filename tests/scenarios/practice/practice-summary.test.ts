import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { keepAnswer, practiceLogPath } from '../../../src/scenarios/practice/practice-log.js'
import { practiceSummary } from '../../../src/scenarios/practice/practice-summary.js'
import { ownProgress } from '../../../src/scenarios/reports/progress/own-progress.js'
import type { Answered } from '../../../src/sim/analysis/practice/learner.js'

const ANSWERED: Answered = {
  id: 'a',
  kind: 'decide',
  skill: 'ball',
  family: { length: 'short', shape: 'flat' },
  mode: 'practice',
  pins: 2,
  blindPins: 2,
  difficulty: 0,
  isSound: false,
  sureShare: 0.9,
  day: 1,
}

describe('practice in progress', () => {
  it('is told by skill once something was answered, and its faults are named', async () => {
    const data = mkdtempSync(join(tmpdir(), 'practice-progress-'))
    expect(await practiceSummary(data, 'Ansa')).toBeNull()
    const path = practiceLogPath(data, 'Ansa')
    for (const skill of ['ball', 'line', 'ball'] as const)
      await keepAnswer(path, {
        player: 'Ansa',
        answered: { ...ANSWERED, skill, pins: skill === 'ball' ? 2 : 0 },
        when: new Date('2026-03-08T12:00:00Z'),
      })
    const progress = await ownProgress(data, 'Ansa')
    expect(progress.practice?.skills.map(({ skill, answers }) => [skill, answers])).toContainEqual(['ball', 2])
    for (const { mean, low, high } of progress.practice!.skills) {
      expect(low!).toBeLessThanOrEqual(mean)
      expect(mean).toBeLessThanOrEqual(high!)
    }
    expect(progress.practice!.calibration).toBeNull()
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(path, '{}\n')
    expect((await ownProgress(data, 'Ansa')).practice).toBeNull()
  })
})
