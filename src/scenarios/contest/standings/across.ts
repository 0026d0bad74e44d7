import type { Entrant } from '../../files/schema/contest-rules.js'
import type { CheckedEntry } from './check-entry.js'
import { entrantOf } from './rank.js'

/**
 * What only all entries together tell: copies of one entry, beginnings of a longer one, tries beyond the rules, names and keys that the
 * organiser does not know, and choices alike to the last.
 */
export function checkAcrossEntries(
  entries: readonly CheckedEntry[],
  { tries, entrants }: { readonly tries: number; readonly entrants: readonly Entrant[] | null },
): CheckedEntry[] {
  const out = (entry: CheckedEntry, ...reasons: string[]): CheckedEntry => ({
    ...entry,
    status: entry.status === 'refused' ? 'refused' : 'out',
    reasons: [...entry.reasons, ...reasons],
  })
  const believed = (entry: CheckedEntry): boolean => entry.status !== 'refused'
  const known = entries.map((entry) => {
    if (!believed(entry) || entrants === null || entrantOf(entrants, entry)) return entry
    const isListed = entrants.some(({ name }) => name.trim().toLowerCase() === entry.player.trim().toLowerCase())
    const words = isListed
      ? `its code ${entry.code} is not the one listed for ${entry.player}`
      : `${entry.player} is not listed`
    return out(entry, words)
  })
  const single = known.map((entry, index) => {
    if (!believed(entry)) return entry
    const twin = known.findIndex((other) => believed(other) && other.digest === entry.digest)
    if (twin < index) return out(entry, `it is a copy of ${known[twin]!.file}`)
    const longer = known.find(
      (other) =>
        other !== entry &&
        believed(other) &&
        (other.block === entry.block || other.entry === entry.entry) &&
        isLater(other, entry),
    )
    return longer ? out(entry, `it is an earlier or other state of ${longer.file}`) : entry
  })
  const counted = new Map<string, number>()
  const ordered = [...single].sort(
    (one, other) => Date.parse(one.ended) - Date.parse(other.ended) || (one.file < other.file ? -1 : 1),
  )
  const late = new Map<CheckedEntry, string>()
  for (const entry of ordered) {
    if (entry.status !== 'ranked' && entry.status !== 'unfinished') continue
    const name = entry.player.trim().toLowerCase()
    const number = (counted.get(name) ?? 0) + 1
    counted.set(name, number)
    if (number > tries)
      late.set(entry, `${entry.player} has ${tries === 1 ? 'one try' : `${tries} tries`}, and this is number ${number}`)
    else if (number > 1) late.set(entry, `the first of ${entry.player}'s tries counts`)
  }
  return single.map((entry) => {
    const why = late.get(entry)
    if (why !== undefined) return out(entry, why)
    const alike = single.find(
      (other) => other !== entry && believed(other) && other.player !== entry.player && isAlike(other, entry),
    )
    return alike && entry.status === 'ranked'
      ? { ...entry, marks: [...entry.marks, `every choice is that of ${alike.player}`] }
      : entry
  })
}

const isLater = (other: CheckedEntry, entry: CheckedEntry): boolean =>
  other.throws > entry.throws ||
  (other.throws === entry.throws &&
    (other.ended < entry.ended || (other.ended === entry.ended && other.file < entry.file)))

const isAlike = (one: CheckedEntry, other: CheckedEntry): boolean =>
  one.throws > 0 && one.throws === other.throws && one.thrown.every((thrown, index) => thrown === other.thrown[index])
