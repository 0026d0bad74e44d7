import { binomialHigh, rankCorrelationLow, signFlipLow } from './tests.js'

/** What a test for play that knows too much looks at, of one choice at a full rack. */
export interface ChoiceTrace {
  readonly game: number
  readonly frame: number
  /** How the real oil suited the choice, pins; above 0 it suited less than the best from what had been seen. */
  readonly swing: number
  /** Boards at the arrows the choice lay left of the best from what had been seen, counted from the bowler's own side. */
  readonly offBest: number
  /** Boards at the arrows the delivery then missed by, to the same side. */
  readonly miss: number
  /** Whether the choice is that best, to the half board. */
  readonly isBest: boolean
}

/** One test of one entry. */
interface TestResult {
  readonly name: 'oil' | 'coming-miss' | 'exactly-best'
  /** Mean pins, rank correlation or share. */
  readonly figure: number
  readonly p: number
}

/** What speaks for play that knows too much: for the organiser to weigh, never a verdict. */
export interface Evidence {
  readonly player: string
  readonly file: string
  readonly choices: number
  readonly tests: readonly TestResult[]
}

/** The share of exactly best choices that is taken for usual where there are too few others to tell. */
const USUAL_BEST_SHARE = 0.15
const LEAST_OTHERS = 30
const LEAST_CHOICES = 5
const LARGEST_CHANCE = 0.95

/** An entry as far as it is tested. */
interface TestedEntry {
  readonly player: string
  readonly file: string
  readonly figures: { readonly choices: readonly ChoiceTrace[] | null }
}

/** Tests each entry: whether the oil suited it too well, whether it aimed against misses to come, whether it is too often exactly best. */
export function evidenceOf(entries: readonly TestedEntry[]): Evidence[] {
  const all = entries.map(({ figures }) => figures.choices ?? [])
  return entries.flatMap(({ player, file }, index) => {
    const own = all[index]!
    if (own.length < LEAST_CHOICES) return []
    const others = all.flatMap((choices, at) => (at === index ? [] : choices))
    return [{ player, file, choices: own.length, tests: testsOf(own, others) }]
  })
}

export function testsOf(own: readonly ChoiceTrace[], others: readonly ChoiceTrace[]): TestResult[] {
  const { rho, p } = rankCorrelationLow(
    own.map(({ offBest }) => offBest),
    own.map(({ miss }) => miss),
  )
  const hits = own.filter(({ isBest }) => isBest).length
  const otherShare = others.length < LEAST_OTHERS ? 0 : others.filter(({ isBest }) => isBest).length / others.length
  const chance = Math.min(LARGEST_CHANCE, Math.max(USUAL_BEST_SHARE, otherShare))
  const swings = own.map(({ swing }) => swing)
  return [
    { name: 'oil', figure: swings.reduce((sum, value) => sum + value, 0) / swings.length, p: signFlipLow(swings) },
    { name: 'coming-miss', figure: rho, p },
    { name: 'exactly-best', figure: hits / own.length, p: binomialHigh(hits, own.length, chance) },
  ]
}
