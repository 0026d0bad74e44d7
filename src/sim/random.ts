import alea from 'seedrandom/lib/alea.js'
import { normalQuantile } from './exact-math.js'

/** What a draw is for. A purpose is part of the key, so that adding a draw never shifts another. */
export type Purpose =
  | 'pattern'
  | 'laid'
  | 'delivery'
  | 'rack'
  | 'carry-rank'
  | 'field-line'
  | 'field-delivery'
  | 'seen'
  | 'policy'
  | 'solver'
  | 'study'

/** Where in a block a draw belongs. The player's choice is never part of it. */
export interface StreamKey {
  readonly seed: string
  readonly game: number
  readonly frame: number
  readonly ball: number
  readonly purpose: Purpose
  /** Tells apart draws of one purpose in one place, such as the k-th bowler of the field. */
  readonly index?: number
}

/** A source of independent numbers in (0, 1). */
export type RandomSource = () => number

/** The stream of uniform numbers that belongs to one key; equal keys give equal streams, always from the start. */
export function stream(key: StreamKey): RandomSource {
  const draw = alea(`${key.seed}|${key.game}|${key.frame}|${key.ball}|${key.purpose}|${key.index ?? 0}`)
  return () => {
    const value = draw()
    return value > 0 ? value : 1.1641532182693481e-10
  }
}

/** One standard normal number by inverse distribution function: one uniform a normal, so draws stay aligned. */
export function drawNormal(source: RandomSource): number {
  return normalQuantile(source())
}
