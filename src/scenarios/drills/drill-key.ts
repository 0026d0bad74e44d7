import { gradeFair } from '../../sim/analysis/grade/fair-grade.js'
import { playerView } from '../../sim/analysis/view/player-view.js'
import { rounded } from '../files/text/json.js'
import { lineWords } from '../words/throw-words.js'
import { askedWords, costWords } from './drill-report.js'
import type { DrillPosition } from './load-drill.js'

/** What a coach holds answers of one position against; nothing of it is in the file the player gets. */
interface KeyEntry {
  readonly asked: string
  readonly lookFor: string
  /** Best from what had been seen; null in practice, which costs nothing. */
  readonly best: string | null
  /** What throwing the line that stands again costs, and within what that cannot be told from the best. */
  readonly standing: { readonly line: string; readonly costPins: number | null; readonly marginPins: number | null }
  /** How far plausible choices lie apart. */
  readonly stakesPins: number | null
}

/** The first throw of a position worked out; those after it depend on what is answered. */
export function keyEntry(position: DrillPosition): KeyEntry {
  const { state, lookFor } = position
  const { bag } = state.setup
  const standing = playerView(state)!.suggestion
  const grade = state.spot?.phase === 'game' ? gradeFair(state, standing) : null
  const priced = grade && grade.kind !== 'practice' ? grade : null
  return {
    asked: askedWords(position),
    lookFor,
    best: priced && lineWords(priced.best, bag),
    standing: {
      line: lineWords(standing, bag),
      costPins: priced && rounded(priced.givenAwayPins, 2),
      marginPins: priced && rounded(priced.tooCloseToCallPins, 2),
    },
    stakesPins: priced && rounded(priced.stakesPins, 2),
  }
}

/** The key as Markdown, which is also what is printed. */
export function keyLines(title: string, entries: readonly KeyEntry[]): string[] {
  return [
    `# Key to ${title}`,
    '',
    'For the coach: what was best from what had been seen. It is not in the drill.',
    '',
    ...entries.flatMap(({ asked, lookFor, best, standing, stakesPins }, place) => [
      `## ${place + 1}. ${asked}`,
      '',
      `- best: ${best ?? 'practice, costs nothing'}`,
      `- the line that stands (${standing.line}): ${costWords(standing.costPins, standing.marginPins)}`,
      ...(stakesPins === null ? [] : [`- at stake among plausible choices: ${stakesPins.toFixed(1)} pins`]),
      `- look for: ${lookFor}`,
      '',
    ]),
  ]
}
