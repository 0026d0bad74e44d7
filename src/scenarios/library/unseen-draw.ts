import type { ScenarioInput } from '../files/schema/scenario.js'
import { demoBag } from './demo-bag.js'

export const unseenDraw: ScenarioInput = {
  version: 1,
  title: 'Unseen oil at Quillmoor',
  purpose: 'Nobody tells you anything: two lanes, each with oil of its own, drawn by the seed. Read them in practice.',
  notes: 'Another seed is another pair of lanes. The same seed gives everyone the same oil and the same luck.',
  lanes: [
    {
      name: 'lane 7',
      drawn: { lengthFeet: [34, 47], volumeMillilitres: [19, 30], ratio: [1.8, 10], symmetric: 'either' },
    },
    {
      name: 'lane 8',
      drawn: { lengthFeet: [34, 47], volumeMillilitres: [19, 30], ratio: [1.8, 10], symmetric: 'either' },
    },
  ],
  posted: 'nothing',
  bag: demoBag,
  bowler: { level: '200', hand: 'right', style: 'tweener' },
  practiceThrows: 4,
  games: 1,
}
