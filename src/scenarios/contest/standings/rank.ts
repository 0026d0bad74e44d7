import type { ContestRules, Entrant, TieStep } from '../../files/schema/contest-rules.js'
import type { CheckedEntry } from './check-entry.js'
import type { EntryFigures, FrameFigures } from './entry-figures.js'

/** Standard errors that two entries must differ by to count as separated: one-sided 5 % of the normal distribution. */
const SEPARATING_ERRORS = 1.64

export interface Place {
  readonly entry: CheckedEntry & { readonly figures: EntryFigures }
  readonly place: number
  /** Whether others have the same place: the ranking cannot tell them apart. */
  readonly shared: boolean
  /** What set it before the next of its place; null where nothing did, or nobody follows. */
  readonly aheadBy: TieStep | null
  /** What places are given by: pins; a cost counts less the better. */
  readonly figure: number
  readonly handicap: number
  readonly withoutLuck: number | null
  readonly cost: number | null
}

/** Pins a game for an average, cut to whole pins (as leagues reckon it: common practice, no source). */
export function handicapPins({ handicap }: Pick<ContestRules, 'handicap'>, average: number | undefined): number {
  if (!handicap || average === undefined) return 0
  return Math.max(0, Math.floor((handicap.percent * (handicap.base - average)) / 100))
}

/** A frame's share of what places are given by; the more the better. */
const shareOf = ({ ranking }: ContestRules, { score, luck, cost }: FrameFigures): number =>
  ranking === 'luck-adjusted' ? score + (luck ?? 0) : ranking === 'cost' ? -(cost ?? 0) : score

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0)

/**
 * One standard error of the difference of two entries, over their frames in pairs: all meet the same luck in the same frame, so what
 * is common falls out. Infinite with fewer than two frames.
 */
export function errorOfDifference(one: readonly number[], other: readonly number[]): number {
  const count = Math.min(one.length, other.length)
  if (count < 2) return Number.POSITIVE_INFINITY
  const differences = Array.from({ length: count }, (_, index) => one[index]! - other[index]!)
  const mean = sumOf(differences) / count
  const variance = sumOf(differences.map((value) => (value - mean) ** 2)) / (count - 1)
  return Math.sqrt(count * variance)
}

/** Places of the entries that count, best first. */
export function placesOf(entries: readonly CheckedEntry[], rules: ContestRules, entrants: readonly Entrant[]): Place[] {
  const reckoned = entries.flatMap((entry) => {
    const { figures } = entry
    if (entry.status !== 'ranked' || !figures) return []
    const average = entrantOf(entrants, entry)?.average
    const handicap = handicapPins(rules, average) * figures.games.length
    const shares = figures.frames.map((frame) => shareOf(rules, frame))
    const value = sumOf(shares) + handicap
    const withoutLuck = figures.frames.every(({ luck }) => luck !== null)
      ? sumOf(figures.frames.map(({ score, luck }) => score + (luck ?? 0)))
      : null
    const cost = figures.frames.every((frame) => frame.cost !== null)
      ? sumOf(figures.frames.map((frame) => frame.cost ?? 0))
      : null
    return [{ entry: { ...entry, figures }, shares, value, handicap, withoutLuck, cost }]
  })
  type Reckoned = (typeof reckoned)[number]
  const steps: Readonly<Record<TieStep, (one: Reckoned) => number>> = {
    score: ({ entry, handicap }) => entry.figures.score + handicap,
    'best-game': ({ entry }) => Math.max(0, ...entry.figures.games),
    'last-game': ({ entry }) => entry.figures.games.at(-1) ?? 0,
    strikes: ({ entry }) => entry.figures.strikes,
    'luck-adjusted': ({ withoutLuck }) => withoutLuck ?? 0,
  }
  const parted = (one: Reckoned, other: Reckoned): TieStep | null =>
    rules.ties.find((step) => steps[step](one) !== steps[step](other)) ?? null
  const isTied = (one: Reckoned, other: Reckoned): boolean => {
    const gap = Math.abs(one.value - other.value)
    if (gap === 0 || rules.ranking === 'score') return gap === 0
    return gap < SEPARATING_ERRORS * errorOfDifference(one.shares, other.shares)
  }
  const names = new Intl.Collator('en')
  const byLadder = (one: Reckoned, other: Reckoned): number => {
    const step = parted(one, other)
    if (step) return steps[step](other) - steps[step](one)
    return names.compare(one.entry.player, other.entry.player) || names.compare(one.entry.file, other.entry.file)
  }
  const left = [...reckoned].sort((one, other) => other.value - one.value || byLadder(one, other))
  const places: Place[] = []
  while (left.length > 0) {
    const [leader] = left as [Reckoned]
    const end = left.findIndex((one) => one !== leader && !isTied(leader, one))
    const group = left.splice(0, end < 0 ? left.length : end).sort(byLadder)
    const place = places.length + 1
    group.forEach(({ shares: _shares, value, ...one }, index) => {
      const next = group[index + 1]
      const aheadBy = next ? parted(group[index]!, next) : null
      places.push({
        ...one,
        place,
        shared: group.length > 1,
        aheadBy,
        figure: rules.ranking === 'cost' ? 0 - value : value,
      })
    })
  }
  return places
}

/** Who of the list an entry is of: by its code where one is listed, else by name. */
export function entrantOf(
  entrants: readonly Entrant[],
  { player, code }: Pick<CheckedEntry, 'player' | 'code'>,
): Entrant | undefined {
  const plain = (text: string): string => text.trim().toLowerCase()
  return (
    entrants.find(
      (one) => one.code !== undefined && plain(one.code) === plain(code) && plain(one.name) === plain(player),
    ) ?? entrants.find((one) => one.code === undefined && plain(one.name) === plain(player))
  )
}
