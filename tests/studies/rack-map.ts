import { decodeCells } from '../../src/sim/analysis/carry/carry-format.js'
import {
  CARRY_ANGLES_DEGREES,
  CARRY_CELLS,
  CARRY_OFFSETS_INCHES,
  CARRY_SPEEDS_MPH,
  carryCell,
} from '../../src/sim/analysis/carry/carry-grid.js'
import { CARRY_CELLS_TEXT } from '../../src/sim/analysis/carry/carry-table-data.js'
import { spareCurveAt } from '../../src/sim/analysis/carry/spare-odds.js'
import { drawNormal, stream } from '../../src/sim/random.js'
import { boardsToMetres, inchesToMetres, metresToBoards } from '../../src/sim/units.js'
import { leaveName, maskOf } from '../../src/sim/world/pins/leaves.js'
import { throwAtRack } from '../../src/sim/world/pins/rack.js'
import { manyThrows, rackNumber, strikeShare, tallied, throwOf } from '../sim/world/pins/rack-numbers.js'

const BOARDS = Array.from({ length: 25 }, (_, index) => 14 + index * 0.5)
const ANGLES = [0, 1, 2, 3, 4, 5, 6, 7, 8]
const BEST_CELLS = 8
const THROWS_AGAIN = 1000
const CROSSOVER_BOARD = 22.5
/** Clouds about the pocket that owe nothing to a lane: standard deviations of board, at 5 and 6 degrees. */
const CLOUDS = [
  [1.1, 5],
  [1.5, 6],
  [2.2, 5],
  [3, 6],
] as const
const CLOUD_THROWS = 6000
/** Leaves with a published share, then those that are common by practice only. */
const WATCHED = [
  [10],
  [7],
  [9],
  [3, 10],
  [7, 10],
  [4, 6, 7, 10],
  [8],
  [4],
  [4, 9],
  [2, 4, 5, 8],
  [1, 2, 10],
  [1, 2, 4, 10],
] as const
const CLIFFS = [[3, 6, 7, 10], [3, 10], [2, 8], [3, 6, 10], [10]] as const

const percent = (share: number): string => (100 * share).toFixed(1)

/** Strikes by board and angle, best cells, crossover, leaves of clouds about the pocket and cliffs of spares (minutes). */
export function run(): void {
  console.log(`strike % at 17.5 mph; board by angle\n      ${ANGLES.map((angle) => `${angle}°`.padStart(5)).join('')}`)
  for (const board of BOARDS) {
    const shares = ANGLES.map((angle) => strikeShare(manyThrows(throwOf(board, angle), `map ${board} ${angle}`, 150)))
    console.log(board.toFixed(1).padStart(6) + shares.map((share) => (100 * share).toFixed(0).padStart(5)).join(''))
  }
  printBestCells()
  const crossover = [3, 5, 6].map((angle) => {
    const throws = manyThrows(throwOf(CROSSOVER_BOARD, angle), `crossover ${angle}`, THROWS_AGAIN)
    return `${percent(strikeShare(throws))} at ${angle}°`
  })
  console.log(`\ncrossover at board ${CROSSOVER_BOARD}, strikes % (± 1.5): ${crossover.join(', ')}`)
  for (const [spreadBoards, angle] of CLOUDS) printCloud(spreadBoards, angle)
  console.log('\nspare curves: conversion % of a straight ball, half a board apart, about the steepest fall')
  for (const pins of CLIFFS) printCliff(pins)
}

/** The table's cells with most strikes, and the same balls at other racks, free of the luck that picked them. */
function printBestCells(): void {
  const cells = decodeCells(CARRY_CELLS_TEXT, CARRY_CELLS)
  const all = CARRY_SPEEDS_MPH.flatMap((mph, speed) =>
    CARRY_ANGLES_DEGREES.flatMap((degrees, angle) =>
      CARRY_OFFSETS_INCHES.map((inches, offset) => {
        const cell = carryCell(speed, angle, offset)
        let share = 0
        for (let at = cells.start[cell]!; at < cells.start[cell + 1]!; at++)
          if (cells.mask[at] === 0) share = cells.probability[at]!
        return { mph, degrees, board: 20 - metresToBoards(inchesToMetres(inches)), share }
      }),
    ),
  )
  console.log('\nbest cells of the table, strikes % there and at 1000 other racks (± 0.6)')
  for (const { mph, degrees, board, share } of all.sort((a, b) => b.share - a.share).slice(0, BEST_CELLS)) {
    const again = manyThrows(throwOf(board, degrees, mph), `again ${mph} ${degrees} ${board}`, THROWS_AGAIN)
    console.log(
      `  board ${board.toFixed(2)}, ${degrees}°, ${mph} mph: ${percent(share)}, ${percent(strikeShare(again))}`,
    )
  }
}

function printCloud(spreadBoards: number, meanAngle: number): void {
  const draw = stream({ seed: 'rack-map', game: 0, frame: 0, ball: 1, purpose: 'study' })
  const leaves = Array.from({ length: CLOUD_THROWS }, (_, k) => {
    const board = 17.6 + spreadBoards * drawNormal(draw)
    const angle = meanAngle + 0.6 * drawNormal(draw)
    return throwAtRack(throwOf(board, angle, 16.5), rackNumber('mixed', k)).standing
  })
  const left = leaves.filter((mask) => mask !== 0)
  const shares = new Map(tallied(left))
  const watched = WATCHED.map((pins) => {
    const share = shares.get(maskOf(pins)) ?? 0
    return `${leaveName(maskOf(pins))} ${percent(share)} ± ${percent(Math.sqrt((share * (1 - share)) / left.length))}`
  })
  console.log(
    `\nboards N(17.6, ${spreadBoards}), angles N(${meanAngle}, 0.6), 16.5 mph: strikes ${percent(1 - left.length / leaves.length)} %; of the rest, %:\n  ${watched.join(', ')}`,
  )
}

function printCliff(pins: readonly number[]): void {
  const halfBoard = boardsToMetres(0.5)
  const curve = Array.from(
    { length: 79 },
    (_, index) => spareCurveAt(maskOf(pins), (index - 39) * halfBoard).conversion,
  )
  let steepest = 1
  for (let at = 1; at < curve.length - 1; at++)
    if (Math.abs(curve[at]! - curve[at - 1]!) > Math.abs(curve[steepest]! - curve[steepest - 1]!)) steepest = at
  const near = curve.slice(Math.max(0, steepest - 4), steepest + 4).map((share) => (100 * share).toFixed(0))
  console.log(`  ${leaveName(maskOf(pins))}: ${near.join(' ')}`)
}
