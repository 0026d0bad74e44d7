import type { ProgressReport } from '../../src/scenarios/reports/progress/progress-report.js'
import { SKILLS } from '../../src/sim/analysis/debrief/findings/skills.js'

const estimate = (mean: number) => ({ mean, low: Math.max(0, mean - 2.4), high: mean + 2.4, blocks: 6 })
const skills = SKILLS.map((skill, place) => ({ skill, ...estimate(place < 6 ? 4.2 - 0.7 * place : 0) }))

/** Somebody's progress made up for the screens' sake. @param told stands in what a stranger may have written */
export const madeUpProgress = (told = ''): ProgressReport => ({
  blocks: 24,
  unpriced: 2,
  choices: 412,
  first: '2026-01-04',
  last: '2026-11-20',
  cost: estimate(12.6),
  skills,
  stretches: Array.from({ length: 11 }, (_, month) => ({
    name: `2026-${String(month + 1).padStart(2, '0')}`,
    blocks: 2,
    choices: 40,
    cost: estimate(15 - month),
    skills,
  })),
  calibration: {
    count: 40,
    right: 22,
    claimed: 28.5,
    brier: 0.247,
    byConfidence: [
      { sureShare: 0.6, count: 18, right: 9 },
      { sureShare: 0.9, count: 22, right: 13 },
    ],
  },
  drills: { positions: 12, choices: 14, asGoodAsTheBest: 9, costPins: 7.3 },
  shortBlocks: {
    blocks: 3,
    choices: 31,
    cost: estimate(8.4),
    each: [
      { day: '2026-09-12', perGame: 11.2 },
      { day: '2026-10-03', perGame: 8.1 },
      { day: '2026-11-20', perGame: 6.0 },
    ],
  },
  lanes: Array.from({ length: 9 }, (_, place) => ({
    title: `The lane of a long name at Quillmoor, number ${place + 1}${told}`,
    scenario: 'house-forty',
    blocks: 9 - place,
    bestGame: place % 3 === 2 ? null : 211 - place,
    cost: estimate(9 + place),
  })),
  practice: {
    skills: [
      { skill: 'reading the oil', answers: 31, mean: 4.2, low: 2.9, high: 5.5 },
      { skill: 'size of moves', answers: 24, mean: 2.1, low: 1.2, high: 3 },
    ],
    calibration: [
      { sureShare: 0.6, answers: 21, soundShare: 0.67 },
      { sureShare: 0.9, answers: 34, soundShare: 0.85 },
    ],
  },
})
