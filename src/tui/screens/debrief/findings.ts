import type { OwnFinding } from '../../../scenarios/store/block-notes.js'
import type { Account } from '../../../sim/analysis/debrief/account.js'
import type { Evidence } from '../../../sim/analysis/debrief/findings/tag.js'
import { textRow } from '../../draw/text-row.js'
import type { Ink, Theme } from '../../draw/theme.js'
import { pinsGivenWords, placeWords } from '../../draw/words.js'
import { blockOf, type PlayState, pinsGiven } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

/** A kind of finding as a player would say it. */
export const FINDING_WORDS: Readonly<Record<OwnFinding, string>> = {
  'nothing-wrong': 'Nothing was wrong with the choice',
  'wrong-ball': 'The wrong ball',
  'wrong-target': 'The wrong target',
  'wrong-feet': 'The feet in the wrong place',
  'wrong-line': 'The wrong line, feet and target together',
  'wrong-speed': 'The wrong speed',
  'moved-too-late': 'Moved too late',
  'moved-too-early': 'Moved too early',
  'moved-the-wrong-way': 'Moved the wrong way',
  'move-too-small': 'The right move, too small',
  'move-too-far': 'The right move, too far',
  'blamed-the-lane': 'Blamed the lane for a bad throw',
  'missed-a-change': 'Missed that the lane had changed',
  'skipped-a-probe': 'Skipped a throw that would have taught more',
  'spare-ball': 'The wrong ball for the spare',
  'spare-line': 'The wrong line for the spare',
}

/** What the player said, what we found and what to practise, luck told apart, and cautions once. */
export function findingRows(play: PlayState, account: Account, columns: number, theme: Theme): string[] {
  const width = Math.min(columns, 110)
  const say = (words: string, ink: Ink, lead = '', indent = lead.length) =>
    wrapWords(words, width - indent).map((row, index) =>
      textRow(theme, [(index === 0 ? lead : '').padEnd(indent), 'accent'], [row, ink]),
    )
  const findings = account.tags.flatMap(({ words, evidence, practise }) => [
    ...say(words, 'plain', `${theme.glyphs.pointer} `),
    ...say(`It stands on: ${telling(evidence).map(evidenceWords).join('; ')}.`, 'faint', '', 2),
    ...say(`To practise: ${practise}`, 'strong', '', 2),
    '',
  ])
  const luck = account.luck.flatMap(({ words }) => say(words, 'faint', `${theme.glyphs.dot} `))
  return [
    ...ownRows(play, theme),
    textRow(theme, ['What we found', 'strong'], [', costliest first', 'faint']),
    ...(findings.length > 0 ? findings : [...say('Nothing that cost enough to name.', 'plain', '', 2), '']),
    ...(luck.length > 0 ? [textRow(theme, ['Luck, which grades nothing', 'strong']), ...luck, ''] : []),
    ...(findings.length > 0 ? account.cautions.flatMap((words) => say(words, 'faint')) : []),
  ]
}

/** Each of the player's own findings, beside what the choice was then priced at. */
function ownRows(play: PlayState, theme: Theme): string[] {
  const { throws, setup } = blockOf(play)
  if (play.ownFindings.length === 0) return []
  return [
    textRow(theme, ['What you said', 'strong']),
    ...play.ownFindings.flatMap(({ throwIndex, finding }) => {
      const record = throws[throwIndex]
      if (!record) return []
      const place = placeWords(record.spot, setup.games)
      const gave = pinsGivenWords(pinsGiven(play.grades[throwIndex]))
      return [textRow(theme, `  ${place}: `, [FINDING_WORDS[finding], 'plain'], [` (gave away ${gave})`, 'faint'])]
    }),
    '',
  ]
}

const LEAST_PINS = 0.05

/** Evidence without what comes to nothing, where something else is left to stand on. */
function telling(evidence: readonly Evidence[]): readonly Evidence[] {
  const something = evidence.filter(({ unit, value }) => unit !== 'pins' || value >= LEAST_PINS)
  return something.length > 0 ? something : evidence
}

function evidenceWords({ words, value, unit }: Evidence): string {
  if (unit === 'share') return `${words} ${Math.round(value * 100)} %`
  return `${words} ${unit === 'throws' ? value : value.toFixed(1)} ${unit}`
}
