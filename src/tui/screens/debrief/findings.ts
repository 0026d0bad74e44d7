import type { OwnFinding } from '../../../scenarios/store/block-notes.js'
import { CAUTIONS } from '../../../scenarios/words/cautions.js'
import { FINDING_KIND_WORDS } from '../../../scenarios/words/finding-kinds.js'
import { findingWords } from '../../../scenarios/words/finding-words.js'
import { luckWords } from '../../../scenarios/words/luck-words.js'
import { pinsWords } from '../../../scenarios/words/words.js'
import type { Account } from '../../../sim/analysis/debrief/account.js'
import type { Tag } from '../../../sim/analysis/debrief/findings/tag.js'
import type { BlockState } from '../../../sim/world/block/types.js'
import { textRow } from '../../draw/text-row.js'
import type { Ink, Theme } from '../../draw/theme.js'
import { placeWords } from '../../draw/words.js'
import { blockOf, type PlayState, pinsGiven } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

/** What a player can say of a choice: a kind of finding, or that there is none. */
export const OWN_FINDING_WORDS: Readonly<Record<OwnFinding, string>> = {
  'nothing-wrong': 'Nothing was wrong with the choice',
  ...FINDING_KIND_WORDS,
}

/** The rows of a page of findings, and where each finding starts. */
interface FindingPage {
  readonly rows: readonly string[]
  readonly starts: readonly number[]
}

/**
 * What the player said, what we found and what to practise, luck told apart, and cautions once.
 *
 * @param chosen the finding that Enter plays again; null where none is pointed at
 */
export function findingPage(
  play: PlayState,
  account: Account,
  chosen: number | null,
  columns: number,
  theme: Theme,
): FindingPage {
  const width = Math.min(columns, 110)
  const block = blockOf(play)
  const say = (words: string, ink: Ink, lead = '', indent = lead.length) =>
    words === ''
      ? []
      : wrapWords(words, width - indent).map((row, index) =>
          textRow(theme, [(index === 0 ? lead : '').padEnd(indent), 'accent'], [row, ink]),
        )
  const findings = account.tags.map((tag, at) => {
    const { title, seen, meant, mend, figures, practise } = findingWords(tag, block)
    const isChosen = at === chosen
    return [
      ...say(title, isChosen ? 'accent' : 'strong', `${isChosen ? theme.glyphs.pointer : theme.glyphs.dot} `),
      ...say([seen, meant, mend].filter((words) => words !== '').join(' '), 'plain', '', 2),
      ...say(figures, 'faint', '', 2),
      ...say(`To practise: ${practise}`, 'plain', '', 2),
      ...(isChosen ? say(`Enter plays frame ${againFrame(tag, block)} again.`, 'accent', '', 2) : []),
      '',
    ]
  })
  const { hand } = block.setup.bowler
  const luck = account.luck.flatMap((note) =>
    say(luckWords(note, block.throws, block.setup.games, hand), 'plain', `${theme.glyphs.dot} `),
  )
  const head = [
    ...ownRows(play, theme),
    textRow(theme, ['What we found', 'strong'], [', costliest first', 'faint']),
    ...(findings.length > 0 ? [] : [...say('Nothing that cost enough to name.', 'plain', '', 2), '']),
  ]
  const starts = findings.map((_, at) => head.length + findings.slice(0, at).flat().length)
  return {
    starts,
    rows: [
      ...head,
      ...findings.flat(),
      ...(account.untoldPins >= LEAST_PINS
        ? [
            ...say(
              `${findings.length > 0 ? 'Besides, ' : ''}${pinsWords(account.untoldPins)} in smaller or less certain pieces.`,
              'faint',
              '',
              2,
            ),
            '',
          ]
        : []),
      ...(luck.length > 0
        ? [textRow(theme, ['Luck, which grades nothing', 'strong'], ['; + won, - lost', 'faint']), ...luck, '']
        : []),
      ...(findings.length > 0 ? CAUTIONS.flatMap((words) => say(words, 'faint')) : []),
    ],
  }
}

const againFrame = ({ at }: Tag, { throws }: BlockState): number => throws[at]!.spot.frame

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
      const gave = pinsWords(pinsGiven(play.grades[throwIndex]))
      return [textRow(theme, `  ${place}: `, [OWN_FINDING_WORDS[finding], 'plain'], [` (cost ${gave})`, 'faint'])]
    }),
    '',
  ]
}

const LEAST_PINS = 0.05
