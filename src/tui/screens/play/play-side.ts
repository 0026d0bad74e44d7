import { shortContact } from '../../../scenarios/words/throw-words.js'
import { trimmed } from '../../../scenarios/words/words.js'
import type { BeliefSummary } from '../../../sim/analysis/belief/summary.js'
import type { BlockState } from '../../../sim/world/block/types.js'
import { tally } from '../../../sim/world/scoring/game.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { beliefWords } from '../../parts/belief.js'
import { clipRow } from '../../terminal/fit.js'

const FIELD_ROWS = 12
/** Over a few words on how sure one could be of the oil. */
export const BELIEF_HEADING = 'Your read before it, at best'

interface SideParts {
  readonly block: BlockState
  readonly belief: BeliefSummary | null
}

/** Beside a large lane: the score of each game, and what the others did on this lane. */
export function sidePanelRows({ block, belief }: SideParts, columns: number, theme: Theme): string[] {
  const lane = block.spot?.lane ?? 0
  const games = block.balls.map((game, index) => `Game ${index + 1}  ${tally(block.setup.scoring, game).total}`)
  const others = block.fieldThrows
    .filter((record) => record.lane === lane)
    .slice(-FIELD_ROWS)
    .map(
      ({ bowlerName, observation, hand }) =>
        `${bowlerName}: ${trimmed(observation.breakpointBoard)} at ${trimmed(observation.breakpointFeet)}, ${shortContact(observation.contact, hand)}`,
    )
  const heading = (text: string) => textRow(theme, [text, 'faint'])
  const rows = [
    '',
    ...(belief ? [heading(BELIEF_HEADING), ...beliefWords(belief), ''] : []),
    ...(games.length > 0 ? [heading('Score'), ...games, ''] : []),
    ...(others.length > 0 ? [heading('Others: board at ft, came in'), ...others] : []),
  ]
  return rows.map((row) => clipRow(row, columns))
}
