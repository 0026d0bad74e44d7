import type { Decision, Observation, Spot } from '../../world/block/types.js'
import type { BeliefSummary } from '../belief/summary.js'
import type { ContactChance } from '../grade/contact-chances.js'
import type { PricedFairGrade } from '../grade/grade-types.js'
import type { LedgerTerms } from './ledger/ledger.js'
import type { Alternative } from './reading/alternatives.js'
import type { Innovation } from './reading/innovation.js'
import type { MeantPath } from './reading/meant-path.js'
import type { Reading } from './reading/reading.js'

/** The account of one throw. What only counts in a game is null in practice. */
export interface ThrowAccount {
  /** Number of the throw in the block, from 0. */
  readonly index: number
  readonly spot: Spot
  readonly kind: Reading['kind']
  readonly decision: Decision
  readonly observation: Observation
  readonly standingBefore: number
  readonly standingAfter: number
  readonly graded: {
    /** By what could be known. */
    readonly grade: PricedFairGrade
    /** Best if the oil is seen. */
    readonly bestKnown: Decision
    /** Pins the choice lost against it, with one standard error: the ledger's first three parts. */
    readonly knownLostPins: number
    readonly knownStandardErrorPins: number
    readonly ledger: LedgerTerms
    /** Empty for spares, and where it was not asked for. */
    readonly alternatives: readonly Alternative[]
  } | null
  /** Without a miss, on the oil as it was: the choice made and, in a game, both best choices. */
  readonly paths: {
    readonly choice: MeantPath
    readonly bestFair: MeantPath | null
    readonly bestKnown: MeantPath | null
  }
  /** What could be known of the oil before this throw. */
  readonly belief: BeliefSummary
  /** What the throw told of hand and lane; null for spares and balls in the gutter. */
  readonly innovation: Innovation | null
  /** How the choice was to be expected to meet a full rack; null for spares. */
  readonly contactChances: readonly ContactChance[] | null
}
