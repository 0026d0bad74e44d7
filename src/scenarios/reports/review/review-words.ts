import { basename } from 'node:path'
import { shellQuoted } from '../../words/shell-quoted.js'
import { counted } from '../../words/words.js'
import type { Period } from './period.js'
import type { PlayerReport } from './player-report.js'
import type { SuggestedDrill } from './suggested-drill.js'

/** Which blocks a review is of; empty where it is of all. */
export function periodWords({ since, until, compare }: Period): string {
  const bounds = [...(since === undefined ? [] : [`from ${since}`]), ...(until === undefined ? [] : [`up to ${until}`])]
  const told = bounds.length === 0 ? [] : [`Blocks ${bounds.join(' ')}.`]
  const held = compare === undefined ? [] : [`Blocks from ${compare} on are held against those before.`]
  return [...told, ...held].join(' ')
}

/** How two periods differ, with the interval of that. */
export function changeWords({ day, before, after, pins, low, high }: NonNullable<PlayerReport['change']>): string {
  if (pins === null) return `Nothing to compare: ${before.blocks} blocks before ${day}, ${after.blocks} from then on.`
  const figures = `before ${day} ${before.mean.toFixed(1)} pins a game over ${counted(before.blocks, 'block')}, from then on ${after.mean.toFixed(1)} over ${counted(after.blocks, 'block')}`
  return `Change: ${figures}; ${differenceWords({ pins, low, high })}.`
}

interface Difference {
  readonly pins: number
  readonly low: number | null
  readonly high: number | null
}

/** A difference of costs: what it is, and whether it could as well be none. */
export function differenceWords({ pins, low, high }: Difference): string {
  const size = `${Math.abs(pins).toFixed(1)} ${pins <= 0 ? 'less' : 'more'}`
  if (low === null || high === null) return `${size}; an interval needs two blocks on each side`
  const interval = `95 % interval ${signed(low)} to ${signed(high)}`
  return low <= 0 && high >= 0 ? `${size} (${interval}: it may be no change at all)` : `${size} (${interval})`
}

const signed = (pins: number): string => `${pins > 0 ? '+' : pins < 0 ? '−' : ''}${Math.abs(pins).toFixed(1)}`

/** Which block a finding is of; its own words say frames and cost. */
export function placeWords({ record, day }: PlayerReport['findings'][number]): string {
  return `${basename(record, '.json')}${day === null ? '' : `, ${day}`}`
}

/** What to practise next, and the commands that open a drill of it, or make one of the player's own moments. */
export function drillSentence({ skill, pinsPerGame, practise, library, record }: SuggestedDrill): string {
  const ready = library === null ? '' : ` Ready: dryboard drill ${library}.`
  return `Suggested drill: ${skill}, which cost ${pinsPerGame.toFixed(1)} pins a game. ${practise}${ready} Of its own moments: dryboard drill new ${shellQuoted(record)} > drill.yaml`
}
