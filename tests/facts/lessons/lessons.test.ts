import { mean } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { LEVELS } from '../../../src/sim/world/bowler/levels.js'
import { sandedSolid, symmetricSolid, weakPearl } from '../../sim/world/ball/bag-for-tests.js'
import { aloneOn, FITTED, freshOn, HELD_OUT } from './lanes.js'
import {
  bestPinsAGame,
  bowlerOf,
  exitsByLength,
  gainOfMoving,
  gainOfStaying,
  roomAtArrows,
  search,
  straightUpHook,
} from './measures.js'
import { rolledAsMeant } from './rolls.js'
import { gainsInTraffic } from './traffic.js'

// What a lane must teach: common practice, no source, each. `npm run study lessons` prints all of it with standard errors.

const seeds = (count: number): string[] => Array.from({ length: count }, (_, k) => `lessons-${k}`)
const onLane = (pattern: (typeof FITTED)['house'], level: '160' | '180' | '200' | 'elite') =>
  [aloneOn(pattern, bowlerOf(level)), freshOn(pattern)] as const

describe('where the ball leaves the oil', () => {
  it.each(['220', '200'] as const)(
    'moves in with the length of the pattern, about length less 31, for a %s',
    (level) => {
      const { slope, meanMiss, misses } = exitsByLength(level)
      expect(slope).toBeGreaterThanOrEqual(0.5)
      expect(meanMiss).toBeLessThanOrEqual(2.3)
      for (const miss of misses.slice(1)) expect(miss).toBeLessThanOrEqual(3)
    },
  )
})

describe('a ball thrown straight up board 14 on flat 45 ft oil', () => {
  it.each([sandedSolid, symmetricSolid])('hooks 9 to 14 boards: $name', (ball) => {
    const boards = straightUpHook(FITTED.flat, ball, 14)
    expect(boards).toBeGreaterThanOrEqual(9)
    expect(boards).toBeLessThanOrEqual(14)
  })

  it('hooks 5 to 9 boards when it is the weak pearl', () => {
    const boards = straightUpHook(FITTED.flat, weakPearl, 14)
    expect(boards).toBeGreaterThanOrEqual(5)
    expect(boards).toBeLessThanOrEqual(9)
  })
})

describe('house oil', () => {
  it.each([
    ['160', 12, 20],
    ['180', 12, 20],
    ['200', 12, 20],
    ['220', 18, 35],
    ['elite', 18, 35],
  ] as const)('is worth more than flat 45 ft oil to a %s: %i to %i pins a game by best play', (level, least, most) => {
    const gain = bestPinsAGame(FITTED.house, level) - bestPinsAGame(FITTED.flat, level)
    expect(gain).toBeGreaterThanOrEqual(least)
    expect(gain).toBeLessThanOrEqual(most)
  })

  it('gives at least two boards of room at the arrows, and twice as much as flat oil', () => {
    const roomOn = (pattern: (typeof FITTED)['house']): number => {
      const [setup, lane] = onLane(pattern, '200')
      return roomAtArrows(lane, setup, search(setup, lane).best)
    }
    const house = roomOn(FITTED.house)
    expect(house).toBeGreaterThanOrEqual(2)
    expect(house).toBeGreaterThanOrEqual(2 * roomOn(FITTED.flat))
  })
})

describe('wear', () => {
  it('makes flat oil little easier for an elite bowler who moves: at most 10 pins a game after 24 own throws', () => {
    const [setup, fresh] = onLane(FITTED.flat, 'elite')
    expect(mean(seeds(4).map((seed) => gainOfMoving(setup, fresh, seed, [24])[0]!))).toBeLessThanOrEqual(10)
  })

  it('leaves best play about level while four bowlers throw 40 balls: within 8 pins a game', () => {
    const runs = seeds(3).map((seed) => gainsInTraffic(FITTED.flat, seed, [20, 40]))
    for (const k of [0, 1]) expect(Math.abs(mean(runs.map((run) => run[k]!.best)))).toBeLessThanOrEqual(8)
  })

  // The burnt track gives a deep line room on both sides: 10.7 pins a game more after 80 throws of four.
  it.fails('known gap: leaves best play within 8 pins a game while four bowlers throw 80 balls (10.7)', () => {
    const runs = seeds(3).map((seed) => gainsInTraffic(FITTED.flat, seed, [80]))
    expect(Math.abs(mean(runs.map((run) => run[0]!.best)))).toBeLessThanOrEqual(8)
  })

  // The sanded solid's line, the best there by a tenth of a pin, stays where it is; the pearl's loses 10 pins a game.
  it.fails('known gap: costs a 200 who does not move 5 to 15 pins a game after 24 throws on house oil (1.5)', () => {
    const [setup, fresh] = onLane(FITTED.house, '200')
    const gain = mean(seeds(6).map((seed) => gainOfStaying(setup, fresh, seed, 24).pins))
    expect(gain).toBeLessThanOrEqual(-5)
    expect(gain).toBeGreaterThanOrEqual(-15)
  })

  const pearlMoved = (pattern: (typeof FITTED)['house']): number => {
    const setup = aloneOn(pattern, bowlerOf('200'), [weakPearl])
    const fresh = freshOn(pattern)
    return Math.abs(mean(seeds(3).map((seed) => gainOfStaying(setup, fresh, seed, 36).moved)))
  }

  it.each(['house', 'sport'] as const)("moves the weak pearl's old line 0.5 to 2.5 boards in 36 throws: %s", (name) => {
    expect(pearlMoved(FITTED[name])).toBeGreaterThanOrEqual(0.5)
    expect(pearlMoved(FITTED[name])).toBeLessThanOrEqual(2.5)
  })

  it.fails("known gap: moves the weak pearl's old line half a board or more in 36 throws on flat oil (0.47)", () => {
    expect(pearlMoved(FITTED.flat)).toBeGreaterThanOrEqual(0.5)
  })
})

describe('the best line', () => {
  it('is thrown at another speed than the usual one on 5 to 25 % of lanes and bowlers', () => {
    const best = Object.values({ ...FITTED, ...HELD_OUT }).flatMap((pattern) =>
      LEVELS.map((level) => search(aloneOn(pattern, bowlerOf(level)), freshOn(pattern)).best),
    )
    const share = best.filter(({ aim }) => aim.speedStep !== 0).length / best.length
    expect(share).toBeGreaterThanOrEqual(0.05)
    expect(share).toBeLessThanOrEqual(0.25)
  })

  const idealEntry = (level: '160' | '180' | '200', name: keyof typeof FITTED): number => {
    const [setup, lane] = onLane(FITTED[name], level)
    const { best } = search(setup, lane)
    return rolledAsMeant(lane.film, setup.bag[best.ballIndex]!, setup.bowler, best.aim).entryBoard
  }

  it.each([
    ['160', 'house'],
    ['180', 'house'],
    ['200', 'house'],
    ['180', 'sport'],
    ['200', 'sport'],
  ] as const)('aims a %s at the pocket on %s oil: it enters at 17 to 18.5', (level, name) => {
    expect(idealEntry(level, name)).toBeGreaterThanOrEqual(17)
    expect(idealEntry(level, name)).toBeLessThanOrEqual(18.5)
  })

  // A ball spread over eight boards at the pins finds the other pocket too, where it strikes nearly as often.
  it.fails.each([
    ['160', 'sport', 19.6],
    ['160', 'flat', 19.3],
    ['180', 'flat', 19.4],
    ['200', 'flat', 19.9],
  ] as const)('known gap: aims a %s at the pocket on %s oil (it enters at %f)', (level, name, _measured) => {
    expect(idealEntry(level, name)).toBeLessThanOrEqual(18.5)
  })
})
