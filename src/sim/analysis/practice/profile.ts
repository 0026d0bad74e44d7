import { normalQuantile } from '../../exact-math.js'
import { SKILLS, type Skill } from './position.js'

/** One answer, as far as the profile needs it. */
export interface AnsweredLoss {
  readonly skill: Skill
  readonly pins: number
  readonly blindPins: number
}

/** What a skill costs. */
export interface SkillEstimate {
  readonly skill: Skill
  readonly answers: number
  /** Pins a position, with the middle four fifths of what it may be. */
  readonly pins: number
  readonly low: number
  readonly high: number
  /** The same a game: times how often such a position comes up in one. */
  readonly pinsAGame: number
  readonly lowAGame: number
  readonly highAGame: number
}

/** What is known of a skill before anything was answered. */
interface SkillNorm {
  /** Mean pins of a blind answer over all positions of the skill. */
  readonly blindPins: number
  readonly perGame: number
}
export type SkillNorms = Readonly<Record<Skill, SkillNorm>>

/** Share of the blind cost that a learner of whom nothing is known is taken to lose, and how much skills are taken to differ at first. */
const FIRST_SHARE = 0.45
const FIRST_SPREAD = 0.25
/** As many answers as the first ideas weigh. */
const FIRST_WEIGHT = 2
/** So many answers the spread over all skills weighs in that of one. */
const POOLED_WEIGHT = 0.1
const LEAST_VARIANCE = 0.0005
const EIGHTY_PERCENT = normalQuantile(0.9)

const squared = (value: number): number => value * value

interface Ratio {
  readonly share: number
  readonly variance: number
  readonly answers: number
}

/**
 * Share of the blind cost that was lost, as a ratio of sums, so that a learner who was given hard positions is not taken for a poor one. Its variance is
 * the ratio estimator's (Cochran, Sampling techniques, from memory), with the squares of all skills pooled in where one has few.
 */
function ratioOf(answers: readonly AnsweredLoss[], pooledSquare: number): Ratio {
  const n = answers.length
  const blind = answers.reduce((sum, one) => sum + one.blindPins, 0)
  const share = blind > 0 ? answers.reduce((sum, one) => sum + one.pins, 0) / blind : FIRST_SHARE
  const squares = answers.reduce((sum, one) => sum + squared(one.pins - share * one.blindPins), 0)
  const mean = blind / Math.max(1, n)
  const weight = POOLED_WEIGHT
  const square = (squares + weight * pooledSquare * mean * mean) / (n - 1 + weight)
  return { share, answers: n, variance: n === 0 || mean === 0 ? Number.POSITIVE_INFINITY : square / (n * mean * mean) }
}

/**
 * What each skill costs, dearest first. Estimates are drawn towards the mean of all skills as far as they are unsure (partial pooling: normal means
 * with a normal prior, variance between them by the method of moments; textbook empirical Bayes, from memory).
 */
export function skillProfile(answers: readonly AnsweredLoss[], norms: SkillNorms): SkillEstimate[] {
  const of = (skill: Skill): AnsweredLoss[] => answers.filter((one) => one.skill === skill)
  const pooledSquare = pooledSquareOf(answers)
  const ratios = SKILLS.map((skill) => ratioOf(of(skill), pooledSquare))
  const known = ratios.filter(({ answers: count }) => count > 0)
  const { mean, between } = centreOf(known)
  return SKILLS.map((skill, place) => {
    const { share, variance, answers: count } = ratios[place]
    const trust = Number.isFinite(variance) ? between / (between + variance) : 0
    const middle = mean + trust * (share - mean)
    const spread = EIGHTY_PERCENT * Math.sqrt(Number.isFinite(variance) ? trust * variance : between)
    const { blindPins, perGame } = norms[skill]
    const pins = (value: number): number => Math.max(0, value) * blindPins
    const [low, high] = [pins(middle - spread), pins(middle + spread)]
    return {
      skill,
      answers: count,
      pins: pins(middle),
      low,
      high,
      pinsAGame: pins(middle) * perGame,
      lowAGame: low * perGame,
      highAGame: high * perGame,
    }
  }).sort((a, b) => b.pinsAGame - a.pinsAGame)
}

/** Mean square of what a pin of blind cost leaves unexplained, over all skills. */
function pooledSquareOf(answers: readonly AnsweredLoss[]): number {
  const blind = answers.reduce((sum, one) => sum + one.blindPins, 0)
  if (answers.length < 2 || blind === 0) return FIRST_SHARE * FIRST_SHARE
  const share = answers.reduce((sum, one) => sum + one.pins, 0) / blind
  const mean = blind / answers.length
  const squares = answers.reduce((sum, one) => sum + squared(one.pins - share * one.blindPins), 0)
  return squares / ((answers.length - 1) * mean * mean)
}

/**
 * Mean of the skills and the variance between them (moments weighted by precision: DerSimonian and Laird 1986, from memory), drawn towards what is taken
 * of a learner of whom little is known.
 */
function centreOf(known: readonly Ratio[]): { readonly mean: number; readonly between: number } {
  const first = FIRST_SPREAD * FIRST_SPREAD
  const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0)
  const precisions = known.map(({ variance }) => 1 / Math.max(variance, LEAST_VARIANCE))
  const all = sum(precisions)
  const weighted = all > 0 ? sum(known.map(({ share }, i) => precisions[i] * share)) / all : FIRST_SHARE
  const off = sum(known.map(({ share }, i) => precisions[i] * squared(share - weighted)))
  const room = all - (all > 0 ? sum(precisions.map(squared)) / all : 0)
  const degrees = Math.max(0, known.length - 1)
  const moments = room > 0 ? Math.max(0, off - degrees) / room : 0
  const between = (degrees * moments + FIRST_WEIGHT * first) / (degrees + FIRST_WEIGHT)
  const weights = known.map(({ variance }) => 1 / (variance + between))
  const prior = 1 / (first + between)
  const mean = (sum(known.map(({ share }, i) => weights[i] * share)) + prior * FIRST_SHARE) / (sum(weights) + prior)
  return { mean, between: Math.max(between, LEAST_VARIANCE) }
}
