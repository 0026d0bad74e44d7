import { z } from 'zod'
import { sentenceIssue } from '../text/problems.js'
import { line, listOf, numberFrom, oneOf, range, table, wholeFrom } from './fields.js'

const BOARDS = 39
const board = wholeFrom(1, BOARDS)
const BOARDS_WORDS =
  'two boards from 1 to 39 counted from the right edge, or as on a sheet from either edge, such as 2L-2R'
const EITHER_EDGE = /^\s*([1-9]|[12]\d|3\d)\s*([LR])\s*-\s*([1-9]|[12]\d|3\d)\s*([LR])\s*$/i

/** Boards as an operator reads them off a sheet, each from its own edge, left one first: "2L-2R". As [right, left] from the right edge. */
const sheetBoards = z
  .string({ error: () => BOARDS_WORDS })
  .regex(EITHER_EDGE, BOARDS_WORDS)
  .transform((text): [number, number] => {
    const [, left, leftEdge, right, rightEdge] = EITHER_EDGE.exec(text)!
    return [fromRight(Number(right), rightEdge!), fromRight(Number(left), leftEdge!)]
  })

const fromRight = (count: number, edge: string): number => (edge.toUpperCase() === 'R' ? count : BOARDS + 1 - count)
const countedBoards = z.tuple([board, board], { error: () => BOARDS_WORDS })

/** One run of the oil machine's head along the lane, as an operator reads it off a sheet. */
const oilPass = table(
  {
    direction: oneOf('forward', 'reverse'),
    boards: z.union([countedBoards, sheetBoards], { error: () => BOARDS_WORDS }),
    microlitresPerBoard: numberFrom(0.1, 1000, 'microlitres'),
    fromFeet: numberFrom(0, 60, 'feet'),
    toFeet: numberFrom(0, 60, 'feet'),
    taperFeet: numberFrom(0, 60, 'feet').default(0),
    strokes: wholeFrom(1, 20).default(1),
  },
  'one pass of the oil machine',
).superRefine((pass, context) => {
  const [right, left] = pass.boards
  if (left < right) {
    context.addIssue(
      sentenceIssue(
        ['boards'],
        `Boards run from the right: write [${left}, ${right}], or ${BOARDS + 1 - right}L-${left}R as on a sheet.`,
      ),
    )
  }
  if (pass.fromFeet >= pass.toFeet) {
    context.addIssue(
      sentenceIssue(
        ['toFeet'],
        `The pass ends at ${pass.toFeet} feet but begins at ${pass.fromFeet}; fromFeet is the end nearer the foul line in both directions.`,
      ),
    )
  } else if (pass.taperFeet > pass.toFeet - pass.fromFeet) {
    context.addIssue(
      sentenceIssue(
        ['taperFeet'],
        `The brush runs dry over ${pass.taperFeet} feet, but the pass is only ${pass.toFeet - pass.fromFeet} feet long.`,
      ),
    )
  }
})

/** Bounds within which the seed draws a pattern nobody has seen. */
const drawnOil = table(
  {
    lengthFeet: range(32, 48, 'feet'),
    volumeMillilitres: range(18, 32, 'millilitres'),
    ratio: range(1.5, 12, '(inside oil over outside oil)'),
    symmetric: oneOf('yes', 'no', 'either').default('yes'),
  },
  'bounds for a drawn pattern',
)

const laneTable = table(
  {
    name: line(40),
    passes: listOf(oilPass, 1, 40, 'passes').optional(),
    drawn: drawnOil.optional(),
  },
  'a lane',
).superRefine((lane, context) => {
  if ((lane.passes === undefined) === (lane.drawn === undefined)) {
    const both = lane.passes !== undefined
    context.addIssue(
      sentenceIssue([], `A lane has either passes or a drawn pattern; this one has ${both ? 'both' : 'neither'}.`),
    )
  }
})

export const lanes = listOf(laneTable, 1, 2, 'lanes')
export type PassData = z.output<typeof oilPass>
export type LaneData = z.output<typeof laneTable>
