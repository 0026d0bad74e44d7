import { decisionWords } from '../../scenarios/plain/words.js'
import { leaveName } from '../../sim/pins/leaves.js'
import { beside, indent, page, type Size } from '../draw/layout.js'
import { textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { placeWords } from '../draw/words.js'
import { decisionPanelRows } from '../parts/decision-panel.js'
import { contextKeyLine } from '../parts/key-hints.js'
import type { WhatIfTrial } from '../state/debrief-state.js'
import { blockOf, type PlayState } from '../state/play-state.js'
import { clipRow } from '../terminal/fit.js'
import type { WhatIf } from '../thinking/what-if.js'

const SIDE_COLUMNS = 38
const BAR_COLUMNS = 16
const MOST_LEAVES = 5

/** Another choice on a throw of the block: what many deliveries of it come to, beside those of the choice made. */
export function whatIfScreen(play: PlayState, trial: WhatIfTrial, size: Size, theme: Theme): string[] {
  const { lab, made, tried } = trial
  const { setup, throws } = blockOf(play)
  const record = throws[lab.states.length - 1]!
  const columns = size.columns - 2
  const body = [
    '',
    textRow(
      theme,
      [` What if: ${placeWords(record.spot, setup.games)}`, 'strong'],
      ['  many deliveries of this bowler on the oil it met', 'faint'],
    ),
    ...indent(decisionPanelRows(lab.decision, setup.bag, lab.field, columns, theme), 1),
    textRow(theme, [lab.notice === '' ? '' : ` ${lab.notice}`, 'loss']),
    ...beside(
      indent(resultRows('Tried', tried, made, record.standingBefore, theme), 1),
      SIDE_COLUMNS + 2,
      resultRows('As chosen', made, null, record.standingBefore, theme),
    ),
    '',
    clipRow(textRow(theme, [` Chosen was ${decisionWords(record.decision, setup.bag)}`, 'faint']), size.columns - 1),
  ]
  return page(body, contextKeyLine('what-if', size.columns, theme), size)
}

function resultRows(
  title: string,
  result: WhatIf | null,
  against: WhatIf | null,
  standing: number,
  theme: Theme,
): string[] {
  if (!result)
    return [textRow(theme, [title, 'strong']), textRow(theme, [`Working it out${theme.glyphs.ellipsis}`, 'faint'])]
  const { entryBoards, contacts, leaves } = result
  const entry = entryBoards
    ? `Enters at ${entryBoards[1].toFixed(1)}, mostly ${entryBoards[0].toFixed(1)} to ${entryBoards[2].toFixed(1)}`
    : 'Never stays on the lane'
  const felled = standing === 1023 ? 'strike' : 'spare'
  return [
    textRow(theme, [title, 'strong'], [`  ${worthWords(result, against)}`, 'accent']),
    textRow(theme, entry),
    '',
    ...contacts.slice(0, 6).map(({ contact, share }) => barRow(contact, share, 'gain', theme)),
    '',
    ...leaves
      .slice(0, MOST_LEAVES)
      .map(({ mask, share }) =>
        barRow(mask === 0 ? felled : leaveName(mask), share, mask === 0 ? 'best' : 'older', theme),
      ),
  ]
}

/** Worth of a choice; against the one made where that is known. */
function worthWords(result: WhatIf, against: WhatIf | null): string {
  const error = against
    ? Math.sqrt(result.standardErrorPins ** 2 + against.standardErrorPins ** 2)
    : result.standardErrorPins
  const pins = against ? result.worthPins - against.worthPins : result.worthPins
  const sign = pins >= 0 ? '+' : ''
  return `${sign}${pins.toFixed(1)} pins ${against ? 'against it' : ''} (within ${(2 * error).toFixed(1)})`.replace(
    '  ',
    ' ',
  )
}

function barRow(name: string, share: number, ink: 'gain' | 'best' | 'older', theme: Theme): string {
  const bar = theme.glyphs.block.repeat(Math.round(share * BAR_COLUMNS))
  const percent = `${Math.round(share * 100)} %`.padStart(5)
  return textRow(theme, [...name].slice(0, 14).join('').padEnd(15), `${percent} `, [bar, ink])
}
