import type { AppState } from './app-state.js'
import type { PlayState } from './play-state.js'

/** So long after a result no Enter throws: whoever presses it then meant the ball before. */
const AFTER_RESULT_MILLISECONDS = 400
/** An Enter so soon after another comes from a key held down: keyboards repeat ten to forty times a second. */
const HELD_MILLISECONDS = 120

/** Why an Enter pressed now throws nothing and ends nothing; empty where it counts. */
export function whyNotNow({ enterAt }: AppState, { resultAt }: PlayState, now: number): string {
  if (enterAt !== null && now - enterAt < HELD_MILLISECONDS) return 'Enter was held down; let go and press it again.'
  if (resultAt !== null && now - resultAt < AFTER_RESULT_MILLISECONDS)
    return 'The result is just in; press Enter again.'
  return ''
}

/** Whether an Enter would let go of a ball, or end the block. */
export const isAtStake = ({ stage, open, typing }: PlayState): boolean =>
  (stage.kind === 'deciding' && open === 'nothing' && typing === null) ||
  stage.kind === 'leaving' ||
  stage.kind === 'passing' ||
  stage.kind === 'done'
