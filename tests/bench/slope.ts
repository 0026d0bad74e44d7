import { linearRegression, linearRegressionLine } from 'simple-statistics'

/** 97.5 % quantile of the standard normal distribution. */
const Z = 1.959964

/**
 * 97.5 % quantile of Student's t by its expansion about the normal one (Abramowitz and Stegun, Handbook of Mathematical
 * Functions, 26.7.5), good to 0.01 from four degrees of freedom on.
 */
function studentQuantile(freedom: number): number {
  const first = (Z ** 3 + Z) / 4
  const second = (5 * Z ** 5 + 16 * Z ** 3 + 3 * Z) / 96
  const third = (3 * Z ** 7 + 19 * Z ** 5 + 17 * Z ** 3 - 15 * Z) / 384
  return Z + first / freedom + second / freedom ** 2 + third / freedom ** 3
}

/** Slope of a straight line by least squares, with the half width of its 95 % interval. */
export function slopeOf(points: readonly (readonly [number, number])[]): { slope: number; halfWidth: number } {
  const data = points.map((point) => [...point])
  const fitted = linearRegression(data)
  const at = linearRegressionLine(fitted)
  const mean = points.reduce((sum, [x]) => sum + x, 0) / points.length
  const spread = points.reduce((sum, [x]) => sum + (x - mean) ** 2, 0)
  const residual = points.reduce((sum, [x, y]) => sum + (y - at(x)) ** 2, 0)
  const freedom = points.length - 2
  return { slope: fitted.m, halfWidth: studentQuantile(freedom) * Math.sqrt(residual / freedom / spread) }
}
