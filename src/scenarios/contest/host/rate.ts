/** What a client may ask: so many at once, and so many a second after that. */
interface Allowance {
  readonly burst: number
  readonly aSecond: number
}

const MOST_REMEMBERED = 10_000

/** A token bucket for each client by name: tells whether one more may be asked now. */
export function rateLimit({ burst, aSecond }: Allowance, now: () => number): (name: string) => boolean {
  const buckets = new Map<string, { left: number; at: number }>()
  return (name) => {
    const at = now()
    const before = buckets.get(name) ?? { left: burst, at }
    const left = Math.min(burst, before.left + ((at - before.at) / 1000) * aSecond)
    // The longest unheard of goes first, so that strangers cannot fill the memory.
    buckets.delete(name)
    if (buckets.size >= MOST_REMEMBERED) buckets.delete(buckets.keys().next().value!)
    buckets.set(name, { left: left >= 1 ? left - 1 : left, at })
    return left >= 1
  }
}
