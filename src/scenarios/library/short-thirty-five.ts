import type { ScenarioInput } from '../files/schema/scenario.js'
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
        fromFoulLine('forward', [2, 38], 172, 35),
        fromFoulLine('reverse', [2, 38], 114.5, 28),
        fromFoulLine('forward', [2, 38], 28.5, 19, 8),
        fromFoulLine('forward', [8, 32], 81, 35),
        fromFoulLine('reverse', [8, 32], 54, 23),
        fromFoulLine('forward', [10, 30], 81, 34),
        fromFoulLine('reverse', [10, 30], 54, 25),
        fromFoulLine('forward', [12, 28], 81, 33),
        fromFoulLine('reverse', [12, 28], 54, 27),
        fromFoulLine('forward', [14, 26], 81, 35),
        fromFoulLine('reverse', [14, 26], 54, 28),
        fromFoulLine('forward', [14, 26], 81, 18, 8),
      ],
    },
  ],
  posted: 'sheet',
  bag: demoBag,
  bowler: { level: '200', hand: 'right', style: 'tweener' },
  practiceThrows: 4,
  games: 1,
}
