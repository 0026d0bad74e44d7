import { type CalledThrow, type CallScore, chanceOf, isRight, scoreCalls } from '../../../sim/analysis/debrief/calls.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { throwLabel } from '../../draw/words.js'
import { blockOf, type PlayState } from '../../state/play-state.js'
import { wrapWords } from '../../terminal/fit.js'

const SURE_END = 29
const CAME_START = 33
const RIGHT_START = 46
const CHANCE_END = 60
const LIKELIEST_START = 63
const TABLE_COLUMNS = 78

interface Called extends CalledThrow {
  readonly index: number
}

/** How good the player's calls were: how often right, against how sure they were and against what could be known. */
export function callScoreRows(play: PlayState, chosen: number, columns: number, theme: Theme): string[] {
  const calls = calledThrows(play)
  const score = scoreCalls(calls)
  const width = Math.min(columns, 110)
  const title = textRow(theme, ['Your calls', 'strong'])
  if (!score) return [title, ...faint(NO_CALLS, width, theme)]
  return [
    title,
    ...wrapWords(score.count === 1 ? onlyWords(calls[0]!) : scoreWords(score), width),
    ...(score.count === 1 ? [] : faint(brierWords(score), width, theme)),
    '',
    ...tableRows(play, calls, chosen, columns, theme),
  ]
}

const NO_CALLS =
  'You called nothing in this block. Before a first ball, c says how it will meet the rack and how sure you are; here you then see how good your calls were.'

const faint = (words: string, columns: number, theme: Theme): string[] =>
  wrapWords(words, columns).map((row) => textRow(theme, [row, 'faint']))

/** Calls with what came of them; only those whose chances have been worked out. */
function calledThrows(play: PlayState): Called[] {
  const { throws } = blockOf(play)
  return play.calls.flatMap((call, index) => {
    const record = throws[index]
    const chances = play.accounts[index]?.contactChances
    if (!call || !record || !chances) return []
    const { contact, confidencePercent } = call
    return [{ index, called: contact, sureShare: confidencePercent / 100, came: record.observation.contact, chances }]
  })
}

function scoreWords({ count, right, claimed, toExpect, toExpectOfLikeliest }: CallScore): string {
  const times = (number: number): string => number.toFixed(1)
  return [
    `${right} of ${count} calls came right; as sure as you were, ${times(claimed)} would have.`,
    `By what could be known ${times(toExpect)} of them were to come right, and ${times(toExpectOfLikeliest)} had you called the likeliest reaction each time.`,
  ].join(' ')
}

/** One call is no score; it is told as it was. */
function onlyWords(call: CalledThrow): string {
  const { called, sureShare, chances } = call
  const came = isRight(call) ? 'came right' : 'did not come right'
  const likeliest = chances[0] ? `; the likeliest was ${chances[0].contact}, ${percent(chances[0].chance)}` : ''
  return `Your one call ${came}. You were ${percent(sureShare)} sure; by what could be known its chance was ${percent(chanceOf(called, chances))}${likeliest}.`
}

const brierWords = ({ brier, brierByKnown }: CallScore): string =>
  `Brier score ${brier.toFixed(2)}; ${brierByKnown.toFixed(2)} for the same calls made as sure as could be known. 0 is perfect, 0.25 is a coin toss.`

function tableRows(play: PlayState, calls: readonly Called[], chosen: number, columns: number, theme: Theme): string[] {
  const { throws } = blockOf(play)
  const canvas = newCanvas(Math.min(columns, TABLE_COLUMNS), calls.length + 1)
  put(canvas, 2, 0, 'throw', 'faint')
  put(canvas, 9, 0, 'called', 'faint')
  putRight(canvas, SURE_END, 0, 'sure', 'faint')
  put(canvas, CAME_START, 0, 'it was', 'faint')
  putRight(canvas, CHANCE_END, 0, 'chance', 'faint')
  put(canvas, LIKELIEST_START, 0, 'likeliest', 'faint')
  calls.forEach((call, row) => {
    const y = row + 1
    const { called, came, sureShare, chances, index } = call
    const ink = index === chosen ? 'accent' : 'plain'
    if (index === chosen) put(canvas, 0, y, theme.glyphs.pointer, 'accent')
    put(canvas, 2, y, throwLabel(throws[index]!.spot), ink)
    put(canvas, 9, y, called, ink)
    putRight(canvas, SURE_END, y, percent(sureShare))
    put(canvas, CAME_START, y, came)
    put(canvas, RIGHT_START, y, isRight(call) ? 'right' : 'wrong', isRight(call) ? 'gain' : 'loss')
    putRight(canvas, CHANCE_END, y, percent(chanceOf(called, chances)))
    const likeliest = chances[0]
    if (likeliest) put(canvas, LIKELIEST_START, y, `${likeliest.contact} ${percent(likeliest.chance)}`, 'faint')
  })
  return canvasRows(canvas, theme)
}

const percent = (share: number): string => `${Math.round(share * 100)} %`
