import { OWN_FINDINGS } from '../../../scenarios/store/block-notes.js'
import { fellWords, lineWords, seenParts } from '../../../scenarios/words/throw-words.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import { tally } from '../../../sim/world/scoring/game.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { placeWords } from '../../draw/words.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { menuRows, menuWidth } from '../../parts/menu.js'
import { scoreSheetRows } from '../../parts/score-sheet.js'
import type { OwnAccount } from '../../state/debrief-state.js'
import { blockOf, framesOf, isWeighed, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'
import { OWN_FINDING_WORDS } from './findings.js'

const WAIT_COLUMNS = 40

/** Before our account the player gives theirs: what was it with the dearest choices? */
export function ownAccountScreen(play: PlayState, own: OwnAccount, size: Size, theme: Theme): string[] {
  const index = own.throws[own.at]
  const head = [
    '',
    textRow(
      theme,
      [' Your account first', 'strong'],
      ['  What do you think it was? Ours comes after; Esc skips it', 'faint'],
    ),
    '',
  ]
  const body = index === undefined ? waitingRows(play, theme) : askingRows(play, own, index, size, theme)
  return page([...head, ...body], contextKeyLine('own-account', size.columns, theme, { back: 'skip' }), size)
}

function waitingRows(play: PlayState, theme: Theme): string[] {
  const done = play.grades.filter((_, index) => isWeighed(play, index)).length
  const of = play.grades.length
  const { block, dot } = theme.glyphs
  const filled = Math.round((done / Math.max(1, of)) * WAIT_COLUMNS)
  return [
    textRow(theme, ` Weighing your choices: ${done} of ${of}${theme.glyphs.ellipsis}`),
    textRow(theme, ' ', [block.repeat(filled), 'gain'], [dot.repeat(WAIT_COLUMNS - filled), 'faint']),
    '',
    ...blockOf(play).balls.flatMap((game) => [
      ...scoreSheetRows(tally(blockOf(play).setup.scoring, game), null, theme, framesOf(play)),
      '',
    ]),
    textRow(theme, [' Meanwhile think back: which three choices would you make differently?', 'faint']),
  ]
}

function askingRows(play: PlayState, own: OwnAccount, index: number, size: Size, theme: Theme): string[] {
  const { throws, setup } = blockOf(play)
  const record = throws[index]!
  const menu = menuRows(
    OWN_FINDINGS.map((finding) => OWN_FINDING_WORDS[finding]),
    own.cursor,
    theme,
  ).map((row) => ` ${row}`)
  const menuColumns = menuWidth(menu)
  const columns = Math.min(56, size.columns - menuColumns - 2)
  // A choice is judged by how balls reacted at full racks, not by the spare that came in between.
  const before = throws
    .slice(0, index)
    .findLast((one) => one.spot.lane === record.spot.lane && one.standingBefore === FULL_RACK)
  const about = [
    textRow(theme, [placeWords(record.spot, setup.games), 'strong']),
    ...wrapWords(lineWords(record.decision, setup.bag), columns),
    ...(before
      ? [
          '',
          ...wrapWords(`Seen before it: ${seenParts(before, setup.bowler.hand).join(', ')}.`, columns).map((row) =>
            textRow(theme, [row, 'faint']),
          ),
        ]
      : []),
    '',
    ...wrapWords(
      `Seen of it: ${seenParts(record, setup.bowler.hand).join(', ')}. ${fellWords(record, setup.bowler.hand)}`,
      columns,
    ).map((row) => textRow(theme, [row, 'faint'])),
  ]
  const count = own.throws.length
  const which =
    count === 1 ? 'The costliest choice of the block' : `The costliest choices of the block, ${own.at + 1} of ${count}`
  return [textRow(theme, [` ${which}. What was it?`, 'accent']), '', ...beside(menu, menuColumns, about)]
}
