const MOST_TOLD = 3
const MOST_SLIPS = 2

/** Words that one may have meant: a slip of the pen or two away, or beginning alike; the nearest first, none where none is near. */
export function nearestOf(written: string, words: readonly string[]): string[] {
  const low = written.toLowerCase()
  return words
    .map((word) => ({ word, slips: slipsBetween(low, word.toLowerCase()) }))
    .filter(({ word, slips }) => slips <= MOST_SLIPS || (low.length > 2 && word.toLowerCase().startsWith(low)))
    .sort((a, b) => a.slips - b.slips)
    .slice(0, MOST_TOLD)
    .map(({ word }) => word)
}

/** Letters added, lost or replaced, or neighbours changed round, between two words (restricted edit distance). */
function slipsBetween(one: string, other: string): number {
  const rows = [Array.from({ length: other.length + 1 }, (_, at) => at)]
  for (let i = 1; i <= one.length; i++) {
    const row = [i]
    for (let j = 1; j <= other.length; j++) {
      const same = one[i - 1] === other[j - 1]
      let least = Math.min(rows[i - 1][j] + 1, row[j - 1] + 1, rows[i - 1][j - 1] + (same ? 0 : 1))
      const turned = i > 1 && j > 1 && one[i - 1] === other[j - 2] && one[i - 2] === other[j - 1]
      if (turned) least = Math.min(least, rows[i - 2][j - 2] + 1)
      row.push(least)
    }
    rows.push(row)
  }
  return rows[one.length][other.length]
}
