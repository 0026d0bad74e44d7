/**
 * The matrix that takes values at some points to the coefficients that fit them best: (AᵀA)⁻¹Aᵀ, by Gauss's elimination with
 * the largest pivot (normal equations; any text on least squares).
 * @param terms a row for each point, a column for each coefficient, at least as many rows as columns
 * @returns a row for each coefficient, a column for each point
 * @throws RangeError when the points do not settle the coefficients
 */
export function pseudoInverse(terms: readonly (readonly number[])[]): number[][] {
  const count = terms[0].length
  const left = Array.from({ length: count }, (_, row) =>
    Array.from({ length: count }, (__, column) => terms.reduce((sum, at) => sum + at[row] * at[column], 0)),
  )
  const right = Array.from({ length: count }, (_, row) => terms.map((at) => at[row]))
  for (let pivot = 0; pivot < count; pivot++) {
    const at = rowOfLargest(left, pivot)
    ;[left[pivot], left[at]] = [left[at], left[pivot]]
    ;[right[pivot], right[at]] = [right[at], right[pivot]]
    if (!(Math.abs(left[pivot][pivot]) > 0)) throw new RangeError('These points do not settle what is to be fitted.')
    for (let row = 0; row < count; row++) {
      if (row === pivot) continue
      const factor = left[row][pivot] / left[pivot][pivot]
      for (let column = pivot; column < count; column++) left[row][column] -= factor * left[pivot][column]
      for (let column = 0; column < terms.length; column++) right[row][column] -= factor * right[pivot][column]
    }
  }
  return right.map((row, at) => row.map((value) => value / left[at][at]))
}

function rowOfLargest(matrix: readonly (readonly number[])[], from: number): number {
  let largest = from
  for (let row = from + 1; row < matrix.length; row++)
    if (Math.abs(matrix[row][from]) > Math.abs(matrix[largest][from])) largest = row
  return largest
}
