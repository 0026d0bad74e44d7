import { bytesToText, textToBytes } from './byte-text.js'
import type { LeaveCounts, SpareSample } from './carry-sampling.js'

/**
 * Cells one after another: a byte with the number of leaves, then for each a two-byte mask and a byte with its count
 * less one.
 */
export function encodeCells(cells: readonly LeaveCounts[]): string {
  const bytes: number[] = []
  for (const leaves of cells) {
    bytes.push(leaves.length)
    for (const [mask, count] of leaves) bytes.push(mask & 255, mask >> 8, count - 1)
  }
  return bytesToText(Uint8Array.from(bytes))
}

export interface CarryCells {
  /** Where each cell's leaves start; one more entry than cells. */
  readonly start: Int32Array
  readonly mask: Uint16Array
  readonly probability: Float64Array
}

/** Unpacks `cellCount` cells; throws RangeError when the text does not hold exactly that many. */
export function decodeCells(text: string, cellCount: number): CarryCells {
  const bytes = textToBytes(text)
  const start = new Int32Array(cellCount + 1)
  const total = (bytes.length - cellCount) / 3
  const mask = new Uint16Array(total)
  const probability = new Float64Array(total)
  let at = 0
  let leave = 0
  for (let cell = 0; cell < cellCount; cell++) {
    const count = bytes[at++]!
    let throws = 0
    const first = leave
    for (let index = 0; index < count; index++, at += 3) {
      mask[leave] = bytes[at]! | (bytes[at + 1]! << 8)
      probability[leave] = bytes[at + 2]! + 1
      throws += probability[leave]!
      leave++
    }
    for (let index = first; index < leave; index++) probability[index]! /= throws
    start[cell + 1] = leave
  }
  if (at !== bytes.length || leave !== total) {
    throw new RangeError(`the carry table ends after ${bytes.length} bytes where its ${cellCount} cells take ${at}`)
  }
  return { start, mask, probability }
}

/** Curves one after another: the first offset that fells a pin, how many offsets follow, then two bytes for each. */
export function encodeSpares(curves: readonly (readonly SpareSample[])[]): string {
  const bytes: number[] = []
  for (const curve of curves) {
    const hits = curve.map((sample) => sample.pins > 0)
    const first = Math.max(0, hits.indexOf(true))
    const length = hits.lastIndexOf(true) + 1 - first
    bytes.push(first, length)
    for (const { conversions, pins } of curve.slice(first, first + length)) bytes.push(conversions, pins)
  }
  return bytesToText(Uint8Array.from(bytes))
}

/** Unpacks `curveCount` curves of `offsetCount` samples; throws RangeError when the text does not hold them. */
export function decodeSpares(text: string, curveCount: number, offsetCount: number): SpareSample[][] {
  const bytes = textToBytes(text)
  let at = 0
  const curves = Array.from({ length: curveCount }, () => {
    const first = bytes[at]!
    const length = bytes[at + 1]!
    at += 2
    const curve = Array.from({ length: offsetCount }, (_, offset) => {
      if (offset < first || offset >= first + length) return { conversions: 0, pins: 0 }
      const place = at + (offset - first) * 2
      return { conversions: bytes[place]!, pins: bytes[place + 1]! }
    })
    at += length * 2
    return curve
  })
  if (at !== bytes.length) {
    throw new RangeError(`the spare curves end after ${bytes.length} bytes where ${curveCount} of them take ${at}`)
  }
  return curves
}
