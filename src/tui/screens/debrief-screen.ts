import { decisionWords, moveWords, trimmed } from '../../scenarios/plain/words.js'
import type { ThrowRecord } from '../../sim/block/types.js'
import { metresPerSecondToMph, metresToBoard, radiansToDegrees } from '../../sim/units.js'
import { beside, page, type Size } from '../draw/layout.js'
import { spreadRow, textRow } from '../draw/text-row.js'
import type { Theme } from '../draw/theme.js'
import { fellWords, pinsGivenWords, placeWords, throwLabel } from '../draw/words.js'
import { contextKeyLine } from '../parts/key-hints.js'
import { LANE_FEET, type LanePicture, lanePicture, type Trace } from '../parts/lane.js'
import { laydownBoard } from '../parts/sketches.js'
import { ballValueRows, timelineRows } from '../parts/value-chart.js'
import { filmGone } from '../parts/wear.js'
import type { MeantRoll } from '../services.js'
import type { DebriefState } from '../state/debrief-state.js'
import { allPinsGiven, blockOf, type PlayState, pinsGiven, type ThrowGrade } from '../state/play-state.js'

/** Middle of the first half foot, where paths over the film begin. */
const FIRST_ROW_FEET = 0.25
const ROW_FEET = 0.5
const LANE_FRAME_ROWS = 3
/** Head, legend, labels of the timeline, five rows of words, keys. */
const WORD_ROWS = 9
/** From this width on the head has room for the scenario's title. */
const TITLE_COLUMNS = 100
/** From this width on the balls stand beside the words, which then keep to their own columns. */
const WIDE_COLUMNS = 118
const FACT_COLUMNS = 76
/** A ball that never moves outwards has its breakpoint where it is laid down, which is nothing to mark. */
const NEAREST_BREAKPOINT_FEET = 16

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
  const isWide = size.columns >= WIDE_COLUMNS
  const columns = isWide ? FACT_COLUMNS : size.columns - 2
  const spare = size.rows - WORD_ROWS - LANE_FRAME_ROWS
  const laneRows = Math.min(20, Math.max(10, spare - 3))
  const barRows = Math.max(2, Math.min(6, spare - laneRows))
  const air = spare - laneRows - barRows >= 2 ? [''] : []
  const below = [
    ...air,
    ...timeline(play, debrief, columns, barRows, theme),
    ...air,
    ...factRows(play, debrief, record, rolls, columns, theme).map((row) => ` ${row}`),
  ]
  const body = [
    headRow(play, size.columns, theme),
    ...lanePicture(pictureOf(play, debrief, record, rolls), Math.min(130, size.columns - 1), laneRows, theme),
    ` ${legendRow(debrief, play, theme)}`,
    ...(isWide ? beside(below, columns + 4, perBallRows(play, debrief, size.columns - columns - 5, theme)) : below),
  ]
  return page(body, contextKeyLine('debrief', size.columns, theme), size)
}

function headRow(play: PlayState, columns: number, theme: Theme): string {
  const open = play.grades.filter((grade) => grade === undefined).length
  const still = open > 0 ? ` (${open} still to be weighed)` : ''
  const title = columns >= TITLE_COLUMNS ? ` ${theme.glyphs.separator} ${play.scenario.title}` : ''
  return spreadRow(
    textRow(theme, [' The oil lifted', 'strong'], [title, 'faint']),
    textRow(
      theme,
      ['Given away, against the oil as it was: ', 'faint'],
      [`${pinsGivenWords(allPinsGiven(play))}${still} `, 'loss'],
    ),
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
    ...(truth.leftLaneFeet < LANE_FEET || truth.breakpointFeet < NEAREST_BREAKPOINT_FEET
      ? {}
      : { breakpoint: { board: truth.breakpointBoard, feet: truth.breakpointFeet } }),
    oil,
  }
}

function legendRow(debrief: DebriefState, play: PlayState, theme: Theme): string {
  const { glyphs } = theme
  const ramp = theme.colouredGround
    ? `${[1, 3, 5, 7].map((level) => `${theme.style('plain', level)}  `).join('')}\u001B[0m`
    : [1, 3, 5, 7].map((level) => glyphs.oil[level]!.repeat(2)).join('')
  const what = debrief.shows === 'oil' ? ' oil it met, thin to thick' : ' oil gone since the start'
  const solid = glyphs.braille ? '⠤⠤⠤' : '***'
  const dashed = glyphs.braille ? '⠤⠄⠠' : '==='
  const best = play.grades[debrief.chosen] ? ([`   ${dashed} best, as meant`, 'best'] as const) : ''
  return textRow(theme, [`${solid} yours`, 'truth'], best, ['   ', 'plain']) + ramp + textRow(theme, [what, 'faint'])
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
  const { decision } = record
  const name = placeWords(record.spot, blockOf(play).setup.games)
  const move = grade ? ` (${moveWords(decision.aim, grade.best.aim, bowler.hand)})` : ''
  return [
    spreadRow(
      textRow(theme, [`${name}: `, 'strong'], [givenWords(grade), pinsGiven(grade) > 0 ? 'loss' : 'plain']),
      textRow(theme, [fellWords(record), 'strong']),
      columns,
    ),
    textRow(theme, ['Yours: ', 'truth'], decisionWords(decision, bag)),
    grade ? bestRow(decisionWords(grade.best, bag), move, columns, theme) : '',
    textRow(theme, entryWords(record), [meantWords(record, rolls), 'faint']),
    textRow(theme, [rollWords(record), 'faint']),
  ]
}

/** The best choice, and how far off it is where there is room to say so. */
function bestRow(words: string, move: string, columns: number, theme: Theme): string {
  const fits = 'Best:  '.length + words.length + move.length <= columns
  return textRow(theme, ['Best:  ', 'best'], words, [fits ? move : '', 'faint'])
}

function givenWords(grade: ThrowGrade): string {
  if (grade === undefined) return 'not weighed yet'
  if (grade === null) return 'practice costs nothing'
  const pins = pinsGiven(grade)
  return pins > 0 ? `gave away ${pinsGivenWords(pins)}` : 'too close to call'
}

function entryWords({ truth }: ThrowRecord): string {
  if (truth.leftLaneFeet < LANE_FEET) return `Off the lane at ${truth.leftLaneFeet.toFixed(0)} ft`
  const angle = radiansToDegrees(truth.entryAngleRadians).toFixed(1)
  const speed = metresPerSecondToMph(truth.entrySpeedMetresPerSecond).toFixed(1)
  return `Entry board ${truth.entryBoard.toFixed(1)} at ${angle} degrees, ${speed} mph`
}

/** The same choice without the bowler's miss. */
function meantWords({ truth }: ThrowRecord, rolls: DebriefRolls | null): string {
  if (!rolls || truth.leftLaneFeet < LANE_FEET) return ''
  const { entryBoard, entryAngleDegrees } = rolls.meant
  return `; as meant ${entryBoard.toFixed(1)} at ${entryAngleDegrees.toFixed(1)}`
}

function rollWords({ truth, decision }: ThrowRecord): string {
  const crossed = (metresToBoard(truth.path[29]!) + metresToBoard(truth.path[30]!)) / 2
  const arrows = Number.isNaN(crossed)
    ? []
    : [`target ${trimmed(decision.aim.targetBoard)}, crossed ${crossed.toFixed(1)}`]
  const hook = Number.isFinite(truth.hookStartFeet) ? [`hooks from ${truth.hookStartFeet.toFixed(0)} ft`] : []
  const roll = Number.isFinite(truth.rollStartFeet)
    ? `rolls from ${truth.rollStartFeet.toFixed(0)} ft`
    : 'still skids at the pins'
  const words = [...arrows, ...hook, roll].join('; ')
  return words.charAt(0).toUpperCase() + words.slice(1)
}

function perBallRows(play: PlayState, debrief: DebriefState, columns: number, theme: Theme): string[] {
  const grade = play.grades[debrief.chosen]
  if (!grade || grade.perBall.length === 0) return []
  const { bag } = blockOf(play).setup
  const chosen = blockOf(play).throws[debrief.chosen]!.decision.ballId
  const most = grade.perBall[0]!.worth
  const values = grade.perBall.map(({ ballId, worth }) => ({
    name: bag.find((ball) => ball.id === ballId)?.name ?? ballId,
    behindPins: most - worth,
    isChosen: ballId === chosen,
  }))
  return [textRow(theme, ['Each ball on its own best line', 'faint']), ...ballValueRows(values, columns, theme)]
}
