import type { ScenarioInput } from '../files/schema/scenario.js'
import { demoBag } from './demo-bag.js'

type Told = Pick<ScenarioInput, 'title' | 'purpose' | 'lanes'> & Partial<ScenarioInput>

/** A scenario of the club with what most of them have: the six balls, a right-handed tweener of 200 average, four practice throws, one game. */
export function clubBlock(told: Told): ScenarioInput {
  return {
    version: 1,
    posted: 'sheet',
    bag: demoBag,
    bowler: { level: '200', hand: 'right', style: 'tweener' },
    practiceThrows: 4,
    games: 1,
    ...told,
  }
}
