import type { ScenarioInput } from '../files/schema/scenario.js'
import { demoBag } from './demo-bag.js'
import { fromFoulLine } from './passes.js'

export const flatFortyFive: ScenarioInput = {
  version: 1,
  title: 'The long flat lane at Quillmoor',
  purpose:
    'Little help from the oil: two boards right is not coming back. Watch three others thin the same zone, and move with it.',
  notes:
    '45 feet and only two and a half times as much oil inside as outside. Ball down where the others play, then chase the oil left.',
  lanes: [
    {
      name: 'lane 11',
      passes: [
        fromFoulLine('forward', [1, 39], 223.5, 45),
        fromFoulLine('reverse', [1, 39], 149, 36),
        fromFoulLine('forward', [1, 39], 37, 25, 8),
        fromFoulLine('forward', [8, 32], 65.5, 45),
        fromFoulLine('reverse', [8, 32], 43.5, 30),
        fromFoulLine('forward', [10, 30], 65.5, 44),
        fromFoulLine('reverse', [10, 30], 43.5, 32),
        fromFoulLine('forward', [12, 28], 65.5, 43),
        fromFoulLine('reverse', [12, 28], 43.5, 34),
        fromFoulLine('forward', [14, 26], 65.5, 45),
        fromFoulLine('reverse', [14, 26], 43.5, 36),
        fromFoulLine('forward', [16, 24], 65.5, 44),
        fromFoulLine('reverse', [16, 24], 43.5, 30),
        fromFoulLine('forward', [15, 25], 65.5, 23, 8),
      ],
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
