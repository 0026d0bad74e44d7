/** Two-space JSON with fields in the order written: the same report gives the same bytes everywhere. */
export function jsonText(report: unknown): string {
  return JSON.stringify(report, null, 2)
}

/** A figure cut to the decimals a report promises; never -0. */
export function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals)) + 0
}
