import { choiceWords } from './markdown.js'
import type { ReviewedBlock } from './reviewed-block.js'

const HEADER = [
  'player',
  'record',
  'scenario',
  'seed',
  'game',
  'frame',
  'ball',
  'kind',
  'thrown',
  'best',
  'left',
  'cost',
  'short of the best, oil seen',
]

/** One line a priced throw (RFC 4180), for a spreadsheet. */
export function reviewCsv(blocks: readonly ReviewedBlock[]): string[] {
  const rows = blocks.flatMap(({ player, path, report }) =>
    report.throws.flatMap((one) =>
      one.fair && one.counted
        ? [
            [
              player,
              path,
              report.scenario,
              report.seed,
              one.game,
              one.frame,
              one.ball,
              one.kind,
              choiceWords(one.decision),
              choiceWords(one.fair.best),
              one.standingAfter.join('-'),
              one.fair.givenAwayPins,
              one.known?.givenAwayPins ?? '',
            ],
          ]
        : [],
    ),
  )
  return [HEADER, ...rows].map((row) => row.map(field).join(','))
}

/** Quoted where it has to be; a text that a spreadsheet would take for a formula is set off by an apostrophe. */
function field(value: string | number): string {
  const text = typeof value === 'string' && /^[=+@\t-]/.test(value) ? `'${value}` : String(value)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
