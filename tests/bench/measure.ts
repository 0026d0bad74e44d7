/** What one run of something took, milliseconds. */
export interface Taken {
  readonly wall: number
  /** Processor time of this process; the same as the wall time on a machine with nothing else to do. */
  readonly processor: number
}

/** Least, middle, nearly worst and worst of many runs. On a machine shared with others the least disturbed run says most. */
export interface Figures {
  readonly least: number
  readonly median: number
  readonly p95: number
  readonly most: number
  readonly count: number
  /** Median by the clock on the wall, where the others are processor time. */
  readonly wallMedian?: number
}

/** One line of the report. Figures and goal are in the line's unit. */
export interface BenchRow {
  readonly name: string
  readonly unit: string
  readonly measured: Figures
  readonly goal?: { readonly most: number; readonly of: 'median' | 'p95' | 'most' }
  /** The same work by something else, in the same run and unit. */
  readonly beside?: { readonly name: string; readonly median: number }
}

const rank = (sorted: readonly number[], share: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!

/** Median and 95th percentile of values. */
export function figuresOf(values: readonly number[]): Figures {
  const sorted = [...values].sort((a, b) => a - b)
  return {
    least: sorted[0]!,
    median: rank(sorted, 0.5),
    p95: rank(sorted, 0.95),
    most: sorted.at(-1)!,
    count: sorted.length,
  }
}

/** Median and 95th percentile of processor time, with the wall's median, each multiplied by `factor`. */
export function timesOf(runs: readonly Taken[], factor = 1): Figures {
  return {
    ...figuresOf(runs.map(({ processor }) => processor * factor)),
    wallMedian: figuresOf(runs.map(({ wall }) => wall * factor)).median,
  }
}

/** A stopwatch, started. */
export function startWatch(): () => Taken {
  const usage = process.cpuUsage()
  const start = performance.now()
  return () => {
    const wall = performance.now() - start
    const { user, system } = process.cpuUsage(usage)
    return { wall, processor: (user + system) / 1000 }
  }
}

/** Times single runs of `work` after `warmUp` untimed ones; `work` gets the number of the run, warm-up counted. */
export function timeEach(work: (run: number) => unknown, count: number, warmUp: number): Taken[] {
  const values: Taken[] = []
  for (let run = 0; run < warmUp + count; run++) {
    const stop = startWatch()
    work(run)
    const taken = stop()
    if (run >= warmUp) values.push(taken)
  }
  return values
}

/** Times runs too short for the clock in batches of `size`, given as one run's share. */
export function timeBatches(work: (run: number) => unknown, batches: number, size: number, warmUp: number): Taken[] {
  const batch = (number: number): void => {
    for (let run = number * size; run < (number + 1) * size; run++) work(run)
  }
  return timeEach(batch, batches, warmUp).map(({ wall, processor }) => ({
    wall: wall / size,
    processor: processor / size,
  }))
}
