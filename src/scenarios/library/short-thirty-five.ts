import type { ScenarioInput } from '../schema/scenario.js'
import { demoBag } from './demo-bag.js'
import { fromFoulLine } from './passes.js'

export const shortThirtyFive: ScenarioInput = {
  version: 1,
  title: 'The short lane at Quillmoor',
  purpose: 'Twenty-five feet of dry boards: choose what hooks least, or play where the lane gives it room.',
  notes:
    '35 feet at about three to one. The rule of thumb says to play outside; a calm cover makes the rule easier to keep.',
  lanes: [
    {
      name: 'lane 5',
      passes: [
        fromFoulLine('forward', [2, 38], 121, 35),
        fromFoulLine('reverse', [2, 38], 60.5, 28),
        fromFoulLine('forward', [2, 38], 30, 19, 8),
        fromFoulLine('forward', [5, 35], 74, 35),
        fromFoulLine('reverse', [5, 35], 49.5, 22),
        fromFoulLine('forward', [7, 33], 74, 34),
        fromFoulLine('reverse', [7, 33], 49.5, 23),
        fromFoulLine('forward', [9, 31], 74, 33),
        fromFoulLine('reverse', [9, 31], 49.5, 25),
        fromFoulLine('forward', [11, 29], 74, 35),
        fromFoulLine('reverse', [11, 29], 49.5, 27),
        fromFoulLine('forward', [13, 27], 74, 34),
        fromFoulLine('reverse', [13, 27], 49.5, 29),
        fromFoulLine('forward', [14, 26], 74, 18, 8),
      ],
    },
  ],
  posted: 'sheet',
  bag: demoBag,
  bowler: { level: '200', hand: 'right', style: 'tweener' },
  practiceThrows: 4,
  games: 1,
}
