import { decisionWords } from '../../scenarios/plain/words.js'
import { FULL_RACK, leaveName } from '../../sim/pins/leaves.js'
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

const NAME_COLUMNS = 16
const PERCENT_COLUMNS = 6
const WIDEST_SIDE_COLUMNS = 64
const MOST_LEAVES = 5
/** Less than this is not worth a row. */
const LEAST_SHARE = 0.005

/** Another choice on a throw of the block: what many deliveries of it come to, beside those of the choice made. */
export function whatIfScreen(play: PlayState, trial: WhatIfTrial, size: Size, theme: Theme): string[] {
  const { lab, made, tried } = trial
  const { setup, throws } = blockOf(play)
  const record = throws[lab.states.length - 1]!
  const columns = size.columns - 2
  const sideColumns = Math.min(WIDEST_SIDE_COLUMNS, Math.floor(columns / 2))
  // An answer to an earlier choice must not stand beside the one being tried now.
  const current = tried?.decision === lab.decision ? tried : null
  const barColumns = sideColumns - NAME_COLUMNS - PERCENT_COLUMNS - 2
  const side = (title: string, result: WhatIf | null, against: WhatIf | null) =>
    resultRows({ title, result, against, standing: record.standingBefore, barColumns }, theme)
  const body = [
    '',
    textRow(
      theme,
      [` What if: ${placeWords(record.spot, setup.games)}`, 'strong'],
      ['  many deliveries of this bowler on the oil it met', 'faint'],
    ),
    ...indent(decisionPanelRows(lab.decision, setup.bag, lab.field, columns, theme), 1),
    textRow(theme, [lab.notice === '' ? '' : ` ${lab.notice}`, 'loss']),
    ...beside(indent(side('Tried', current, made), 1), sideColumns, side('As chosen', made, null)),
    '',
    clipRow(textRow(theme, [` Chosen was ${decisionWords(record.decision, setup.bag)}`, 'faint']), size.columns - 1),
  ]
  return page(body, contextKeyLine('what-if', size.columns, theme), size)
}

interface Side {
  readonly title: string
  readonly result: WhatIf | null
  readonly against: WhatIf | null
  readonly standing: number
  readonly barColumns: number
}

function resultRows({ title, result, against, standing, barColumns }: Side, theme: Theme): string[] {
  if (!result) {
    return [textRow(theme, [title, 'strong']), textRow(theme, [`Working it out${theme.glyphs.ellipsis}`, 'faint'])]
  }
  const { entryBoards, contacts, leaves } = result
  const entry = entryBoards
    ? `Enters at ${entryBoards[1].toFixed(1)}, mostly ${entryBoards[0].toFixed(1)} to ${entryBoards[2].toFixed(1)}`
    : 'Never stays on the lane'
  const felled = standing === FULL_RACK ? 'strike' : 'spare'
  const row = (name: string, share: number, ink: 'gain' | 'best' | 'older') =>
    barRow(name, share, barColumns, ink, theme)
  return [
    textRow(theme, [title, 'strong'], [` ${worthWords(result, against)}`, 'accent']),
    textRow(theme, entry),
    '',
    ...contacts.filter(({ share }) => share >= LEAST_SHARE).map(({ contact, share }) => row(contact, share, 'gain')),
    '',
    ...leaves
      .slice(0, MOST_LEAVES)
      .map(({ mask, share }) => row(mask === 0 ? felled : leaveName(mask), share, mask === 0 ? 'best' : 'older')),
  ]
}

/** Worth of a choice; against the one made where that is known. */
function worthWords(result: WhatIf, against: WhatIf | null): string {
  const error = against
    ? Math.sqrt(result.standardErrorPins ** 2 + against.standardErrorPins ** 2)
    : result.standardErrorPins
  const pins = against ? result.worthPins - against.worthPins : result.worthPins
  const sign = pins >= 0 ? '+' : ''
  return `${sign}${pins.toFixed(1)} ${against ? 'against it' : 'pins'}, within ${(2 * error).toFixed(1)}`
}

function barRow(name: string, share: number, barColumns: number, ink: 'gain' | 'best' | 'older', theme: Theme): string {
  const bar = theme.glyphs.block.repeat(Math.round(share * barColumns))
  const percent = `${Math.round(share * 100)} %`.padStart(PERCENT_COLUMNS - 1)
  const short = [...name]
    .slice(0, NAME_COLUMNS - 1)
    .join('')
    .padEnd(NAME_COLUMNS)
  return textRow(theme, short, `${percent} `, [bar, ink])
}
