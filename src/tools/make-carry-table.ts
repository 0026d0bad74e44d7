/**
 * Makes src/sim/analysis/carry/carry-table-data.ts: `npm run make:carry-table`. The number of throws a cell may be given for a
 * quick, coarse table: `npm run make:carry-table -- 60`. Takes some ten minutes on one core; every cell has its own
 * keyed racks, so the result does not depend on the machine.
 */
import { writeFileSync } from 'node:fs'
import { encodeCells, encodeSpares } from '../sim/analysis/carry/carry-format.js'
import {
  CANONICAL_LEAVES,
  CARRY_ANGLES_DEGREES,
  CARRY_OFFSETS_INCHES,
  CARRY_SPEEDS_MPH,
  CARRY_THROWS,
  carryFingerprint,
  SPARE_OFFSETS_INCHES,
} from '../sim/analysis/carry/carry-grid.js'
import { type LeaveCounts, sampleCarryCell, sampleSpare } from '../sim/analysis/carry/carry-sampling.js'
import { RACK_VERSION } from '../sim/world/pins/rack.js'

const asked = process.argv[2]
const throws = asked === undefined ? CARRY_THROWS : Number(asked)
if (!Number.isInteger(throws) || throws < 1 || throws > CARRY_THROWS) {
  process.stderr.write(`throws a cell: found "${asked}", allowed a whole number from 1 to ${CARRY_THROWS}\n`)
  process.exit(1)
}

const cells: LeaveCounts[] = []
for (const speed of CARRY_SPEEDS_MPH.keys()) {
  for (const angle of CARRY_ANGLES_DEGREES.keys()) {
    for (const offset of CARRY_OFFSETS_INCHES.keys()) cells.push(sampleCarryCell(speed, angle, offset, throws))
    process.stderr.write(`full rack: ${CARRY_SPEEDS_MPH[speed]} mph, ${CARRY_ANGLES_DEGREES[angle]} degrees done\n`)
  }
}

const curves = CANONICAL_LEAVES.map((mask, index) => {
  if (index % 50 === 0) process.stderr.write(`spares: ${index} of ${CANONICAL_LEAVES.length}\n`)
  return SPARE_OFFSETS_INCHES.map((_, offset) => sampleSpare(mask, offset))
})

writeFileSync(
  new URL('../sim/analysis/carry/carry-table-data.ts', import.meta.url),
  [
    '// Made by `npm run make:carry-table`; not edited by hand.',
    `export const CARRY_TABLE = { rackVersion: ${RACK_VERSION}, fingerprint: ${carryFingerprint()}, throws: ${throws} } as const`,
    `export const CARRY_CELLS_TEXT =\n  '${encodeCells(cells)}'`,
    `export const SPARE_CURVES_TEXT =\n  '${encodeSpares(curves)}'`,
    '',
  ].join('\n'),
)
