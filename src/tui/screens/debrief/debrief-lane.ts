import type { MeantPath } from '../../../sim/analysis/debrief/reading/meant-path.js'
import { metresToBoard } from '../../../sim/units.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import { type LanePicture, pathTrace, type Trace, type TraceLook } from '../../draw/lane-picture.js'
import { LANE_FEET } from '../../draw/lane-scale.js'
import { textRow } from '../../draw/text-row.js'
import { type Ink, OIL_LEVELS, type Theme } from '../../draw/theme.js'
import { boardOnTrace } from '../../parts/lane.js'
import { laydownBoard, recentSketches } from '../../parts/sketches.js'
import { type DebriefState, SIDE_BY_SIDE_FRAMES } from '../../state/debrief-state.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { filmGone } from './wear.js'

/** From this width on the legend says what the lines mean. */
const LONG_COLUMNS = 118
/** A ball that never moves outwards has its breakpoint where it is laid down, which is nothing to mark. */
const NEAREST_BREAKPOINT_FEET = 16

/** The lane under a throw looked back on: as it was seen, or with the oil shown and the best balls beside. */
export function debriefLane(play: PlayState, debrief: DebriefState): LanePicture {
  const block = blockOf(play)
  const { bowler } = block.setup
  const record = block.throws[debrief.chosen]!
  const base = { hand: bowler.hand, standing: record.standingAfter }
  if (debrief.shows === 'seen') {
    const seen = block.throws.slice(0, debrief.chosen + 1)
    const { feetBoard, targetBoard } = record.decision.aim
    const aim = { laydownBoard: laydownBoard(bowler, feetBoard), targetBoard }
    return { ...base, aim, traces: recentSketches(seen, record.spot.lane, bowler) }
  }
  const paths = pathsOf(play, debrief.chosen, record)
  const oil = oilUnder(play, debrief, record)
  if (debrief.rolling !== null) {
    const feet = (LANE_FEET * debrief.rolling) / SIDE_BY_SIDE_FRAMES
    const balls = paths
      .map((path) => ({ board: boardOnTrace(path, feet), feet, look: path.look }))
      .filter(({ board }) => !Number.isNaN(board))
    return { ...base, traces: paths.map((path) => upTo(path, feet)), balls, oil }
  }
  return { ...base, traces: paths, ...breakpointOf(record), oil }
}

/** Best with the oil seen, best from what had been seen, and the throw itself on top. */
function pathsOf(play: PlayState, index: number, { truth }: ThrowRecord): Trace[] {
  const { bestKnown = null, bestFair = null } = play.accounts[index]?.paths ?? {}
  const meant = (path: MeantPath | null, look: TraceLook): Trace[] => (path ? [traceOf(path.path, look)] : [])
  return [...meant(bestKnown, 'known'), ...meant(bestFair, 'best'), traceOf(truth.path, 'truth')]
}

const traceOf = (path: Float64Array, look: TraceLook): Trace => pathTrace(path.map(metresToBoard), look)

function upTo(trace: Trace, feet: number): Trace {
  const rows = Math.round((feet - trace.firstFeet) / trace.stepFeet)
  return { ...trace, boards: Array.from(trace.boards, (board, row) => (row <= rows ? board : Number.NaN)) }
}

function oilUnder(play: PlayState, debrief: DebriefState, { spot, truth }: ThrowRecord) {
  if (debrief.shows !== 'wear') return truth.laneBefore.film
  const fresh = blockOf(play).throws.find((one) => one.spot.lane === spot.lane)!.truth.laneBefore
  return filmGone(fresh.film, truth.laneBefore.film)
}

function breakpointOf({ truth }: ThrowRecord): Pick<LanePicture, 'breakpoint'> {
  if (truth.leftLaneFeet < LANE_FEET || truth.breakpointFeet < NEAREST_BREAKPOINT_FEET) return {}
  return { breakpoint: { board: truth.breakpointBoard, feet: truth.breakpointFeet } }
}

/** A bit of each line: the throw itself, the best from what had been seen, the best with the oil seen. */
export const lineSamples = ({ glyphs }: Theme): readonly [solid: string, dashed: string, dotted: string] =>
  glyphs.braille ? ['⠤⠤⠤', '⠤⠄⠠', '⠄⠠⠐'] : ['***', '===', '~~~']

/** Levels of the oil that the legend shows: thin to thick. */
const LEGEND_LEVELS = [1, 2, 4, OIL_LEVELS] as const
const SAMPLE_LEVEL = 1

/** A bit of a line as it looks on the lane, on the lane's own ground where that is coloured. */
export function onLane(sample: string, ink: Ink, theme: Theme): string {
  const style = theme.style(ink, SAMPLE_LEVEL)
  return style === '' ? sample : `${style}${sample}\u001B[0m`
}

/** What the lines and the ground of the lane mean. */
export function debriefLegend(play: PlayState, debrief: DebriefState, columns: number, theme: Theme): string {
  const { glyphs } = theme
  const [solid, dashed, dotted] = lineSamples(theme)
  if (debrief.shows === 'seen') {
    const older = glyphs.braille ? `${dashed} ${dotted}` : 'ooo ...'
    return textRow(theme, [`${solid} as you saw it`, 'last'], [`   ${older} the ones before`, 'older'])
  }
  const isLong = columns >= LONG_COLUMNS
  const step = isLong ? 2 : 1
  const ramp = theme.colouredGround
    ? `${LEGEND_LEVELS.map((level) => theme.style('plain', level) + ' '.repeat(step)).join('')}\u001B[0m`
    : LEGEND_LEVELS.map((level) => glyphs.oil[level]!.repeat(step)).join('')
  const what = debrief.shows === 'oil' ? ' oil at this shot' : ' oil removed so far'
  const hasBest = play.accounts[debrief.chosen]?.graded != null
  const best = hasBest
    ? ([
        ['  '],
        [dashed, 'best', isLong ? 'best from what you had seen' : 'best as seen'],
        ['  '],
        [dotted, 'known', isLong ? 'best if you could see the oil' : 'best, oil seen'],
      ] as const)
    : []
  const lines = [[solid, 'truth', 'yours'] as const, ...best].map((part) =>
    part.length === 1 ? part[0] : `${onLane(part[0], part[1], theme)} ${part[2]}`,
  )
  return `${lines.join('')}  ${ramp}${textRow(theme, [what, 'faint'])}`
}
