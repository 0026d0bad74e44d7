import { metresPerSecondToMph, radiansPerSecondToRpm, radiansToDegrees } from '../../sim/units.js'
import type { BlockSetup } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { ballWords, trimmed } from '../words/words.js'

/** What a player is told before the first throw. @param seed null where it is not to be told */
export function openingLines(scenario: Scenario, seed: string | null): string[] {
  const { setup, title, purpose } = scenario
  return [
    `${title} (${scenario.name})${seed === null ? '' : `, seed ${seed}`}`,
    ...(purpose ? [purpose] : []),
    '',
    bowlerLine(setup),
    ...fieldLines(setup),
    'The bag:',
    ...bagLines(setup),
    blockLine(setup),
    '',
  ]
}

export function bagLines(setup: BlockSetup): string[] {
  return setup.bag.map((ball, index) => `  ${index + 1} ${ball.id}: ${ballWords(ball)}`)
}

function bowlerLine({ bowler }: BlockSetup): string {
  const { speedMetresPerSecond, spinRadiansPerSecond, rotationRadians, tiltRadians } = bowler.strike
  const figures = [
    `${trimmed(metresPerSecondToMph(speedMetresPerSecond), 1)} mph`,
    `${trimmed(radiansPerSecondToRpm(spinRadiansPerSecond), 0)} rpm`,
    `rotation ${trimmed(radiansToDegrees(rotationRadians), 0)} degrees`,
    `tilt ${trimmed(radiansToDegrees(tiltRadians), 0)} degrees`,
  ]
  return `You bowl for ${bowler.name}, ${bowler.hand}-handed: ${figures.join(', ')}.`
}

function fieldLines({ field }: BlockSetup): string[] {
  if (field.length === 0) return []
  const names = field.map(({ profile, ball }) => `${profile.name} (${profile.hand}-handed, ${ball.name})`)
  return [`Also on these lanes: ${names.join('; ')}.`]
}

function blockLine({ games, practiceThrows, lanes, scoring }: BlockSetup): string {
  const practice = practiceThrows === 0 ? 'No practice' : `${practiceThrows} practice throws on each lane`
  const length = games === 1 ? 'one game' : `${games} games`
  const rules = scoring === 'current-frame' ? ', current-frame scoring' : ''
  return `${practice}, then ${length} on ${lanes.map((lane) => lane.name).join(' and ')}${rules}.`
}
