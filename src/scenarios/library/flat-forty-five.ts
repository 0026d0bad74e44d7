import type { ScenarioInput } from '../schema/scenario.js'
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
        fromFoulLine('forward', [2, 38], 153, 45),
        fromFoulLine('reverse', [2, 38], 76.5, 36),
        fromFoulLine('forward', [2, 38], 38, 25, 8),
        fromFoulLine('forward', [4, 36], 85, 45),
        fromFoulLine('reverse', [4, 36], 56.5, 28),
        fromFoulLine('forward', [7, 33], 85, 44),
        fromFoulLine('reverse', [7, 33], 56.5, 30),
        fromFoulLine('forward', [10, 30], 85, 43),
        fromFoulLine('reverse', [10, 30], 56.5, 32),
        fromFoulLine('forward', [13, 27], 85, 45),
        fromFoulLine('reverse', [13, 27], 56.5, 35),
        fromFoulLine('forward', [15, 25], 85, 44),
        fromFoulLine('reverse', [15, 25], 56.5, 37),
        fromFoulLine('forward', [15, 25], 85, 23, 8),
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
