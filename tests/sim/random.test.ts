import { chiSquaredDistributionTable, mean, sampleCorrelation, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { drawNormal, type Purpose, type RandomSource, type StreamKey, stream } from '../../src/sim/random.js'

const key = (changes: Partial<StreamKey> = {}): StreamKey => ({
  seed: 'harbour-7',
  game: 1,
  frame: 3,
  ball: 1,
  purpose: 'delivery',
  ...changes,
})

const take = (source: RandomSource, count: number): number[] => Array.from({ length: count }, () => source())

/** Chi-square statistic of values in (0, 1) against equal counts in `bins` bins. */
function uniformityStatistic(values: readonly number[], bins: number): number {
  const counts = new Array<number>(bins).fill(0)
  for (const value of values) counts[Math.floor(value * bins)] += 1
  const expected = values.length / bins
  return counts.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0)
}

const GOLDEN_DELIVERY = [0.7607485314365476, 0.668897605035454, 0.8022669062484056]
const GOLDEN_RACK = [0.8502711127512157, 0.3389693789649755, 0.5535874590277672]
const GOLDEN_NORMAL = 0.7087124502134003

const PURPOSES: readonly Purpose[] = ['pattern', 'delivery', 'rack', 'carry-rank', 'field-line', 'seen', 'policy']

describe('keyed streams', () => {
  it('gives one key the same numbers, whatever was drawn before or between', () => {
    const alone = take(stream(key()), 20)
    const other = stream(key({ frame: 9 }))
    other()
    const interleaved = stream(key())
    const mixed = Array.from({ length: 20 }, () => {
      other()
      return interleaved()
    })
    expect(mixed).toEqual(alone)
  })

  it('gives every field of the key a stream of its own', () => {
    const streams = [
      key(),
      key({ seed: 'harbour-8' }),
      key({ game: 2 }),
      key({ frame: 4 }),
      key({ ball: 2 }),
      key({ purpose: 'rack' }),
      key({ index: 1 }),
    ].map((k) => take(stream(k), 4).join())
    expect(new Set(streams).size).toBe(streams.length)
  })

  it('keeps keys apart that would read alike when written together', () => {
    const pairs: readonly [Partial<StreamKey>, Partial<StreamKey>][] = [
      [
        { game: 1, frame: 11 },
        { game: 11, frame: 1 },
      ],
      [
        { seed: 'a|1', game: 2 },
        { seed: 'a', game: 1 },
      ],
      [
        { frame: 1, ball: 12 },
        { frame: 11, ball: 2 },
      ],
    ]
    for (const [a, b] of pairs) expect(take(stream(key(a)), 4)).not.toEqual(take(stream(key(b)), 4))
  })

  it('starts with the recorded values: a change here breaks every saved record', () => {
    expect(take(stream(key()), 3)).toEqual(GOLDEN_DELIVERY)
    expect(take(stream(key({ purpose: 'rack', index: 4 })), 3)).toEqual(GOLDEN_RACK)
    expect(drawNormal(stream(key()))).toBe(GOLDEN_NORMAL)
  })

  it('draws uniformly within a stream', () => {
    const values = take(stream(key({ purpose: 'study' })), 100_000)
    expect(values.every((value) => value > 0 && value < 1)).toBe(true)
    // 99.5 % point of chi-square with 50 degrees of freedom, from the table in simple-statistics
    expect(uniformityStatistic(values, 51)).toBeLessThan(chiSquaredDistributionTable[50][0.005])
  })

  it('draws uniformly across keys too: the first number of many streams', () => {
    const firsts: number[] = []
    for (let game = 1; game <= 30; game += 1)
      for (let frame = 1; frame <= 10; frame += 1)
        for (const purpose of PURPOSES)
          for (let index = 0; index < 8; index += 1) firsts.push(stream(key({ game, frame, purpose, index }))())
    expect(uniformityStatistic(firsts, 51)).toBeLessThan(chiSquaredDistributionTable[50][0.005])
    // neighbours in key order: standard error of a correlation is 1/√n
    expect(Math.abs(sampleCorrelation(firsts.slice(1), firsts.slice(0, -1)))).toBeLessThan(
      3.5 / Math.sqrt(firsts.length),
    )
  })

  it('leaves purposes uncorrelated with each other', () => {
    const count = 4000
    const columns = PURPOSES.map((purpose) =>
      Array.from({ length: count }, (_, i) =>
        stream(key({ game: 1 + Math.floor(i / 10), frame: 1 + (i % 10), purpose }))(),
      ),
    )
    for (let a = 0; a < columns.length; a += 1)
      for (let b = 0; b < a; b += 1)
        // 21 pairs: 3.5 standard errors keep the chance of a false alarm near 1 %
        expect(Math.abs(sampleCorrelation(columns[a], columns[b]))).toBeLessThan(3.5 / Math.sqrt(count))
  })

  it('draws normal numbers with mean 0, spread 1 and normal tails', () => {
    const source = stream(key({ purpose: 'study', index: 1 }))
    const values = Array.from({ length: 50_000 }, () => drawNormal(source))
    expect(Math.abs(mean(values))).toBeLessThan(3.5 / Math.sqrt(values.length))
    expect(Math.abs(standardDeviation(values) - 1)).toBeLessThan(3.5 / Math.sqrt(2 * values.length))
    // 5 % of a normal distribution lies beyond ±1.959964
    const beyond = values.filter((value) => Math.abs(value) > 1.959964).length / values.length
    expect(Math.abs(beyond - 0.05)).toBeLessThan(3.5 * Math.sqrt((0.05 * 0.95) / values.length))
  })
})
