import type { LanePicture } from '../../draw/lane-picture.js'
import { page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import { menuRows } from '../../parts/menu.js'
import { type AppState, type HomeEntry, homeEntries } from '../../state/app-state.js'

const PLAIN_LABELS: Readonly<Record<Exclude<HomeEntry, 'continue'>, string>> = {
  practice: 'Practice',
  new: 'New block',
  debrief: 'Look back at the last block',
  past: 'Past blocks',
  kit: 'Bag and bowler',
  settings: 'Settings',
  keys: 'Keys and the guided first frame',
  quit: 'Quit',
}

const LANE_FRAME_ROWS = 3
const LEAST_LANE_ROWS = 8

/** The first screen: what there is to do, and a lane with its oil to look at once it has been worked out. */
export function homeScreen(
  state: AppState,
  cursor: number,
  picture: LanePicture | null,
  size: Size,
  theme: Theme,
): string[] {
  const labels = homeEntries(state).map((entry) => (entry === 'continue' ? continueLabel(state) : PLAIN_LABELS[entry]))
  const head = [
    '',
    textRow(
      theme,
      [' Dryboard', 'strong'],
      ['  Read the oil, decide, throw, and see what the decision was worth.', 'faint'],
    ),
    '',
  ]
  const menu = menuRows(labels, cursor, theme).map((row) => ` ${row}`)
  const notice = state.notice === '' ? '' : textRow(theme, [` ${state.notice}`, 'loss'])
  const room = size.rows - 1 - head.length - menu.length - 1
  const laneRows = Math.min(20, room - LANE_FRAME_ROWS)
  const lane =
    picture && laneRows >= LEAST_LANE_ROWS ? lanePicture(picture, Math.min(size.columns - 1, 130), laneRows, theme) : []
  return page([...head, ...menu, notice, ...lane], contextKeyLine('home', size.columns, theme), size)
}

function continueLabel({ kept }: AppState): string {
  const { title, throws } = kept[0]!
  return `Resume ${title}, ${throws === 1 ? '1 throw' : `${throws} throws`} in`
}
