/** A mean over blocks with the 95 % interval of it; no interval for a single block. Blocks, not throws, are independent. */
export interface Estimate {
  readonly mean: number
  readonly low: number | null
  readonly high: number | null
  readonly blocks: number
}

/** 97.5 % points of Student's t for 1 to 30 degrees of freedom (any table of the distribution); 1.96 beyond. */
const STUDENT = [
  12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262, 2.228, 2.201, 2.179, 2.16, 2.145, 2.131, 2.12, 2.11,
  2.101, 2.093, 2.086, 2.08, 2.074, 2.069, 2.064, 2.06, 2.056, 2.052, 2.048, 2.045, 2.042,
]

export function estimateOf(values: readonly number[]): Estimate {
  const blocks = values.length
  const mean = values.reduce((sum, value) => sum + value, 0) / Math.max(1, blocks)
  if (blocks < 2) return { mean, low: null, high: null, blocks }
  const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (blocks - 1)
  const reach = (STUDENT[blocks - 2] ?? 1.96) * Math.sqrt(variance / blocks)
  return { mean, low: mean - reach, high: mean + reach, blocks }
}
