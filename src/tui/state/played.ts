import type { PastBlock } from '../../scenarios/store/past-blocks.js'
import type { Played } from './app-state.js'

/** What was bowled on each lane, by its title; what answers a drill is no block. */
export function playedOf(blocks: readonly PastBlock[]): ReadonlyMap<string, Played> {
  const played = new Map<string, Played>()
  for (const { title, games: scores, kind } of blocks) {
    if (kind === 'drill') continue
    const games = kind === 'block' ? scores : []
    const before = played.get(title)
    const best = Math.max(before?.bestGame ?? -1, ...games)
    played.set(title, { blocks: (before?.blocks ?? 0) + 1, bestGame: best < 0 ? null : best })
  }
  return played
}
