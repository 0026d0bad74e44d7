/** How many faults of one file are told in full. */
const MOST_TOLD = 20

/** The first faults of a file in full and how many more there are. */
export function capped(name: string, count: number, sentenceAt: (place: number) => string): string[] {
  const told = Array.from({ length: Math.min(count, MOST_TOLD) }, (_, place) => sentenceAt(place))
  const more = count - told.length
  return more === 0 ? told : [...told, `${name}: and ${more} more fault${more === 1 ? '' : 's'} after these.`]
}

const LONGEST_QUOTED = 60

/** A piece of a file as a sentence quotes it. */
export const quotable = (text: string): string =>
  text.length > LONGEST_QUOTED ? `${text.slice(0, LONGEST_QUOTED - 3)}...` : text
