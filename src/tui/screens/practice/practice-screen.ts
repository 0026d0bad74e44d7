import { standingOf, toldLines } from '../../../scenarios/practice/shown-lines.js'
import {
  CARRY_OVER_LINE,
  calibrationLine,
  endLines,
  planLine,
  STANDING_LINES,
  shortBlockWords,
  sureAndWrong,
} from '../../../scenarios/words/practice-session-words.js'
import { askWords, headWords, hintLine, SKILL_WORDS, saidWords } from '../../../scenarios/words/practice-words.js'
import { lineWords } from '../../../scenarios/words/throw-words.js'
import { calibrationOf } from '../../../sim/analysis/practice/learner.js'
import {
  endOf,
  endsInShortBlock,
  SESSION_MINUTES,
  type SessionMinutes,
  sessionLength,
} from '../../../sim/analysis/practice/session.js'
import { FULL_RACK, leaveName } from '../../../sim/world/pins/leaves.js'
import { indent, page, type Size } from '../../draw/layout.js'
import { spreadRow, textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { contextKeyLine } from '../../parts/key-hints.js'
import { lanePicture } from '../../parts/lane.js'
import { menuRows } from '../../parts/menu.js'
import { isShortBlockNext, isTested, type PracticeState, supportOf } from '../../state/practice-state.js'
import { wrapWords } from '../../terminal/fit.js'
import { answerRows } from './answer-rows.js'
import { evidenceRows, SQUEEZES, type Squeeze } from './evidence-rows.js'
import { practicePicture } from './practice-lane.js'

const LANE_FRAME_ROWS = 3
const MOST_LANE_ROWS = 22
/** Of the bar that says how far the session is; the shorter where there is little room. */
const BAR_COLUMNS = { wide: 20, narrow: 10 } as const
const KEY_ROWS = 1
/** From this width on there is room for who bowls. */
const BOWLER_COLUMNS = 110

/** One position at a time: the lane, what was seen, the question, and then what the answer was worth. */
export function practiceScreen(practice: PracticeState, notice: string, size: Size, theme: Theme): string[] {
  const { stage, open } = practice
  const keys = contextKeyLine('practice', size.columns, theme, keyWords(practice))
  if (stage.kind === 'choosing') return page(choosingRows(practice, stage.minutes, notice, theme), keys, size)
  if (stage.kind === 'over') return page(overRows(practice, size, theme), keys, size)
  if (!open) return page(waitingRows(practice, notice, size, theme), keys, size)
  const columns = size.columns - 2
  const notices = notice === '' ? [] : [textRow(theme, [notice, 'loss'])]
  const lowerBy = (squeeze: Squeeze): string[] => [
    ...evidenceRows(practice, squeeze, columns, theme),
    ...notices,
    ...belowRows(practice, squeeze, columns, theme),
  ]
  const roomFor = (lower: readonly string[]): number => size.rows - KEY_ROWS - 1 - lower.length - LANE_FRAME_ROWS
  const squeeze = SQUEEZES.find((one) => roomFor(lowerBy(one)) >= one.laneRows) ?? SQUEEZES.at(-1)!
  const lower = lowerBy(squeeze)
  const laneRows = Math.min(MOST_LANE_ROWS, Math.max(squeeze.laneRows, roomFor(lower)))
  const picture = practicePicture(practice)
  const lane = picture ? lanePicture(picture, Math.min(size.columns - 1, 140), laneRows, theme) : []
  return page([headRow(practice, size.columns, theme), ...lane, ...indent(lower, 1)], keys, size)
}

function keyWords(practice: PracticeState) {
  const { stage, open } = practice
  const hasShortBlock = isShortBlockNext(practice)
  if (stage.kind === 'choosing') return { up: 'how long', left: null, enter: 'begin' } as const
  if (stage.kind === 'opening' || stage.kind === 'keeping') return { up: null, left: null, enter: null } as const
  if (stage.kind === 'told') return { up: null, left: null, enter: 'go on' } as const
  if (stage.kind === 'over') {
    return { up: null, left: null, enter: hasShortBlock ? 'the short block' : 'home' } as const
  }
  if (stage.kind === 'sure') return { up: null, left: 'how sure', enter: 'that is it' } as const
  if (open?.position.kind === 'decide') return { up: 'answer', left: null, enter: 'choose' } as const
  if (open?.position.kind === 'throw-or-lane') return { up: 'more, less', left: null, enter: 'that is it' } as const
  return { up: 'more, less', left: 'figure', enter: 'that is it' } as const
}

function choosingRows({ kinds }: PracticeState, minutes: SessionMinutes, notice: string, theme: Theme): string[] {
  const labels = SESSION_MINUTES.map((one) =>
    endsInShortBlock({ minutes: one, kinds }) ? `${one} minutes, a short block at the end` : `${one} minutes`,
  )
  return [
    '',
    textRow(theme, [' Practice', 'strong'], ['  one moment, one question, under forty seconds each', 'faint']),
    '',
    ...menuRows(labels, SESSION_MINUTES.indexOf(minutes), theme).map((row) => ` ${row}`),
    '',
    ...[
      'You decide, read the oil, call a line, and tell a bad throw from the lane.',
      'What costs you most comes most often. Each answer is kept as it is given; stop any time.',
      '',
      'You choose for a simulated bowler. For how to throw, ask a certified coach; the rules',
      'of your centre come first.',
    ].map((line) => textRow(theme, [` ${line}`, 'faint'])),
    '',
    textRow(theme, [` ${notice}`, 'loss']),
  ]
}

function waitingRows({ desk }: PracticeState, notice: string, size: Size, theme: Theme): string[] {
  const plan = desk ? wrapWords(planLine(desk.session.plan), size.columns - 3) : []
  return [
    '',
    textRow(theme, [' Practice', 'strong']),
    '',
    ...plan.map((line) => ` ${line}`),
    '',
    textRow(theme, [` Setting the pins${theme.glyphs.ellipsis}`, 'faint']),
    ...wrapWords(desk ? STANDING_LINES[desk.standing] : '', size.columns - 3).map((row) =>
      textRow(theme, [` ${row}`, 'faint']),
    ),
    textRow(theme, [` ${notice}`, 'loss']),
  ]
}

function overRows(practice: PracticeState, size: Size, theme: Theme): string[] {
  const { desk, shortBlock } = practice
  if (!desk) return []
  const wrong = sureAndWrong(desk.session.answered)[0]
  const lines = [
    ...(wrong
      ? [
          `Sure and wrong: ${SKILL_WORDS[wrong.skill]}, ${Math.round(100 * (wrong.sureShare ?? 0))} % sure, cost ${wrong.pins.toFixed(1)} pins.`,
        ]
      : []),
    ...endLines(endOf(desk.session)),
    calibrationLine(calibrationOf(desk.session.learner.answers)),
  ]
  const wrapped = (line: string) => wrapWords(line, Math.min(100, size.columns - 3)).map((row) => ` ${row}`)
  return [
    '',
    textRow(
      theme,
      [isShortBlockNext(practice) ? ' The questions are over' : ' Practice is over', 'strong'],
      [`  ${desk.session.answered.length} positions`, 'faint'],
    ),
    '',
    ...lines.filter((line) => line !== '').flatMap((line) => [...wrapped(line), '']),
    ...(isShortBlockNext(practice)
      ? [
          ...wrapped(
            shortBlock
              ? `${shortBlockWords(shortBlock.family)} Enter begins it, Esc leaves it out.`
              : 'The lane is being oiled.',
          ).map((row) => textRow(theme, [row, 'accent'])),
          '',
        ]
      : []),
    ...wrapped(CARRY_OVER_LINE).map((row) => textRow(theme, [row, 'faint'])),
  ]
}

function headRow(practice: PracticeState, columns: number, theme: Theme): string {
  const { desk, open } = practice
  if (!desk || !open) return ''
  const { plan, answered } = desk.session
  const all = sessionLength(plan)
  const at = Math.min(all, answered.length + (practice.stage.kind === 'told' && practice.stage.said ? 0 : 1))
  const bar = columns >= BOWLER_COLUMNS ? BAR_COLUMNS.wide : BAR_COLUMNS.narrow
  const filled = Math.round((bar * at) / all)
  const [full, empty] = theme.glyphs.braille ? ['━', '─'] : ['=', '-']
  const { position, state, scenario } = open
  const posted = state.posted[state.spot!.lane]
  const sheet = posted
    ? posted.ratio === undefined
      ? `sheet ${posted.lengthFeet} ft`
      : `sheet ${posted.lengthFeet} ft, ${posted.volumeMillilitres} mL, ${posted.ratio}:1`
    : 'no sheet'
  const dot = ` ${theme.glyphs.separator} `
  return spreadRow(
    textRow(
      theme,
      [` ${at} of ${all} `, 'faint'],
      [full.repeat(filled), 'accent'],
      [`${empty.repeat(bar - filled)}  `, 'faint'],
      [practice.stage.kind !== 'told' && isTested(practice) ? `Test${dot}` : '', 'strong'],
      [headWords(position), 'strong'],
    ),
    textRow(theme, [`${columns >= BOWLER_COLUMNS ? `${scenario.setup.bowler.name}${dot}` : ''}${sheet} `, 'faint']),
    columns,
  )
}

/** The question with its answer as it stands; or what it was worth. */
function belowRows(practice: PracticeState, squeeze: Squeeze, columns: number, theme: Theme): string[] {
  const { open, stage } = practice
  if (!open) return []
  const { position, scenario, state } = open
  const { bag, bowler } = scenario.setup
  const spare =
    position.kind === 'decide' && position.skill === 'spare' && state.standing !== FULL_RACK
      ? `Spare: ${leaveName(state.standing)}. `
      : ''
  if (stage.kind === 'told') {
    const said = stage.said
    const lines = toldLines(open, said?.answer ?? null, stage.loss)
    const heading = said ? '' : 'The first of its family, solved. '
    const [first = '', ...rest] = lines
    const ask = `${spare}${askWords(position, bowler.hand)}`
    const yours = said ? saidWords(position, said.answer) : ''
    return [
      ...wrapWords(`${heading}${ask}${yours === '' ? '' : ` You said: ${yours}.`}`, columns).map((row) =>
        textRow(theme, [row, 'faint']),
      ),
      ...wrapWords(first, columns).map((row) => textRow(theme, [row, stage.loss ? 'accent' : 'plain'])),
      ...rest.flatMap((line) => wrapWords(line, columns)),
    ]
  }
  const draft = stage.kind === 'asking' || stage.kind === 'sure' ? stage.draft : null
  const line = position.kind === 'call' ? `The line: ${lineWords(position.decision, bag)}. ` : ''
  return [
    ...(squeeze.hint && supportOf(practice) === 'hint'
      ? wrapWords(hintLine(position), columns).map((row) => textRow(theme, [row, 'faint']))
      : []),
    ...wrapWords(`${spare}${line}${askWords(position, bowler.hand)}`, columns).map((row) =>
      textRow(theme, [row, 'strong']),
    ),
    ...(draft
      ? answerRows(
          position,
          { draft, isSure: stage.kind === 'sure', standing: standingOf(open), bag, hand: bowler.hand },
          columns,
          theme,
        )
      : []),
  ]
}
