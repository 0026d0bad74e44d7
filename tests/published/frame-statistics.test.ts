import { sampleSkewness } from 'simple-statistics'
import { beforeAll, describe, expect, it } from 'vitest'
import { type BowledFrame, bowlFirstBalls, bowlFrames, type MatchedBowler } from './frame-bowling.js'
import { bowlersOn, conversionAfter, conversionOf, type FrameSheet, frameSheet, onEachLane } from './frame-figures.js'
import { frozenGames, scoresOf, strikeAutocorrelation } from './frozen-lane.js'

/** Lanes wear by the misses of those who play them, and strikes go with it: several histories of wear. */
const ELITE_HISTORIES = 3
const ELITE_FRAMES_A_LANE = 500
const EASY_FRAMES_A_LANE = 250
const RECREATIONAL_FRAMES_A_LANE = 300
/** At ten frames a game, more than 10^5 pairs of neighbouring frames. */
const FROZEN_GAMES = 11_200

/**
 * Simulated bowlers, each on the best line of one who sees the oil, on a lane fresh and after 6 and 12 own first balls;
 * every ball rolled and every rack thrown live.
 */
let flat: MatchedBowler[]
let elite: FrameSheet
let easy: FrameSheet
let club: MatchedBowler[]
let clubFrames: BowledFrame[]
let recreational: FrameSheet
beforeAll(async () => {
  flat = await bowlersOn('flat-forty-four', 'elite', 'cranker', ELITE_HISTORIES)
  elite = frameSheet(onEachLane(flat, 'elite', ELITE_FRAMES_A_LANE, bowlFirstBalls))
  const house = await bowlersOn('house-forty', 'elite', 'cranker')
  easy = frameSheet(onEachLane(house, 'easy', EASY_FRAMES_A_LANE, bowlFirstBalls))
  club = await bowlersOn('house-forty', 'recreational', 'tweener')
  clubFrames = onEachLane(club, 'recreational', RECREATIONAL_FRAMES_A_LANE, bowlFrames)
  recreational = frameSheet(clubFrames)
}, 300_000)

const within = (measured: number, published: number, tolerance: number): void => {
  expect(Math.abs(100 * measured - published), `measured ${(100 * measured).toFixed(1)} %`).toBeLessThanOrEqual(
    tolerance,
  )
}

/**
 * Elite men in televised matches 2005-10, 7,155 first balls: ESPN The Magazine, February 2011, as reported at
 * northamericanbowling.com. Tolerances are our proposals.
 */
describe('an elite man on flat oil', () => {
  // 447,000 tour frames since 2003 (Blatt, Slate): just under 60 %. The simulated line is the best of one who sees the oil.
  it('strikes on 61.1 % of first balls, within 55 to 65', () => within(elite.strikeShare, 60, 5))

  it('leaves the 10 pin on 25.5 % of other first balls, within 7', () => within(elite.shareOfLeave(10), 25, 7))
  it('leaves the 7 pin on 12.0 %, within 5', () => within(elite.shareOfLeave(7), 12, 5))
  it('leaves the 7-10 on 1.9 %, within 1.5', () => within(elite.shareOfLeave(7, 10), 2, 1.5))
  it('leaves the 4-6-7-10 on 1.1 %, within 1', () => within(elite.shareOfLeave(4, 6, 7, 10), 1, 1))
  // 88 and 35 of 2,781: standard errors 0.3 and 0.2.
  it('leaves the 9 pin on 3.2 %, within 2', () => within(elite.shareOfLeave(9), 3.2, 2))
  it('leaves the 3-10 on 1.3 %, within 1', () => within(elite.shareOfLeave(3, 10), 1.3, 1))

  it('clears the 10 pin at 95.9 %, within 2', () => within(conversionOf(flat, [10], 1000), 95.9, 2))
  it.fails('known gap: clears the 7 pin at 95.5 %, within 3 (measured 98.6 %)', () =>
    within(conversionOf(flat, [7], 1000), 95.5, 3))
  it('clears the 9 pin at 98.9 %, within 2', () => within(conversionOf(flat, [9], 1000), 98.9, 2))
  it.fails('known gap: clears the 3-10 at 48.6 %, within 17 (measured 70 %)', () =>
    within(conversionOf(flat, [3, 10], 600), 49, 17))
  it('clears the 7-10 at 1 % or less (published 0 of 53)', () =>
    expect(conversionOf(flat, [7, 10], 600)).toBeLessThanOrEqual(0.01))
})

/** One final on an easy pattern: 54 pocket hits in 66, 40 strikes (sjsubowling.pbworks.com). A small count. */
describe('an elite man on an easy pattern', () => {
  it.fails('known gap: strikes the 1-3 pocket on 82 % of first balls, within 10 (measured 98 %)', () =>
    within(easy.pocketShare, 82, 10))
  it('carries 74 % of those, within 12', () => within(easy.carryShare, 74, 12))
})

/** A recreational league team of about 135 average over 252 games (a blog's count). */
describe('a recreational bowler on a house pattern', () => {
  it('strikes on 27.2 % of first balls, within 5', () => within(recreational.strikeShare, 27.2, 5))
  it('fells four or fewer on under 4 %', () => expect(recreational.shareUpTo(4)).toBeLessThan(0.04))
  it.fails('known gap: clears about 25 % of what five felled leave, within 10 (measured 11 % of few)', () =>
    within(conversionAfter(clubFrames, 5), 25, 10))
  it('clears about 50 % of what nine felled leave, within 10', () => within(conversionAfter(clubFrames, 9), 50, 10))
})

describe('games on a lane frozen in time', () => {
  // Yaari & David, PLoS ONE 7(1) e30112 (2012): no clustering of strikes within a game over more than 450,000 frames.
  // The quick way: keyed deliveries rolled live, leaves by the carry table and the keyed rank.
  it('show no autocorrelation of strikes within a game over 10^5 pairs of frames', () => {
    const games = frozenGames(flat[0]!, 'frozen', FROZEN_GAMES)
    expect(FROZEN_GAMES * 9).toBeGreaterThan(1e5)
    expect(Math.abs(strikeAutocorrelation(games))).toBeLessThan(0.03)
  })

  // Keogh & O'Neill (1,240 games of amateurs): scores are about log-normal.
  it('have a logarithm of score nearer to normal than the score, for a recreational bowler', () => {
    const scores = scoresOf(frozenGames(club[0]!, 'frozen', 3000))
    expect(Math.abs(sampleSkewness(scores.map(Math.log)))).toBeLessThan(Math.abs(sampleSkewness(scores)))
  })
})
