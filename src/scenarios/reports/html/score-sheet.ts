import type { BlockState } from '../../../sim/world/block/types.js'
import { tally } from '../../../sim/world/scoring/game.js'
import type { DebriefReport } from '../debrief/debrief-report.js'
import { escaped } from './escaped.js'

const BAR_REMS = 2.3

/** The games of a block frame by frame: balls, running score, and under them what the choices of each frame cost as a bar; `most` pins fill it. */
export function scoreSheets(ended: BlockState, { ledger }: DebriefReport, most: number): string[] {
  return ended.balls.map((balls, index) => {
    const { frames, total, complete } = tally(ended.setup.scoring, balls)
    const costs = frames.map((_, frame) => {
      const sum = ledger.frames.find((one) => one.game === index + 1 && one.frame === frame + 1)
      return sum ? costCell(sum.chargedPins, most) : '<td class="cost"></td>'
    })
    const row = (cells: readonly string[]): string => `<tr>${cells.join('')}</tr>`
    return [
      '<table class="sheet">',
      `<caption>Game ${index + 1}: ${total}${complete ? '' : ' so far'}. The bars are what the choices cost, in pins.</caption>`,
      `<thead>${row(frames.map((_, frame) => `<th scope="col">${frame + 1}</th>`))}</thead><tbody>`,
      row(frames.map(({ symbols }) => `<td>${escaped(symbols.join(' '))}</td>`)),
      row(frames.map(({ cumulative }) => `<td>${cumulative ?? ''}</td>`)),
      row(costs),
      '</tbody></table>',
    ].join('')
  })
}

function costCell(pins: number, most: number): string {
  if (pins < 0.05) return '<td class="cost">–</td>'
  const rems = (BAR_REMS * Math.min(1, pins / most)).toFixed(2)
  return `<td class="cost">${pins.toFixed(1)}<span style="height:${rems}rem"></span></td>`
}
