/**
 * Fits the weights of difficulty (`src/sim/analysis/practice/difficulty-weights.ts`) on scripted players, and holds them against players and
 * positions left out: `npm run study practice-difficulty`, some seconds. On 218 positions, half of them and two
 * players left out of the fit, 1000 answers: 89.0 % predicted to be sound and 88.0 % sound; by fifths of the prediction 67.9 and 68.5, 88.3 and 86.0,
 * 93.3 and 91.0, 96.9 and 96.5, 98.6 and 98.0 %.
 */
import { readyPositions } from '../../src/scenarios/practice/position-set.js'
import { type Position, SKILLS, type Skill } from '../../src/sim/analysis/practice/position.js'
import {
  difficultyBy,
  FEATURES,
  featuresOf,
  soundChance,
  weightsAfter,
} from '../../src/sim/analysis/practice/rating.js'
import { lossOf } from '../../src/sim/analysis/practice/scoring.js'
import { type RandomSource, stream } from '../../src/sim/random.js'
import { learnerAnswer } from './practice/learners.js'

const ROUNDS = 60
const HELD_OUT_ANSWERS = 1000

const player = (weakness: number) => ({
  weak: Object.fromEntries(SKILLS.map((skill) => [skill, weakness])) as Record<Skill, number>,
  bias: 'none' as const,
})
/** Fitted on, and left out of the fit. */
const FITTED = [0.2, 0.35, 0.5].map(player)
const LEFT_OUT = [0.28, 0.42].map(player)

const source = (seed: string): RandomSource => stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })

export async function run(): Promise<void> {
  const { positions } = await readyPositions()
  const fitted = positions.filter((_, i) => i % 2 === 0)
  const leftOut = positions.filter((_, i) => i % 2 === 1)
  const weights = fittedWeights(fitted, FITTED)
  console.log(`weights: [${weights.map((weight) => weight.toFixed(3)).join(', ')}]`)
  report('left-out positions, left-out players', leftOut, weights)
  report('left-out positions, fitted players', leftOut, weights, FITTED)
  // What is shipped is fitted on all positions, by the same players.
  console.log(
    `all positions: [${fittedWeights(positions, FITTED)
      .map((weight) => weight.toFixed(3))
      .join(', ')}]`,
  )
}

function fittedWeights(positions: readonly Position[], players: typeof FITTED): number[] {
  const draw = source('fit')
  let weights = Array.from({ length: FEATURES }, () => 0)
  const ratings = players.map(() => 0)
  for (let round = 0; round < ROUNDS; round++) {
    const step = 0.3 / (1 + 0.2 * round)
    for (const position of positions)
      for (const [at, one] of players.entries()) {
        const features = featuresOf(position)
        const difficulty = difficultyBy(features, weights)
        const isSound = lossOf(position, learnerAnswer(one, position, draw)).isSound
        const surprise = (isSound ? 1 : 0) - soundChance(ratings[at]!, difficulty)
        weights = weightsAfter(weights, features, { surprise, step: step / players.length })
        ratings[at] = ratings[at]! + 0.2 * step * surprise
      }
    // Ratings are told from the mean of the players.
    const mean = ratings.reduce((sum, one) => sum + one, 0) / ratings.length
    for (const at of ratings.keys()) ratings[at] = ratings[at]! - mean
  }
  return weights
}

/** A left-out player's rating is estimated on fitted positions' like: by its own first answers, as in practice. */
function report(name: string, positions: readonly Position[], weights: readonly number[], players = LEFT_OUT): void {
  const draw = source(name)
  const chances: [predicted: number, sound: number][] = []
  for (const one of players) {
    let rating = 0
    for (let count = 0; count < 200 + HELD_OUT_ANSWERS / players.length; count++) {
      const position = positions[Math.floor(draw() * positions.length)]!
      const difficulty = difficultyBy(featuresOf(position), weights)
      const predicted = soundChance(rating, difficulty)
      const sound = lossOf(position, learnerAnswer(one, position, draw)).isSound ? 1 : 0
      if (count >= 200) chances.push([predicted, sound])
      rating += (sound - predicted) / (1 + 0.05 * count)
    }
  }
  const mean = (of: 0 | 1, list = chances) => list.reduce((sum, one) => sum + one[of], 0) / list.length
  console.log(
    `${name}: ${chances.length} answers, predicted ${(100 * mean(0)).toFixed(1)} %, sound ${(100 * mean(1)).toFixed(1)} %`,
  )
  const sorted = [...chances].sort((a, b) => a[0] - b[0])
  for (let fifth = 0; fifth < 5; fifth++) {
    const part = sorted.slice((fifth * sorted.length) / 5, ((fifth + 1) * sorted.length) / 5)
    console.log(
      `  fifth ${fifth + 1}: predicted ${(100 * mean(0, part)).toFixed(1)} %, sound ${(100 * mean(1, part)).toFixed(1)} %`,
    )
  }
}
