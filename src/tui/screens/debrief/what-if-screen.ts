import { lineWords, shortContact } from '../../../scenarios/words/throw-words.js'
import { pinsWords, signedPins } from '../../../scenarios/words/words.js'
import type { WhatIf } from '../../../sim/analysis/explore/what-if.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import type { Hand } from '../../../sim/world/bowler/profile.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { pathTrace } from '../../draw/lane-picture.js'
import { beside, indent, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { placeWords } from '../../draw/words.js'
import { decisionPanelRows } from '../../parts/decision-panel.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import { laneSize } from '../../parts/lane-size.js'
import type { WhatIfTrial } from '../../state/debrief-state.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import type { TrainerServices } from '../../state/services.js'
import { clipRow } from '../../terminal/fit.js'
import { lineSamples, onLane } from './debrief-lane.js'

const NAME_COLUMNS = 17
const PERCENT_COLUMNS = 6
const WIDEST_SIDE_COLUMNS = 64
const MOST_LEAVES = 5
const MOST_LEAVES_SMALL = 3
/** From this height on there is room for all of either. */
const ALL_ROWS = 24
const LANE_FRAME_ROWS = 4
const LEAST_LANE_ROWS = 9
const MOST_LANE_ROWS = 24
/** Of everything but the lane, at the most. */
const MOST_WORD_ROWS = 22
const MOST_CONTACTS = 6
/** Less than this is not worth a row. */
const LEAST_SHARE = 0.005

type MeantBoards = TrainerServices['meantBoards']

/** Another choice on a throw of the block: what many deliveries of it come to, beside those of the choice made. */
export function whatIfScreen(
  play: PlayState,
  trial: WhatIfTrial,
  meantBoards: MeantBoards,
  size: Size,
  theme: Theme,
): string[] {
  const { lab, made, tried } = trial
  const { setup, throws } = blockOf(play)
  const record = throws[lab.states.length - 1]!
  const columns = size.columns - 2
  const sideColumns = Math.min(WIDEST_SIDE_COLUMNS, Math.floor(columns / 2))
  // An answer to an earlier choice must not stand beside the one being tried now.
  const current = tried?.decision === lab.decision ? tried : null
  const barColumns = sideColumns - NAME_COLUMNS - PERCENT_COLUMNS - 2
  const side = (title: string, result: WhatIf | null, against: WhatIf | null) =>
    resultRows(
      {
        title,
        result,
        against,
        standing: record.standingBefore,
        hand: setup.bowler.hand,
        barColumns,
        isSmall: size.rows < ALL_ROWS,
      },
      theme,
    )
  const isSame = lab.decision === record.decision
  const title = textRow(
    theme,
    [` What if: ${placeWords(record.spot, setup.games)}`, 'strong'],
    ['  many deliveries, on the oil at this shot', 'faint'],
  )
  const body = [
    ...indent(decisionPanelRows(lab.decision, setup.bag, lab.field, lab.typing, columns, theme), 1),
    textRow(theme, [lab.notice === '' ? '' : ` ${lab.notice}`, 'loss']),
    ...beside(indent(side('Tried', current, isSame ? null : made), 1), sideColumns, side('As chosen', made, null)),
    '',
    clipRow(textRow(theme, [` Chosen was ${lineWords(record.decision, setup.bag)}`, 'faint']), size.columns - 1),
  ]
  const laneRows = Math.min(MOST_LANE_ROWS, size.rows - 1 - MOST_WORD_ROWS - LANE_FRAME_ROWS)
  const lane =
    laneRows >= LEAST_LANE_ROWS ? triedLane(record, lab, meantBoards, laneSize(size).columns, laneRows, theme) : []
  // The lane stands where every screen of a block has it.
  return page(
    [...(lane.length > 0 ? [] : ['']), title, ...lane, ...body],
    contextKeyLine('what-if', size.columns, theme),
    size,
  )
}

/** Both choices as meant, on the oil the throw met, with what the lines are. */
function triedLane(
  record: ThrowRecord,
  lab: PlayState,
  meantBoards: MeantBoards,
  columns: number,
  rows: number,
  theme: Theme,
): string[] {
  const before = blockOf(lab)
  const picture = {
    hand: before.setup.bowler.hand,
    standing: record.standingBefore,
    oil: record.truth.laneBefore.film,
    traces: [
      pathTrace(meantBoards(before, record.decision), 'truth'),
      pathTrace(meantBoards(before, lab.decision), 'best'),
    ],
  }
  const [solid, dashed] = lineSamples(theme)
  return [
    ...lanePicture(picture, columns, rows, theme),
    ` ${onLane(dashed, 'best', theme)} tried  ${onLane(solid, 'truth', theme)} as chosen${textRow(theme, ['  both without a miss', 'faint'])}`,
  ]
}

interface Side {
  readonly title: string
  readonly result: WhatIf | null
  readonly against: WhatIf | null
  readonly standing: number
  readonly hand: Hand
  readonly barColumns: number
  /** Whether rows are scarce. */
  readonly isSmall: boolean
}

function resultRows({ title, result, against, standing, hand, barColumns, isSmall }: Side, theme: Theme): string[] {
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
    textRow(theme, [`${title}: `, 'strong'], [valueWords(result, against, felled), 'accent']),
    textRow(theme, entry),
    '',
    ...contacts
      .filter(({ share }) => share >= LEAST_SHARE)
      .slice(0, MOST_CONTACTS)
      .map(({ contact, share }) => row(shortContact(contact, hand), share, 'gain')),
    '',
    ...leaves
      .slice(0, isSmall ? MOST_LEAVES_SMALL : MOST_LEAVES)
      .map(({ mask, share }) => row(mask === 0 ? felled : leaveName(mask), share, mask === 0 ? 'best' : 'older')),
  ]
}

/** Worth of a choice against the one made; without one, against what its kind of ball is worth on average. */
function valueWords(result: WhatIf, against: WhatIf | null, felled: 'strike' | 'spare'): string {
  if (!against) {
    const pins = pinsWords(Math.abs(result.worthPins))
    if (felled === 'spare') return `${pins} on average`
    return `${pins} ${result.worthPins < 0 ? 'under' : 'over'} average`
  }
  const error = 2 * Math.sqrt(result.standardErrorPins ** 2 + against.standardErrorPins ** 2)
  const pins = result.worthPins - against.worthPins
  const size = pinsWords(Math.abs(pins))
  if (Math.abs(pins) <= error) return `as good, as far as can be told: ${signedPins(pins)}`
  return `${size} ${pins < 0 ? 'worse' : 'better'}, within ${error.toFixed(1)}`
}

/** A leave that is too long for its column goes without what it is called. */
function shortName(name: string, { glyphs }: Theme): string {
  const room = NAME_COLUMNS - 1
  const pins = name.length > room ? name.split(' ')[0]! : name
  return pins.length <= room ? pins : `${pins.slice(0, room - glyphs.ellipsis.length)}${glyphs.ellipsis}`
}

function barRow(name: string, share: number, barColumns: number, ink: 'gain' | 'best' | 'older', theme: Theme): string {
  const bar = theme.glyphs.block.repeat(Math.round(share * barColumns))
  const percent = `${Math.round(share * 100)} %`.padStart(PERCENT_COLUMNS - 1)
  return textRow(theme, shortName(name, theme).padEnd(NAME_COLUMNS), `${percent} `, [bar, ink])
}
