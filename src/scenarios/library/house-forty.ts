import type { ScenarioInput } from '../files/schema/scenario.js'
import { demoBag } from './demo-bag.js'
import { fromFoulLine } from './passes.js'

export const houseForty: ScenarioInput = {
  version: 1,
  title: 'House oil at Quillmoor',
  purpose:
    'Find the wall between the wet middle and the dry outside, and keep off the strongest ball until you need it.',
  notes:
    'Ten times as much oil inside as outside, 40 feet. A miss to either side comes back; too strong a ball burns up early.',
  lanes: [
    {
      name: 'lane 3',
      passes: [
        fromFoulLine('forward', [2, 38], 73.5, 40),
        fromFoulLine('reverse', [2, 38], 37, 32),
        fromFoulLine('forward', [2, 38], 18.5, 22, 8),
        fromFoulLine('forward', [9, 31], 111, 40),
        fromFoulLine('reverse', [9, 31], 74, 25),
        fromFoulLine('forward', [10, 30], 111, 39),
        fromFoulLine('reverse', [10, 30], 74, 27),
        fromFoulLine('forward', [11, 29], 111, 38),
        fromFoulLine('reverse', [11, 29], 74, 29),
        fromFoulLine('forward', [12, 28], 111, 40),
        fromFoulLine('reverse', [12, 28], 74, 31),
        fromFoulLine('forward', [13, 27], 111, 39),
        fromFoulLine('reverse', [13, 27], 74, 33),
        fromFoulLine('forward', [13, 27], 111, 20, 8),
      ],
    },
  ],
  posted: 'sheet',
  bag: demoBag,
  bowler: { level: '200', hand: 'right', style: 'tweener' },
  practiceThrows: 4,
  games: 1,
}
