import { describe, expect, it } from 'vitest'
import { bytesToText, textToBytes } from '../../../../src/sim/analysis/carry/byte-text.js'
import {
  decodeCells,
  decodeSpares,
  encodeCells,
  encodeSpares,
} from '../../../../src/sim/analysis/carry/carry-format.js'
import {
  CANONICAL_LEAVES,
  CARRY_ANGLES_RADIANS,
  CARRY_CELLS,
  CARRY_OFFSETS_METRES,
  CARRY_SPEEDS_METRES_PER_SECOND,
  CARRY_THROWS,
  carryCell,
  carryFingerprint,
  SPARE_OFFSETS_INCHES,
} from '../../../../src/sim/analysis/carry/carry-grid.js'
import { sampleCarryCell, sampleSpare } from '../../../../src/sim/analysis/carry/carry-sampling.js'
import { carryDistribution, newCarryDistribution } from '../../../../src/sim/analysis/carry/carry-table.js'
import {
  CARRY_CELLS_TEXT,
  CARRY_TABLE,
  SPARE_CURVES_TEXT,
} from '../../../../src/sim/analysis/carry/carry-table-data.js'
import { spareCurveAt, spareOdds } from '../../../../src/sim/analysis/carry/spare-odds.js'
import {
  boardsToMetres,
  degreesToRadians,
  inchesToMetres,
  metresToInches,
  mphToMetresPerSecond,
} from '../../../../src/sim/units.js'
import { countPins, FULL_RACK, maskOf, mirrorMask } from '../../../../src/sim/world/pins/leaves.js'
import { RACK_VERSION } from '../../../../src/sim/world/pins/rack.js'
import { manyThrows, strikeShare, throwOf } from '../../world/pins/rack-numbers.js'

const dense = (board: number, angleDegrees: number, mph: number): Float64Array => {
  const read = newCarryDistribution()
  const chances = new Float64Array(FULL_RACK + 1)
  carryDistribution(boardsToMetres(20 - board), degreesToRadians(angleDegrees), mphToMetresPerSecond(mph), read)
  for (let index = 0; index < read.count; index++) chances[read.mask[index]!]! += read.chance[index]!
  return chances
}

describe('the committed table', () => {
  it('was made with these physics, materials and grids', () => {
    expect(CARRY_TABLE.rackVersion).toBe(RACK_VERSION)
    expect(CARRY_TABLE.fingerprint).toBe(carryFingerprint())
    expect(CARRY_TABLE.throws).toBe(CARRY_THROWS)
  })

  it('comes out the same when cells are thrown again', () => {
    const cells = decodeCells(CARRY_CELLS_TEXT, CARRY_CELLS)
    for (const [speed, angle, offset] of [
      [0, 5, 60],
      [1, 0, 40],
      [1, 6, 58],
    ] as const) {
      const again = sampleCarryCell(speed, angle, offset, CARRY_THROWS)
      const cell = carryCell(speed, angle, offset)
      const start = cells.start[cell]!
      expect(cells.start[cell + 1]! - start).toBe(again.length)
      for (const [index, [mask, count]] of again.entries()) {
        expect(cells.mask[start + index]).toBe(mask)
        expect(cells.probability[start + index]! * CARRY_THROWS).toBeCloseTo(count, 9)
      }
    }
  })

  it('comes out the same when spares are thrown again', () => {
    const curves = decodeSpares(SPARE_CURVES_TEXT, CANONICAL_LEAVES.length, SPARE_OFFSETS_INCHES.length)
    for (const pins of [[7], [2, 7], [4, 6, 7, 10], [1, 2, 4, 7]]) {
      const mask = maskOf(pins)
      const at = CANONICAL_LEAVES.indexOf(Math.min(mask, mirrorMask(mask)))
      for (let offset = 0; offset < SPARE_OFFSETS_INCHES.length; offset += 5)
        expect(curves[at]![offset]).toEqual(sampleSpare(CANONICAL_LEAVES[at]!, offset))
    }
  })

  it('packs and unpacks without loss', () => {
    const bytes = Uint8Array.from({ length: 1000 }, (_, index) => (index * 151 + (index >> 3)) & 255)
    for (const length of [0, 1, 2, 3, 998, 999, 1000]) {
      // Base64 of the platform (RFC 4648) as the other party.
      const part = bytes.subarray(0, length)
      expect(bytesToText(part)).toBe(Buffer.from(part).toString('base64'))
      expect(textToBytes(bytesToText(part))).toEqual(part)
    }
    expect(() => textToBytes('ab*d')).toThrow('character 3')
    const text = encodeCells([
      [
        [0, 200],
        [512, 56],
      ],
      [[1023, 256]],
    ])
    const { mask, probability } = decodeCells(text, 2)
    expect([...mask]).toEqual([0, 512, 1023])
    expect([...probability]).toEqual([200 / 256, 56 / 256, 1])
    expect(() => decodeCells(text, 1)).toThrow(RangeError)
    const curve = [0, 0, 3, 9, 0].map((pins) => ({ conversions: pins > 5 ? 4 : 0, pins }))
    expect(decodeSpares(encodeSpares([curve, curve]), 2, 5)).toEqual([curve, curve])
    expect(() => decodeSpares(encodeSpares([curve]), 2, 5)).toThrow(RangeError)
  })
})

describe('reading the table', () => {
  it('gives chances that add up to one, everywhere', () => {
    for (const board of [-5, 0.4, 3, 12.2, 17.3, 20, 28.8, 39.6, 50])
      for (const angle of [-9, -3.3, 0, 2.5, 8, 12])
        for (const mph of [8, 13.5, 16.1, 17.5, 25]) {
          const chances = dense(board, angle, mph)
          expect(chances.reduce((sum, chance) => sum + chance, 0)).toBeCloseTo(1, 9)
        }
  })

  it('mirrors a ball that moves to the right', () => {
    const left = dense(17.3, 4.4, 16)
    const right = dense(22.7, -4.4, 16)
    for (let mask = 0; mask <= FULL_RACK; mask++) expect(right[mirrorMask(mask)]).toBeCloseTo(left[mask]!, 12)
  })

  it('gives a cell itself at its own place', () => {
    const cells = decodeCells(CARRY_CELLS_TEXT, CARRY_CELLS)
    const read = newCarryDistribution()
    const [speed, angle, offset] = [1, 4, 57]
    carryDistribution(
      CARRY_OFFSETS_METRES[offset]!,
      CARRY_ANGLES_RADIANS[angle]!,
      CARRY_SPEEDS_METRES_PER_SECOND[speed]!,
      read,
    )
    const cell = carryCell(speed, angle, offset)
    const strike = [...read.mask.subarray(0, read.count)].indexOf(0)
    const there = [...cells.mask.subarray(cells.start[cell], cells.start[cell + 1])].indexOf(0)
    expect(read.chance[strike]).toBeCloseTo(cells.probability[cells.start[cell]! + there]!, 12)
  })

  it('agrees with throws between its cells', () => {
    // 1000 live throws have a standard error of 1.6 points at most; a cell of 256 throws 3, less after interpolation.
    for (const [board, angle, mph] of [
      [17.6, 5.4, 16.2],
      [16.7, 4.5, 15.5],
      [18.8, 3.5, 17],
    ] as const) {
      const live = strikeShare(manyThrows(throwOf(board, angle, mph), `between ${board}`, 1000))
      expect(Math.abs(dense(board, angle, mph)[0]! - live)).toBeLessThan(0.07)
    }
  })

  it('leaves everything when the ball is in the gutter', () => {
    expect(dense(-3, 1, 16)[FULL_RACK]).toBe(1)
    expect(dense(42, -1, 16)[FULL_RACK]).toBe(1)
  })
})

describe('spare odds', () => {
  it('match the geometry of a lone pin', () => {
    // Geometry: ball and belly radii 4.2755 + 2.383 in make a window of 13.3 in; a normal spread of sigma hits it with
    // chance 2 Phi(6.66 / sigma) - 1.
    const middle = spareOdds(maskOf([5]), inchesToMetres(4))
    expect(Math.abs(middle.conversion - 0.904)).toBeLessThan(0.02)
    expect(Math.abs(metresToInches(middle.bestOffsetMetres))).toBeLessThan(0.6)
    expect(spareOdds(maskOf([5]), inchesToMetres(1)).conversion).toBeGreaterThan(0.999)
    // A corner pin has the window from 11.3 in to the lane's edge at 20.75 in: sigma 2 in about its middle, 0.98.
    const corner = spareOdds(maskOf([10]), inchesToMetres(2))
    expect(Math.abs(corner.conversion - 0.982)).toBeLessThan(0.02)
    expect(Math.abs(metresToInches(corner.bestOffsetMetres) - 16)).toBeLessThan(1)
  })

  it('are the mirror image for the mirror image', () => {
    for (const pins of [[10], [3, 6, 10], [2, 8], [5, 7], [1, 2, 4, 10]]) {
      const mask = maskOf(pins)
      const one = spareOdds(mask, 0.05)
      const other = spareOdds(mirrorMask(mask), 0.05)
      expect(other.conversion).toBeCloseTo(one.conversion, 9)
      expect(other.missPins).toBeCloseTo(one.missPins, 9)
      expect(spareCurveAt(mirrorMask(mask), -0.12).meanPins).toBeCloseTo(spareCurveAt(mask, 0.12).meanPins, 9)
    }
  })

  it('order leaves as televised matches do', () => {
    // ESPN The Magazine, Feb 2011, televised matches 2005-10: 10 pin 95.9 %, 7 pin 95.5 %, 9 pin 98.9 %, 3-10 48.6 %
    // (17 of 35), 4-6-7-10 1 of 30, 7-10 0 of 53.
    const spread = inchesToMetres(2)
    const chance = (pins: number[]): number => spareOdds(maskOf(pins), spread).conversion
    expect(chance([9])).toBeGreaterThan(chance([10]))
    expect(chance([10])).toBeCloseTo(chance([7]), 9)
    expect(chance([10])).toBeGreaterThan(chance([3, 10]))
    expect(chance([3, 10])).toBeGreaterThan(0.3)
    expect(chance([4, 6, 7, 10])).toBeLessThan(0.07)
    expect(chance([7, 10])).toBeLessThan(0.02)
  })

  it('never expect more pins than stand, nor fewer than none, at any leave', () => {
    for (let mask = 1; mask <= FULL_RACK; mask += 7) {
      const { conversion, missPins } = spareOdds(mask, 0.05)
      expect(conversion).toBeGreaterThanOrEqual(0)
      expect(conversion).toBeLessThanOrEqual(1)
      expect(missPins).toBeGreaterThanOrEqual(0)
      expect(missPins).toBeLessThan(countPins(mask))
    }
    expect(spareOdds(0, 0.05).conversion).toBe(1)
    expect(() => spareOdds(1024, 0.05)).toThrow(RangeError)
  })
})
