import type { ScenarioInput } from '../schema/scenario.js'
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
        fromFoulLine('forward', [2, 38], 68.5, 40),
        fromFoulLine('reverse', [2, 38], 34, 32),
        fromFoulLine('forward', [2, 38], 17, 22, 8),
        fromFoulLine('forward', [8, 32], 103, 40),
        fromFoulLine('reverse', [8, 32], 68.5, 25),
        fromFoulLine('forward', [9, 31], 103, 39),
        fromFoulLine('reverse', [9, 31], 68.5, 27),
        fromFoulLine('forward', [10, 30], 103, 38),
        fromFoulLine('reverse', [10, 30], 68.5, 29),
        fromFoulLine('forward', [11, 29], 103, 40),
        fromFoulLine('reverse', [11, 29], 68.5, 31),
        fromFoulLine('forward', [12, 28], 103, 39),
        fromFoulLine('reverse', [12, 28], 68.5, 33),
        fromFoulLine('forward', [13, 27], 103, 20, 8),
      ],
    },
  ],
  posted: 'sheet',
  bag: demoBag,
  bowler: { level: '200', hand: 'right', style: 'tweener' },
  practiceThrows: 4,
  games: 1,
}
