import { boardWords, moveWords, SPEED_WORDS, signedPins } from '../../../scenarios/words/words.js'
import { isSame } from '../../../sim/analysis/debrief/ledger/throw-worths.js'
import type { Alternative } from '../../../sim/analysis/debrief/reading/alternatives.js'
import type { BlockSetup, Decision } from '../../../sim/world/block/types.js'
import { canvasRows, newCanvas, put, putRight } from '../../draw/canvas.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import { blockOf, counts, type PlayState } from '../../state/play-state.js'

const FIGURE_COLUMNS = 10
const LEAST_BAR_COLUMNS = 12
const WORD_COLUMNS = 42

/**
 * The road not taken from one throw: other balls on their best lines and small moves, each against the choice made; a bar
 * to the right gains, one to the left loses. From what had been seen, and in a column on the oil that was there.
 */
export function choiceRows(play: PlayState, index: number, columns: number, rows: number, theme: Theme): string[] {
  const { setup, throws } = blockOf(play)
  const account = play.accounts[index]
  const faint = (words: string) => [textRow(theme, [words, 'faint'])]
  if (!counts(play, index))
    return faint('Practice has nothing at stake; other choices are priced from the first frame on.')
  if (!account) return faint(`Working them out${theme.glyphs.ellipsis}`)
  const alternatives = account.graded?.alternatives ?? []
  if (alternatives.length === 0) return faint('Other choices are priced for first balls; this was a spare.')
  const made = throws[index]!.decision
  // The best that is shown may be the best line of its ball too; it is told once.
  const listed = alternatives
    .filter((one, at) => alternatives.findIndex(({ decision }) => isSame(decision, one.decision)) === at)
    .sort((a, b) => b.fairGainPins - a.fairGainPins)
    .slice(0, rows - 1)
  return [
    headings(columns, theme),
    ...chartRows(
      listed.map((one) => ({ words: choiceWords(one, made, setup), ...one })),
      columns,
      theme,
    ),
  ]
}

function headings(columns: number, theme: Theme): string {
  const canvas = newCanvas(columns, 1)
  put(canvas, 0, 0, 'Instead (slide/target), against what was thrown, in pins', 'faint')
  putRight(canvas, columns - FIGURE_COLUMNS, 0, 'as seen', 'faint')
  putRight(canvas, columns, 0, 'real oil', 'faint')
  return canvasRows(canvas, theme)[0]!
}

function choiceWords({ what, decision }: Alternative, made: Decision, { bag, bowler }: BlockSetup): string {
  if (what === 'move') return moveWords(made.aim, decision.aim, bowler.hand)
  const name = bag.find((ball) => ball.id === decision.ballId)?.name ?? decision.ballId
  const { feetBoard, targetBoard, speedStep } = decision.aim
  const speed = speedStep === 0 ? '' : ` ${SPEED_WORDS[speedStep]}`
  return `${name} ${boardWords(feetBoard)}/${boardWords(targetBoard)}${speed}`
}

interface Charted {
  readonly words: string
  readonly fairGainPins: number
  readonly knownGainPins: number
}

function chartRows(listed: readonly Charted[], columns: number, theme: Theme): string[] {
  const canvas = newCanvas(columns, listed.length)
  const barsFrom = Math.min(WORD_COLUMNS, columns - 2 * FIGURE_COLUMNS - LEAST_BAR_COLUMNS)
  const barColumns = columns - 2 * FIGURE_COLUMNS - barsFrom
  const most = Math.max(1, ...listed.map(({ fairGainPins }) => Math.abs(fairGainPins)))
  const gaining = Math.max(0, ...listed.map(({ fairGainPins }) => fairGainPins))
  const zero = barsFrom + Math.round(barColumns * (1 - gaining / (gaining + most || 1)))
  const perPin = (barColumns - 1) / (gaining + most || 1)
  listed.forEach(({ words, fairGainPins, knownGainPins }, row) => {
    const length = Math.round(Math.abs(fairGainPins) * perPin)
    const start = fairGainPins > 0 ? zero : Math.max(barsFrom, zero - length)
    const room = Math.max(0, Math.min(length, fairGainPins > 0 ? columns - 2 * FIGURE_COLUMNS - zero : zero - barsFrom))
    put(canvas, 0, row, [...words].slice(0, barsFrom - 1).join(''))
    put(canvas, start, row, theme.glyphs.block.repeat(room), fairGainPins > 0 ? 'gain' : 'loss')
    putRight(canvas, columns - FIGURE_COLUMNS, row, signedPins(fairGainPins))
    putRight(canvas, columns, row, signedPins(knownGainPins), 'faint')
  })
  return canvasRows(canvas, theme)
}
