import type { LanePicture } from '../../draw/lane-picture.js'
import { beside, page, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import { laneSize } from '../../parts/lane-size.js'
import { menuRows, menuWidth } from '../../parts/menu.js'
import type { AppState } from '../../state/app-state.js'
import { type HomeEntry, homeEntries } from '../../state/home-entries.js'
import { clipRow } from '../../terminal/fit.js'
import { memoryRows } from './home-memory.js'

const PLAIN_LABELS: Readonly<Record<Exclude<HomeEntry, 'continue' | 'drill' | 'today'>, string>> = {
  practice: 'Practice',
  new: 'New block',
  debrief: 'Look back at the last block',
  past: 'Past blocks',
  progress: 'Progress',
  kit: 'Bag and bowler',
  settings: 'Settings',
  keys: 'Keys and the guided first frame',
  quit: 'Quit',
}

const LANE_FRAME_ROWS = 3
/** What is remembered stands beside the menu, as far left as the longest entry allows. */
const MEMORY_COLUMNS = 42
const MENU_COLUMNS = 38
const MARGIN_COLUMNS = 4
const LEAST_LANE_ROWS = 8

/** The first screen: what there is to do, and a lane with its oil to look at once it has been worked out. */
export function homeScreen(
  state: AppState,
  cursor: number,
  picture: LanePicture | null,
  size: Size,
  theme: Theme,
): string[] {
  const room = size.columns - MARGIN_COLUMNS - (state.remembered ? MEMORY_COLUMNS : 0)
  const labels = homeEntries(state).map((entry) => clipRow(labelOf(entry, state, room), room))
  const head = [
    '',
    textRow(
      theme,
      [' Dryboard', 'strong'],
      ['  Read the oil, decide, throw, and see what the decision was worth.', 'faint'],
    ),
    '',
  ]
  const entries = menuRows(labels, cursor, theme).map((row) => ` ${row}`)
  const memory = state.remembered ? memoryRows(state.remembered, entries.length, theme) : []
  const menu = memory.length > 0 ? beside(entries, Math.max(MENU_COLUMNS, menuWidth(entries)), memory) : entries
  const isOpening = state.screen.kind === 'home' && state.screen.opening
  const notice = isOpening
    ? textRow(theme, [` Setting the pins of the drill${theme.glyphs.ellipsis}`, 'faint'])
    : textRow(theme, [state.notice === '' ? '' : ` ${state.notice}`, 'loss'])
  const below = size.rows - 1 - head.length - menu.length - 1
  const laneRows = Math.min(20, below - LANE_FRAME_ROWS)
  const lane =
    picture && laneRows >= LEAST_LANE_ROWS ? lanePicture(picture, laneSize(size).columns, laneRows, theme) : []
  return page([...head, ...menu, notice, ...lane], contextKeyLine('home', size.columns, theme), size)
}

function labelOf(entry: HomeEntry, state: AppState, columns: number): string {
  if (entry === 'continue') return continueLabel(state, columns)
  if (entry === 'drill') return `Drill waiting: ${state.waitingDrill?.skill}`
  if (entry !== 'today') return PLAIN_LABELS[entry]
  const { today } = state
  const whole = `Lane of the day: ${today?.title}`
  // A title that would be cut is left to the next screen.
  return today && whole.length <= columns ? whole : 'Lane of the day'
}

function continueLabel({ kept }: AppState, columns: number): string {
  const { title, throws } = kept[0]!
  const whole = `Resume ${title}, ${throws === 1 ? '1 throw' : `${throws} throws`} in`
  return whole.length <= columns ? whole : `Resume ${title}`
}
