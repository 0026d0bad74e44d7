import type { Estimate } from './estimate.js'
import type { PlayerReport } from './player-report.js'

/** A choice for a column: ball, slide and target, and what is not usual. */
export function choiceWords({ ball, feet, target, speed, release }: PlayerReport['dearest'][number]['thrown']): string {
  return `${ball} ${feet}/${target}${speed === 'usual' ? '' : ` ${speed}`}${release === 'spare' ? ' spare' : ''}`
}

/** A mean with its interval, where there is one. */
export function range({ mean, low, high }: Pick<Estimate, 'mean' | 'low' | 'high'>): string {
  return low === null || high === null
    ? mean.toFixed(1)
    : `${mean.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`
}

/** Text for a cell of a Markdown table. */
export const cell = (text: string): string => text.replaceAll('|', '/')
