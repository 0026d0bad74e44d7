import { SHORT_BLOCK_FRAMES } from '../../../sim/analysis/practice/short-block.js'
import type { PlayerView } from '../../../sim/analysis/view/player-view.js'
import type { BlockState, PostedSheet, Spot } from '../../../sim/world/block/types.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { MODE_WORDS, placeWords } from '../../draw/words.js'
import { blockOf, isOnlyTried, type PlayState } from '../../state/play-state.js'
import { columnsOf } from '../../terminal/fit.js'
import { drillPlaceWords } from './drill-rows.js'

/** From this width on the head says when grades are told. */
const MODE_COLUMNS = 110

/** The top row: what is bowled on, what is posted of it, and where in the block it stands. */
export function headRow(play: PlayState, view: PlayerView | null, columns: number, theme: Theme): string {
  const block = blockOf(play)
  const dot = ` ${theme.glyphs.separator} `
  const mode = columns >= MODE_COLUMNS ? [play.contest === undefined ? MODE_WORDS[play.mode] : 'contest'] : []
  const title = ` ${play.contest ?? play.scenario.title}`
  const drilled = drillPlaceWords(play)
  const now = block.spot && play.stage.kind !== 'done' ? placeNow(block, block.spot, play.isShort) : overWords(play)
  const place = [drilled, drilled !== '' && play.stage.kind === 'done' ? 'answered' : now].filter(Boolean).join(dot)
  const room = columns - columnsOf(title) - columnsOf(place) - 2
  const about = (view ? headOptions(view, mode) : [])
    .map((parts) => parts.map((part) => dot + part).join(''))
    .find((words) => columnsOf(words) <= room)
  return spreadRow(
    textRow(theme, [title, 'strong'], [about ?? '', 'faint']),
    textRow(theme, [`${place} `, 'strong']),
    columns,
  )
}

/** What the head tells of lane and oil, from all of it to the least: a part that has no room is left out whole. */
const headOptions = ({ laneName, posted }: PlayerView, mode: readonly string[]): readonly (readonly string[])[] => [
  [laneName, postedWords(posted), ...mode],
  [laneName, postedWords(posted)],
  [postedWords(posted)],
  [postedWords(posted).replace('sheet ', '')],
  [laneName],
]

function placeNow({ setup }: BlockState, spot: Spot, isShort = false): string {
  if (spot.phase === 'practice') return `Practice ${spot.frame} of ${setup.practiceThrows * setup.lanes.length}`
  if (isShort) return `Short block ${spot.frame} of ${SHORT_BLOCK_FRAMES}`
  return placeWords(spot, setup.games)
}

const overWords = (play: PlayState): string => (isOnlyTried(play) ? 'The frame is over' : 'The block is over')

function postedWords(posted: PostedSheet | null): string {
  if (!posted) return 'no sheet'
  const { lengthFeet, volumeMillilitres, ratio } = posted
  if (volumeMillilitres === undefined || ratio === undefined) return `sheet ${lengthFeet} ft`
  return `sheet ${lengthFeet} ft, ${volumeMillilitres} mL, ${ratio}:1`
}
