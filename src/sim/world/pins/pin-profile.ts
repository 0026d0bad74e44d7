import { inchesToMetres } from '../../units.js'

/**
 * Outline of the pin as [height above base, radius] in inches: the governing body's drawing, from memory. Base, belly
 * (4.766 in at 4 1/2), neck (1.797 in at 10) and head (2.547 in) agree with published pin dimensions. Above 13 1/2 in
 * the head is an arc of radius 1.273 in.
 */
export const PIN_OUTLINE_INCHES: readonly (readonly [height: number, radius: number])[] = [
  [0, 1.0155],
  // biome-ignore lint/suspicious/noApproximativeNumericConstant: a measure off the drawing, not a root.
  [0.75, 1.414],
  [2.25, 1.953],
  [3.375, 2.255],
  [4.5, 2.383],
  [5.875, 2.2815],
  [7.25, 1.8515],
  [8.625, 1.236],
  [9.375, 0.9825],
  [10, 0.8985],
  [10.875, 0.935],
  [11.75, 1.047],
  [12.625, 1.203],
  [13.5, 1.2735],
]
export const PIN_HEIGHT_INCHES = 15
const HEAD_RADIUS_INCHES = 1.2735
const HEAD_CENTRE_INCHES = PIN_HEIGHT_INCHES - HEAD_RADIUS_INCHES

/** Slopes of the natural cubic spline through the outline, by Thomas's tridiagonal elimination. */
const SLOPES: readonly number[] = (() => {
  const count = PIN_OUTLINE_INCHES.length
  const heights = PIN_OUTLINE_INCHES.map(([height]) => height)
  const radii = PIN_OUTLINE_INCHES.map(([, radius]) => radius)
  const width = (index: number): number => heights[index + 1]! - heights[index]!
  const rise = (index: number): number => (radii[index + 1]! - radii[index]!) / width(index)
  const upper = new Array<number>(count).fill(0)
  const right = new Array<number>(count).fill(0)
  for (let index = 0; index < count; index++) {
    const before = index > 0 ? 1 / width(index - 1) : 0
    const after = index < count - 1 ? 1 / width(index) : 0
    const sum = 3 * ((index > 0 ? rise(index - 1) * before : 0) + (index < count - 1 ? rise(index) * after : 0))
    const pivot = 2 * (before + after) - before * (index > 0 ? upper[index - 1]! : 0)
    upper[index] = after / pivot
    right[index] = (sum - before * (index > 0 ? right[index - 1]! : 0)) / pivot
  }
  const slopes = [...right]
  for (let index = count - 2; index >= 0; index--) slopes[index]! -= upper[index]! * slopes[index + 1]!
  return slopes
})()

/** Radius of the pin at a height above its base, both in inches; 0 outside the pin. */
export function pinRadiusInches(height: number): number {
  if (height < 0 || height > PIN_HEIGHT_INCHES) return 0
  const last = PIN_OUTLINE_INCHES.length - 1
  if (height > PIN_OUTLINE_INCHES[last]![0]) {
    const above = height - HEAD_CENTRE_INCHES
    return Math.sqrt(Math.max(0, HEAD_RADIUS_INCHES * HEAD_RADIUS_INCHES - above * above))
  }
  let index = 0
  while (index < last - 1 && height > PIN_OUTLINE_INCHES[index + 1]![0]) index++
  const [low, lowRadius] = PIN_OUTLINE_INCHES[index]!
  const [high, highRadius] = PIN_OUTLINE_INCHES[index + 1]!
  const width = high - low
  const along = (height - low) / width
  const rest = 1 - along
  return (
    lowRadius * rest * rest * (1 + 2 * along) +
    highRadius * along * along * (1 + 2 * rest) +
    width * along * rest * (SLOPES[index]! * rest - SLOPES[index + 1]! * along)
  )
}

export interface SolidOfRevolution {
  readonly volumeCubicMetres: number
  readonly centreOfGravityMetres: number
  /** About the long axis. */
  readonly axialGyrationMetres: number
  /** About a cross axis through the centre of gravity. */
  readonly transverseGyrationMetres: number
}

/** Mass properties of the pin's outline turned as a solid of one density, by Simpson's rule over discs. */
export function turnPin(slices = 3000): SolidOfRevolution {
  const step = PIN_HEIGHT_INCHES / slices
  let area = 0
  let first = 0
  let second = 0
  let fourth = 0
  for (let index = 0; index <= slices; index++) {
    const weight = index === 0 || index === slices ? 1 : index % 2 === 1 ? 4 : 2
    const height = index * step
    const radius = pinRadiusInches(height)
    const disc = weight * radius * radius
    area += disc
    first += disc * height
    second += disc * height * height
    fourth += disc * radius * radius
  }
  const centre = first / area
  const axialSquare = fourth / area / 2
  const transverseSquare = fourth / area / 4 + second / area - centre * centre
  return {
    volumeCubicMetres: Math.PI * area * (step / 3) * inchesToMetres(1) * inchesToMetres(1) * inchesToMetres(1),
    centreOfGravityMetres: inchesToMetres(centre),
    axialGyrationMetres: inchesToMetres(Math.sqrt(axialSquare)),
    transverseGyrationMetres: inchesToMetres(Math.sqrt(transverseSquare)),
  }
}
