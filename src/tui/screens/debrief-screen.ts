import { decisionWords, moveWords, trimmed } from '../../scenarios/plain/words.js'
import type { ThrowRecord } from '../../sim/block/types.js'
import { FULL_RACK } from '../../sim/pins/leaves.js'
import { metresPerSecondToMph, metresToBoard, radiansToDegrees } from '../../sim/units.js'
import { page, type Size } from '../draw/layout.js'
import { spreadRow, textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { fellWords, pinsGivenWords, throwLabel } from '../draw/words.js'
import { contextKeyLine } from '../parts/key-hints.js'
import { type LanePicture, lanePicture, type Trace } from '../parts/lane.js'
import { laydownBoard } from '../parts/sketches.js'
import { ballValueRows, timelineRows } from '../parts/value-chart.js'
import { filmGone } from '../parts/wear.js'
import type { MeantRoll } from '../services.js'
import type { DebriefState } from '../state/debrief-state.js'
import { allPinsGiven, blockOf, type PlayState, pinsGiven } from '../state/play-state.js'

/** Middle of the first half foot, where paths over the film begin. */
const FIRST_ROW_FEET = 0.25
const ROW_FEET = 0.5
const LANE_FRAME_ROWS = 3
/** Head, legend, labels and pointer of the timeline, four rows of words, keys. */
const WORD_ROWS = 9

/** How the best choice would have rolled, and the chosen one as it was meant; null until worked out. */
export interface DebriefRolls {
  readonly best: MeantRoll | null
  readonly meant: MeantRoll
}

/** The oil lifted: where this throw went and why, what the best line was, and what each choice gave away. */
export function debriefScreen(
  play: PlayState,
  debrief: DebriefState,
  rolls: DebriefRolls | null,
  size: Size,
  theme: Theme,
): string[] {
  const record = blockOf(play).throws[debrief.chosen]!
  const columns = size.columns - 2
  const spare = size.rows - WORD_ROWS - LANE_FRAME_ROWS
  const laneRows = Math.min(20, Math.max(9, spare - 3))
  const barRows = Math.max(3, Math.min(6, spare - laneRows))
  const ballRows = Math.max(0, spare - laneRows - barRows - 1)
  const body = [
    headRow(play, size.columns, theme),
    ...lanePicture(pictureOf(play, debrief, record, rolls), Math.min(130, size.columns - 1), laneRows, theme),
    ` ${legendRow(debrief, play, theme)}`,
    ...timeline(play, debrief, columns, barRows, theme),
    ...factRows(play, debrief, record, rolls, columns, theme).map((row) => ` ${row}`),
    ...perBallRows(play, debrief, columns, ballRows, theme),
  ]
  return page(body, contextKeyLine('debrief', size.columns, theme), size)
}

function headRow(play: PlayState, columns: number, theme: Theme): string {
  const open = play.grades.filter((grade) => grade === undefined).length
  const still = open > 0 ? ` (${open} still to be weighed)` : ''
  return spreadRow(
    textRow(theme, [` ${play.scenario.title}`, 'strong'], [` ${theme.glyphs.separator} the oil lifted`, 'faint']),
    textRow(theme, ['Given away in all: ', 'faint'], [`${pinsGivenWords(allPinsGiven(play))}${still} `, 'loss']),
    columns,
  )
}

function pictureOf(
  play: PlayState,
  debrief: DebriefState,
  record: ThrowRecord,
  rolls: DebriefRolls | null,
): LanePicture {
  const block = blockOf(play)
  const { bowler } = block.setup
  const { truth, decision } = record
  const traces: Trace[] = []
  if (rolls?.best)
    traces.push({ boards: rolls.best.boards, firstFeet: FIRST_ROW_FEET, stepFeet: ROW_FEET, look: 'best' })
  traces.push({ boards: truth.path.map(metresToBoard), firstFeet: FIRST_ROW_FEET, stepFeet: ROW_FEET, look: 'truth' })
  const fresh = block.throws.find((one) => one.spot.lane === record.spot.lane)!.truth.laneBefore
  const oil = debrief.shows === 'oil' ? truth.laneBefore.film : filmGone(fresh.film, truth.laneBefore.film)
  const { feetBoard, targetBoard } = decision.aim
  return {
    hand: bowler.hand,
    standing: record.standingAfter,
    traces,
    aim: { laydownBoard: laydownBoard(bowler, feetBoard), targetBoard },
    ...(truth.leftLaneFeet < 60 ? {} : { breakpoint: { board: truth.breakpointBoard, feet: truth.breakpointFeet } }),
    oil,
  }
}

function legendRow(debrief: DebriefState, play: PlayState, theme: Theme): string {
  const { glyphs } = theme
  const ramp = theme.colouredGround
    ? `${[1, 3, 5, 7].map((level) => `${theme.style('plain', level)}  `).join('')}\u001B[0m`
    : [1, 3, 5, 7].map((level) => glyphs.oil[level]!.repeat(2)).join('')
  const what = debrief.shows === 'oil' ? ' oil this ball met, thin to thick' : ' oil gone since the first throw'
  const solid = glyphs.braille ? '⠤⠤⠤' : '***'
  const dashed = glyphs.braille ? '⠤⠄⠠' : '==='
  const best = play.grades[debrief.chosen] ? ([`   ${dashed} best line, as meant`, 'best'] as const) : ''
  return (
    textRow(theme, [`${solid} your ball`, 'truth'], best, ['   ', 'plain']) + ramp + textRow(theme, [what, 'faint'])
  )
}

function timeline(play: PlayState, debrief: DebriefState, columns: number, barRows: number, theme: Theme): string[] {
  const grades = blockOf(play).throws.map((record, index) => {
    const grade = play.grades[index]
    return { label: throwLabel(record.spot), pins: grade === undefined ? null : pinsGiven(grade) }
  })
  return timelineRows(grades, debrief.chosen, columns, barRows, theme).map((row) => ` ${row}`)
}

function factRows(
  play: PlayState,
  debrief: DebriefState,
  record: ThrowRecord,
  rolls: DebriefRolls | null,
  columns: number,
  theme: Theme,
): string[] {
  const { bag, bowler } = blockOf(play).setup
  const grade = play.grades[debrief.chosen]
  const { truth, decision, spot } = record
  const name = spot.phase === 'practice' ? `Practice ${spot.frame}` : `Frame ${spot.frame}, ball ${spot.ball}`
  const given =
    grade === undefined
      ? 'not weighed yet'
      : grade === null
        ? 'not graded'
        : `${pinsGiven(grade) > 0 ? `gave away ${pinsGivenWords(pinsGiven(grade))}` : 'gave away nothing worth calling'}`
  const entry =
    truth.leftLaneFeet < 60
      ? `Off the lane at ${trimmed(truth.leftLaneFeet, 1)} ft`
      : `Entry board ${truth.entryBoard.toFixed(1)} at ${radiansToDegrees(truth.entryAngleRadians).toFixed(1)} degrees, ${metresPerSecondToMph(truth.entrySpeedMetresPerSecond).toFixed(1)} mph`
  const meant =
    rolls && truth.leftLaneFeet >= 60
      ? `; meant ${rolls.meant.entryBoard.toFixed(1)} at ${rolls.meant.entryAngleDegrees.toFixed(1)}`
      : ''
  const roll = Number.isFinite(truth.rollStartFeet)
    ? `rolls from ${truth.rollStartFeet.toFixed(0)} ft`
    : 'still skids at the pins'
  const hook = Number.isFinite(truth.hookStartFeet) ? `hooks from ${truth.hookStartFeet.toFixed(0)} ft, ` : ''
  const crossed = (metresToBoard(truth.path[29]!) + metresToBoard(truth.path[30]!)) / 2
  const move = grade ? moveWords(decision.aim, grade.best.aim, bowler.hand) : ''
  const best = grade
    ? textRow(theme, ['Best: ', 'best'], `${decisionWords(grade.best, bag)}`, [` (${move})`, 'faint'])
    : textRow(theme, [record.standingBefore === FULL_RACK ? 'Practice is not graded.' : '', 'faint'])
  return [
    spreadRow(
      textRow(
        theme,
        [`${name}: `, 'strong'],
        [given, pinsGiven(grade) > 0 ? 'loss' : 'plain'],
        [grade ? `, ${grade.label}` : '', 'faint'],
      ),
      textRow(theme, [fellWords(record), 'strong']),
      columns,
    ),
    textRow(theme, ['Yours: ', 'truth'], decisionWords(decision, bag)),
    best,
    textRow(theme, `${entry}${meant}`, [
      `; target ${trimmed(decision.aim.targetBoard)} crossed ${crossed.toFixed(1)}; ${hook}${roll}`,
      'faint',
    ]),
  ]
}

function perBallRows(play: PlayState, debrief: DebriefState, columns: number, rows: number, theme: Theme): string[] {
  const grade = play.grades[debrief.chosen]
  if (!grade || grade.perBall.length === 0 || rows < 3) return []
  const { bag } = blockOf(play).setup
  const chosen = blockOf(play).throws[debrief.chosen]!.decision.ballId
  const most = grade.perBall[0]!.worth
  const values = grade.perBall.slice(0, rows - 1).map(({ ballId, worth }) => ({
    name: bag.find((ball) => ball.id === ballId)?.name ?? ballId,
    behindPins: most - worth,
    isChosen: ballId === chosen,
  }))
  return [
    textRow(theme, [' Each ball on its own best line', 'faint']),
    ...ballValueRows(values, Math.min(100, columns), theme).map((row) => ` ${row}`),
  ]
}
