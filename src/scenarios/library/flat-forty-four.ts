import type { ScenarioInput } from '../files/schema/scenario.js'
import { demoBag } from './demo-bag.js'
import { oilSheet } from './oil-sheet.js'

export function flatFortyFour(): ScenarioInput {
  return {
    version: 1,
    title: 'The far lane at Quillmoor',
    purpose:
      'Laid nearly alike from edge to edge: nothing brings a wide ball back. Watch where three others turn the ball, and go in as they wear it.',
    notes:
      '44 feet, 27 mL, and hardly more than twice as much oil inside as outside. Start where the others do; they will have used it up by the fifth frame.',
    lanes: [
      {
        name: 'lane 11',
        passes: oilSheet({ lengthFeet: 44, millilitres: 27, ratio: 2.2, crown: [6, 15], edge: 1 }),
      },
    ],
    posted: 'length',
    bag: demoBag,
    bowler: { level: '200', hand: 'right', style: 'tweener' },
    field: [
      { name: 'Ansa', hand: 'right', style: 'tweener', level: '200', ball: 'symmetric-solid', feet: 24, target: 13 },
      { name: 'Brono', hand: 'right', style: 'cranker', level: '180', ball: 'sanded-asymmetric', feet: 28, target: 15 },
      { name: 'Cille', hand: 'left', style: 'stroker', level: '200', ball: 'asymmetric-hybrid', feet: 23, target: 12 },
    ],
    practiceThrows: 4,
    games: 1,
  }
}
