import { dayOf } from './period.js'
import type { ReviewedBlock } from './reviewed-block.js'

const HEADER = [
  'player',
  'record',
  'day',
  'scenario',
  'seed',
  'game',
  'frame',
  'ball',
  'kind',
  'thrown ball',
  'thrown slide',
  'thrown target',
  'thrown speed',
  'thrown release',
  'best ball',
  'best slide',
  'best target',
  'best speed',
  'best release',
  'left',
  'cost',
  'cost against the best with the oil seen',
]

type Thrown = ReviewedBlock['report']['throws'][number]['decision']

/** One line a priced throw of the player's own (RFC 4180), for a spreadsheet. */
export function reviewCsv(blocks: readonly ReviewedBlock[]): string[] {
  const rows = blocks.flatMap((block) =>
    block.report.throws.flatMap((one) =>
      one.fair && one.counted
        ? [
            [
              block.player,
              block.path,
              dayOf(block) ?? '',
              block.report.scenario,
              block.report.seed,
              one.game,
              one.frame,
              one.ball,
              one.kind,
              ...columnsOf(one.decision),
              ...columnsOf(one.fair.best),
              leaveText(one.standingAfter),
              one.fair.givenAwayPins,
              one.known?.givenAwayPins ?? '',
            ],
          ]
        : [],
    ),
  )
  return [HEADER, ...rows].map((row) => row.map(field).join(','))
}

const columnsOf = ({ ball, feet, target, speed, release }: Thrown) => [ball, feet, target, speed, release]

/** With a word before it, which no spreadsheet takes for a date as it does 3-10. */
function leaveText(standing: readonly number[]): string {
  if (standing.length === 0) return 'all down'
  return `${standing.length === 1 ? 'pin' : 'pins'} ${standing.join('-')}`
}

/** Quoted where it has to be; a text that a spreadsheet would take for a formula is set off by an apostrophe. */
function field(value: string | number): string {
  const text = typeof value === 'string' && /^[=+@\t-]/.test(value) ? `'${value}` : String(value)
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
