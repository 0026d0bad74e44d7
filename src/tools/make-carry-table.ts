/**
 * Makes src/sim/analysis/carry/carry-table-data.ts: `npm run make:carry-table`. The number of throws a cell may be given for a
 * quick, coarse table: `npm run make:carry-table -- 60`. Takes some fifteen minutes of one core and uses all cores;
 * every cell has its own keyed racks, so the result depends neither on the machine nor on who throws which part.
 */
import { fork } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { EXIT } from '../scenarios/files/text/exit-codes.js'
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
import {
  type LeaveCounts,
  type SpareSample,
  sampleCarryCell,
  sampleSpare,
} from '../sim/analysis/carry/carry-sampling.js'
import { RACK_VERSION } from '../sim/world/pins/rack.js'

const ROWS = CARRY_SPEEDS_MPH.length * CARRY_ANGLES_DEGREES.length
const CURVES_A_PART = 20
const CURVE_PARTS = Math.ceil(CANONICAL_LEAVES.length / CURVES_A_PART)
/** Parts that workers throw one at a time: first the rows of one speed and angle, then some spare curves each. */
const PARTS = ROWS + CURVE_PARTS

type Part = readonly LeaveCounts[] | readonly (readonly SpareSample[])[]

function throwPart(part: number, throws: number): Part {
  if (part < ROWS) {
    const speed = Math.floor(part / CARRY_ANGLES_DEGREES.length)
    const angle = part % CARRY_ANGLES_DEGREES.length
    return CARRY_OFFSETS_INCHES.map((_, offset) => sampleCarryCell(speed, angle, offset, throws))
  }
  const first = (part - ROWS) * CURVES_A_PART
  return CANONICAL_LEAVES.slice(first, first + CURVES_A_PART).map((mask) =>
    SPARE_OFFSETS_INCHES.map((_, offset) => sampleSpare(mask, offset)),
  )
}

interface Thrown {
  readonly part: number
  readonly thrown: Part
}

/** Throws all parts in as many processes as there are cores. */
function throwAll(throws: number): Promise<Part[]> {
  const parts: Part[] = []
  let next = 0
  let done = 0
  return new Promise((resolve, reject) => {
    for (let core = 0; core < Math.min(availableParallelism(), PARTS); core++) {
      const helper = fork(fileURLToPath(import.meta.url), [String(throws)])
      const give = () => (next < PARTS ? helper.send(next++) : helper.disconnect())
      helper.on('error', reject)
      helper.on('message', ({ part, thrown }: Thrown) => {
        parts[part] = thrown
        done++
        process.stderr.write(`${done} of ${PARTS} parts thrown\n`)
        give()
        if (done === PARTS) resolve(parts)
      })
      give()
    }
  })
}

async function make(asked: string | undefined): Promise<void> {
  const throws = asked === undefined ? CARRY_THROWS : Number(asked)
  if (!Number.isInteger(throws) || throws < 1 || throws > CARRY_THROWS) {
    process.stderr.write(`throws a cell: found "${asked}", allowed a whole number from 1 to ${CARRY_THROWS}\n`)
    process.exitCode = EXIT.usage
    return
  }
  const parts = await throwAll(throws)
  const cells = parts.slice(0, ROWS).flat() as LeaveCounts[]
  const curves = parts.slice(ROWS).flat() as (readonly SpareSample[])[]
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
}

if (process.send === undefined) {
  await make(process.argv[2])
} else {
  const throws = Number(process.argv[2])
  process.on('message', (part: number) => process.send!({ part, thrown: throwPart(part, throws) }))
}
