import type { BowlerAverage } from '../../../sim/analysis/explore/bowler-average.js'
import { AVERAGE_GAMES, type Averages } from '../../state/app-state.js'

/** What the bowler in the form averages here, as far as it is simulated. */
export function averageWords(averages: Averages | undefined): string {
  if (!averages?.house) return 'What this bowler averages here is worked out once you leave the form alone.'
  const sport = averages.sport ? averageOn('sport oil', averages.sport) : 'sport oil follows'
  return `Average: ${averageOn('house oil', averages.house)}; ${sport}.`
}

/** The interval holds the true average 19 times of 20. */
function averageOn(oil: string, { games, mean, halfWidth }: BowlerAverage): string {
  const interval = halfWidth === null ? '' : `, give or take ${halfWidth.toFixed(0)}`
  return `${oil} ${mean.toFixed(0)}${interval}${games < AVERAGE_GAMES ? ' so far' : ''}`
}
