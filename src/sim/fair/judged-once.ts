import { shotKey } from './shots.js'
import type { JudgedThrow } from './worth-matrix.js'

/**
 * Judges each throw of a search once and keeps its worths with the search: the best throw and the habitual one come up
 * again with every choice that is graded.
 */
export function judgedOnce<Search extends object, Thrown extends JudgedThrow>(
  judge: (search: Search, thrown: Thrown) => Float64Array,
): (search: Search, thrown: Thrown) => Float64Array {
  const kept = new WeakMap<Search, Map<string, Float64Array>>()
  return (search, thrown) => {
    const ofSearch = kept.get(search) ?? new Map<string, Float64Array>()
    kept.set(search, ofSearch)
    const known = ofSearch.get(shotKey(thrown))
    if (known) return known
    const worths = judge(search, thrown)
    ofSearch.set(shotKey(thrown), worths)
    return worths
  }
}
