import { breakpointPlace } from '../../../scenarios/words/throw-words.js'
import type { BeliefSummary } from '../../../sim/analysis/belief/summary.js'
import type { PlayerView } from '../../../sim/analysis/view/player-view.js'
import type { PinFall } from '../../../sim/world/block/pin-fall.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import { tally } from '../../../sim/world/scoring/game.js'
import { clickable } from '../../draw/hits.js'
import type { LanePicture } from '../../draw/lane-picture.js'
import { LANE_FEET, type LaneScale, laneScale } from '../../draw/lane-scale.js'
import { beside, indent, type Size } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { beliefWords } from '../../parts/belief.js'
import { decisionPanelRows } from '../../parts/decision-panel.js'
import { lanePicture } from '../../parts/lane.js'
import { hasBeliefRow, laneSize } from '../../parts/lane-size.js'
import { rivalRow } from '../../parts/rival-row.js'
import { sameLuckRow, seedRow } from '../../parts/same-luck.js'
import { SCORE_SHEET_COLUMNS, scoreSheetRows } from '../../parts/score-sheet.js'
import { laydownBoard, recentSketches, sketchTrace } from '../../parts/sketches.js'
import type { Compared } from '../../state/app-state.js'
import { blockOf, framesOf, isWholeBlock, type PlayState, tellsGrades } from '../../state/play-state.js'
import { ROLL_FRAMES } from '../../state/reduce-throw.js'
import { tourLines } from '../../state/tour.js'
import { handInRows, moveRow } from './move-row.js'
import { headRow } from './play-head.js'
import { BELIEF_HEADING, sidePanelRows } from './play-side.js'
import { recentThrowRows } from './recent-throws.js'
import { resultRows } from './result.js'

const LANE_FRAME_ROWS = 3
/** Everything but the lane, without air between: head, result, score, panel, move, keys. */
const FIXED_ROWS = 10
/** Between the pins and what stands beside them. */
const SIDE_GAP_COLUMNS = 3
/** From this width on there is room beside the score sheet. */
const BELIEF_COLUMNS = 100
export interface PlayLayout {
  readonly laneRows: number
  readonly laneColumns: number
  readonly sideColumns: number
  /** Where a few words on how sure one could be of the oil stand: beside the lane, beside the score sheet, on a row, or nowhere. */
  readonly beliefAt: 'lane' | 'sheet' | 'row' | 'nowhere'
  /** Blank rows, at most three, before score sheet, panel and recent throws. */
  readonly air: number
  readonly recentRows: number
}

/** How the play screen shares out a size: first the lane grows, then the latest throws get rows. */
export function playLayout(size: Size, hasRival = false): PlayLayout {
  const { rows: laneRows, columns: laneColumns, sideColumns } = laneSize(size)
  const beliefAt =
    sideColumns > 0 ? 'lane' : size.columns >= BELIEF_COLUMNS ? 'sheet' : hasBeliefRow(size) ? 'row' : 'nowhere'
  const left = size.rows - FIXED_ROWS - LANE_FRAME_ROWS - (beliefAt === 'row' ? 1 : 0) - (hasRival ? 1 : 0) - laneRows
  const air = Math.min(3, Math.max(0, left))
  return {
    laneRows,
    laneColumns,
    sideColumns,
    beliefAt,
    air,
    recentRows: Math.max(0, left - air),
  }
}

/** Head, lane, result: what stays in sight whatever is open below. */
export function playTopRows(
  play: PlayState,
  view: PlayerView | null,
  size: Size,
  theme: Theme,
  fall: PinFall | null = null,
): string[] {
  const layout = playLayout(size, play.rival !== null)
  const block = blockOf(play)
  const lane = clickableLane(
    lanePicture(pictureOf(play, fall), layout.laneColumns, layout.laneRows, theme),
    laneScale(block.setup.bowler.hand, layout.laneColumns, layout.laneRows),
  )
  const withSide =
    layout.sideColumns > 0
      ? beside(
          lane,
          layout.laneColumns + SIDE_GAP_COLUMNS,
          sidePanelRows({ block, belief: toldBelief(play) }, layout.sideColumns - SIDE_GAP_COLUMNS, theme),
        )
      : lane
  return [
    headRow(play, view, size.columns, theme),
    ...withSide,
    ...indent(resultRows(play, size.columns - 2, theme), 1),
  ]
}

/** The lane's rows, each to be clicked at the board it is labelled by. */
const clickableLane = (rows: readonly string[], { left, columns, rows: laneRows, boardOf }: LaneScale): string[] =>
  rows.map((row, at) =>
    at < 1 || at > laneRows ? row : clickable(row, { kind: 'lane', board: boardOf(at - 1), left, columns }),
  )

/** Score sheet, decision and move, below the lane. */
export function playLowerRows(
  play: PlayState,
  view: PlayerView | null,
  size: Size,
  theme: Theme,
  compared: Compared | null = null,
): string[] {
  const { air, beliefAt, recentRows } = playLayout(size, play.rival !== null)
  const block = blockOf(play)
  const columns = size.columns - 2
  const blank = (which: number) => (air >= which ? [''] : [])
  const score = scoreSheetRows(tally(block.setup.scoring, gameShown(play)), frameShown(play), theme, framesOf(play))
  const field = play.stage.kind === 'deciding' ? play.field : null
  return [
    ...blank(1),
    ...(play.rival ? [` ${rivalRow(play, columns, theme)}`] : []),
    ...(play.tour === null
      ? withBelief(score, beliefAt === 'sheet' ? toldBelief(play) : null, theme)
      : tourRows(play.tour, theme)),
    ...(beliefAt === 'row' ? [beliefRow(play, theme)] : []),
    ...blank(3),
    ...indent(
      handInRows(play, columns, theme) ?? [
        ...(play.stage.kind === 'done' && isWholeBlock(play)
          ? [sameLuckRow(play, compared, columns, theme), seedRow(play, theme)]
          : decisionPanelRows(play.decision, block.setup.bag, field, play.typing, columns, theme)),
        moveRow(play, view, columns, theme),
      ],
      1,
    ),
    ...blank(2),
    ...indent(recentThrowRows(view?.onThisLane ?? [], block.setup, Math.min(116, columns), recentRows, theme), 1),
  ]
}

/** What could be known before the last choice, where grades are told at once. */
const toldBelief = (play: PlayState): BeliefSummary | null => (tellsGrades(play) ? play.belief : null)

function withBelief(score: readonly string[], belief: BeliefSummary | null, theme: Theme): string[] {
  if (!belief) return [...score]
  const [length, volume, shape] = beliefWords(belief)
  const words = [BELIEF_HEADING, `${length}, ${volume}`, shape]
  return beside(
    score,
    SCORE_SHEET_COLUMNS + 2,
    words.map((row) => textRow(theme, [row, 'faint'])),
  )
}

function beliefRow(play: PlayState, theme: Theme): string {
  const belief = toldBelief(play)
  return textRow(theme, [belief ? ` ${BELIEF_HEADING}: ${beliefWords(belief).join(', ')}` : '', 'faint'])
}

/** The guide, where the score sheet stands otherwise. */
const tourRows = (step: number, theme: Theme): string[] => [
  ...tourLines(step).map((line) => textRow(theme, [` ${line}`, 'accent'])),
  textRow(theme, [' The first frame, guided. Esc leaves it; ? then t brings it back.', 'faint']),
]

/** The game being bowled, or the last one. */
const gameShown = (play: PlayState): readonly (readonly number[])[] => {
  const block = blockOf(play)
  const game = block.spot ? block.spot.game : block.balls.length
  return block.balls[game - 1] ?? []
}

/** The frame being bowled, if any. */
const frameShown = (play: PlayState): number | null => {
  const { spot } = blockOf(play)
  return spot?.phase === 'game' && play.stage.kind !== 'done' ? spot.frame : null
}

const standingShown = (play: PlayState): number => (blockOf(play).spot ? blockOf(play).standing : FULL_RACK)

function pictureOf(play: PlayState, fall: PinFall | null): LanePicture {
  const block = blockOf(play)
  const { bowler } = block.setup
  const lane = block.spot?.lane ?? block.throws.at(-1)?.spot.lane ?? 0
  const past = recentSketches(block.throws, lane, bowler)
  const base = { hand: bowler.hand, standing: standingShown(play) }
  const { stage } = play
  if (stage.kind === 'rolling') {
    const feet = (LANE_FEET * Math.min(stage.frame, ROLL_FRAMES)) / ROLL_FRAMES
    const falling = fall?.pictures[stage.frame - ROLL_FRAMES]
    const record = stage.next.throws.at(-1)!
    const rolling = sketchTrace(record, bowler, 'last', stage.frame === 0 ? -1 : feet)
    const board = rolling.boards[Math.floor(feet)]!
    const aged = past.map((trace) => ({
      ...trace,
      look: trace.look === 'last' ? ('older' as const) : ('oldest' as const),
    }))
    return {
      ...base,
      traces: [...aged.slice(-2), rolling],
      ...(falling ? { falling } : {}),
      ...(Number.isNaN(board) || stage.frame >= ROLL_FRAMES ? {} : { balls: [{ board, feet, look: 'last' as const }] }),
    }
  }
  const last = block.throws.findLast((record) => record.spot.lane === lane)
  const { feetBoard, targetBoard } = play.decision.aim
  return {
    ...base,
    traces: past,
    ...(block.spot && stage.kind !== 'done'
      ? { aim: { laydownBoard: laydownBoard(bowler, feetBoard), targetBoard } }
      : {}),
    ...(last && breakpointPlace(last.observation) !== ''
      ? { breakpoint: { board: last.observation.breakpointBoard, feet: last.observation.breakpointFeet } }
      : {}),
  }
}
