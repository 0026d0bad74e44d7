import { type EvidenceLook, evidenceHead, evidenceLines } from '../../../scenarios/practice/shown-lines.js'
import { beside } from '../../draw/layout.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'
import type { PracticeState } from '../../state/practice-state.js'
import { columnsOf, wrapWords } from '../../terminal/fit.js'

/** What gives way, in this order, where there is little room: the speeds, the lane's height, the hint, the heading, the oldest throws. */
export interface Squeeze {
  readonly laneRows: number
  readonly hint: boolean
  readonly head: boolean
  readonly throws: number
  readonly look: EvidenceLook
}
const ALL: Squeeze = { laneRows: 6, hint: true, head: true, throws: 99, look: 'figures' }
const TIGHT: Squeeze = { ...ALL, look: 'tight' }
export const SQUEEZES: readonly Squeeze[] = [
  ALL,
  TIGHT,
  { ...TIGHT, laneRows: 4 },
  { ...TIGHT, laneRows: 4, hint: false },
  { ...TIGHT, laneRows: 3, hint: false },
  { ...TIGHT, laneRows: 3, hint: false, head: false },
  { ...TIGHT, laneRows: 3, hint: false, head: false, throws: 6 },
  { ...TIGHT, laneRows: 3, hint: false, head: false, throws: 4 },
]

const EVIDENCE_GAP = 2
/** First balls tell little of a spare: the latest are enough. */
const SPARE_THROWS = 3

/** Every first ball on this lane, in as many columns as fit; the last, told at more length, in a row of its own where it would spoil them. */
export function evidenceRows(
  { open, stage }: PracticeState,
  squeeze: Squeeze,
  columns: number,
  theme: Theme,
): string[] {
  if (!open || (stage.kind === 'told' && stage.said)) return []
  const isSpare = open.position.kind === 'decide' && open.position.skill === 'spare'
  const lines = evidenceLines(open, squeeze.look).slice(
    -Math.min(squeeze.throws, isSpare ? SPARE_THROWS : squeeze.throws),
  )
  const earlier = lines.slice(0, -1)
  const isLastApart = earlier.length > 1 && acrossOf(earlier, columns) > acrossOf(lines, columns)
  const listed = isLastApart ? earlier : lines
  const width = widthOf(listed)
  const rows = Math.ceil(listed.length / acrossOf(listed, columns))
  const inColumns = Array.from({ length: acrossOf(listed, columns) }, (_, at) =>
    listed.slice(at * rows, (at + 1) * rows),
  ).filter((list) => list.length > 0)
  const inked = inColumns.map((list, column) =>
    list.map((line, row) => textRow(theme, [line, column * rows + row === lines.length - 1 ? 'strong' : 'plain'])),
  )
  const [first = [], ...others] = inked
  return [
    ...(squeeze.head ? wrapWords(evidenceHead(open, squeeze.look), columns) : []).map((row) =>
      textRow(theme, [row, 'faint']),
    ),
    ...others.reduce((left, right, at) => beside(left, width * (at + 1), right), first),
    ...(isLastApart ? [textRow(theme, [lines.at(-1)!, 'strong'])] : []),
  ]
}

const widthOf = (lines: readonly string[]): number => Math.max(...lines.map(columnsOf)) + EVIDENCE_GAP

const acrossOf = (lines: readonly string[], columns: number): number =>
  Math.max(1, Math.floor((columns + EVIDENCE_GAP) / widthOf(lines)))
