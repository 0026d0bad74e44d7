import type { MeantPath } from '../../../sim/analysis/debrief/reading/meant-path.js'
import { metresToBoard } from '../../../sim/units.js'
import type { ThrowRecord } from '../../../sim/world/block/types.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { boardOnTrace, LANE_FEET, type LanePicture, pathTrace, type Trace, type TraceLook } from '../../parts/lane.js'
import { laydownBoard, recentSketches } from '../../parts/sketches.js'
import { type DebriefState, SIDE_BY_SIDE_FRAMES } from '../../state/debrief-state.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { filmGone } from './wear.js'

/** From this width on the legend says what the lines mean. */
const LONG_COLUMNS = 118
/** A ball that never moves outwards has its breakpoint where it is laid down, which is nothing to mark. */
const NEAREST_BREAKPOINT_FEET = 16

/** The lane under a throw looked back on: as it was seen, or with the oil lifted and the best balls beside. */
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

/** Best with the oil in sight, best by what could be known, and the throw itself on top. */
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

/** A bit of each line: the throw itself, the fair best, the best with the oil in sight. */
export const lineSamples = ({ glyphs }: Theme): readonly [solid: string, dashed: string, dotted: string] =>
  glyphs.braille ? ['⠤⠤⠤', '⠤⠄⠠', '⠄⠠⠐'] : ['***', '===', '~~~']

/** What the lines and the ground of the lane mean. */
export function debriefLegend(play: PlayState, debrief: DebriefState, columns: number, theme: Theme): string {
  const { glyphs } = theme
  const [solid, dashed, dotted] = lineSamples(theme)
  if (debrief.shows === 'seen') {
    const older = glyphs.braille ? `${dashed} ${dotted}` : 'ooo ...'
    return textRow(theme, [`${solid} as you saw it`, 'last'], [`   ${older} the ones before`, 'older'])
  }
  const ramp = theme.colouredGround
    ? `${[1, 3, 5, 7].map((level) => `${theme.style('plain', level)}  `).join('')}\u001B[0m`
    : [1, 3, 5, 7].map((level) => glyphs.oil[level]!.repeat(2)).join('')
  const what = debrief.shows === 'oil' ? ' oil it met' : ' oil gone so far'
  const isLong = columns >= LONG_COLUMNS
  const hasBest = play.accounts[debrief.chosen]?.graded != null
  const best = hasBest
    ? ([
        [`  ${dashed} ${isLong ? 'fair: the best by what could be known' : 'fair best'}`, 'best'],
        [`  ${dotted} ${isLong ? 'oil: the best with it in sight' : 'oil best'}`, 'known'],
      ] as const)
    : []
  return textRow(theme, [`${solid} yours`, 'truth'], ...best, '  ') + ramp + textRow(theme, [what, 'faint'])
}
