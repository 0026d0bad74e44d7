import { mean, sampleStandardDeviation } from 'simple-statistics'
import type { OilPattern } from '../../src/sim/world/lane/pattern.js'
import { aloneOn, FITTED, freshOn, HELD_OUT } from '../facts/lessons/lanes.js'
import {
  bestPinsAGame,
  bowlerOf,
  exitsByLength,
  gainOfMoving,
  gainOfStaying,
  roomAtArrows,
  search,
  speeds,
  straightUpHook,
} from '../facts/lessons/measures.js'
import { rolledAsMeant } from '../facts/lessons/rolls.js'
import { gainsInTraffic } from '../facts/lessons/traffic.js'
import { bag, sandedSolid, symmetricSolid, weakPearl } from '../sim/world/ball/bag-for-tests.js'

const one = (value: number): string => value.toFixed(1)
const say = (line: string): void => void process.stdout.write(`${line}\n`)
const withError = (values: readonly number[]): string =>
  values.length > 1
    ? `${one(mean([...values]))} (${(sampleStandardDeviation([...values]) / Math.sqrt(values.length)).toFixed(1)})`
    : one(values[0]!)

const seedsUpTo = (count: number): string[] => Array.from({ length: count }, (_, k) => `lessons-${k}`)

const PARTS: Readonly<Record<string, (seeds: readonly string[]) => void>> = {
  lengths() {
    for (const level of ['220', '200'] as const) {
      const { exits, slope, meanMiss } = exitsByLength(level)
      say(
        `exits 35/38/41/44/47 ft, ${level}: ${exits.map(one).join(' / ')}; ${slope.toFixed(2)} board a foot; miss ${one(meanMiss)}`,
      )
    }
  },
  hook() {
    const balls = bag.map((ball) => one(straightUpHook(FITTED.flat, ball, 14)))
    say(`straight up 14 on flat 45 ft, strongest to straightest: ${balls.join(' / ')} boards of hook`)
    say(`straight up 10 on house: ${bag.map((ball) => one(straightUpHook(FITTED.house, ball, 10))).join(' / ')}`)
  },
  room() {
    for (const [name, pattern] of Object.entries({ ...FITTED, ...HELD_OUT })) {
      const rows = (['160', '200'] as const).map((level) => {
        const setup = aloneOn(pattern, bowlerOf(level))
        const lane = freshOn(pattern)
        const found = search(setup, lane)
        const rolled = rolledAsMeant(lane.film, setup.bag[found.best.ballIndex]!, setup.bowler, found.best.aim)
        const { feetBoard, targetBoard, speedStep } = found.best.aim
        return `${level}: ${setup.bag[found.best.ballIndex]!.id} ${feetBoard}/${targetBoard}/${speedStep} room ${one(roomAtArrows(lane, setup, found.best))} (balls ${found.perBall
          .slice(0, 5)
          .map((line) => one(roomAtArrows(lane, setup, line)))
          .join(' ')}; ${found.perBall
          .slice(0, 5)
          .map((line) => one(10 * (line.worth - found.best.worth)))
          .join(' ')}) enters ${one(rolled.entryBoard)} at ${one(rolled.entryDegrees)}°`
      })
      say(`room ${name}: ${rows.join(' | ')}`)
    }
  },
  houseOverFlat() {
    say(
      `house over flat: ${(['160', '180', '200', '220', 'elite'] as const)
        .map((level) => `${level} ${one(bestPinsAGame(FITTED.house, level) - bestPinsAGame(FITTED.flat, level))}`)
        .join(', ')}`,
    )
  },
  own(seeds) {
    for (const [name, level] of [
      ['flat', 'elite'],
      ['flat', '200'],
      ['house', '200'],
      ['sport', '200'],
    ] as const) {
      const setup = aloneOn(FITTED[name], bowlerOf(level))
      const fresh = freshOn(FITTED[name])
      const gains = seeds.map((seed) => gainOfMoving(setup, fresh, seed, [12, 24, 48]))
      const stays = seeds.map((seed) => [12, 24, 48].map((throws) => gainOfStaying(setup, fresh, seed, throws)))
      say(
        `own throws 12/24/48 on ${name}, ${level}: moving ${[0, 1, 2].map((k) => withError(gains.map((row) => row[k]!))).join(' / ')}; staying ${[0, 1, 2].map((k) => withError(stays.map((row) => row[k]!.pins))).join(' / ')}; line moves ${[0, 1, 2].map((k) => withError(stays.map((row) => row[k]!.moved))).join(' / ')}`,
      )
    }
  },
  drift(seeds) {
    for (const [name, pattern] of Object.entries({ ...FITTED, ...HELD_OUT }) as [string, OilPattern][])
      say(
        `old line after 36 throws on ${name}: ${[sandedSolid, symmetricSolid, weakPearl]
          .map((ball) => {
            const setup = aloneOn(pattern, bowlerOf('200'), [ball])
            const fresh = freshOn(pattern)
            return `${ball.id} ${withError(seeds.map((seed) => gainOfStaying(setup, fresh, seed, 36).moved))}`
          })
          .join(', ')}`,
      )
  },
  traffic(seeds) {
    for (const name of ['flat', 'house'] as const) {
      const rows = seeds.map((seed) => gainsInTraffic(FITTED[name], seed, [20, 40, 80, 160]))
      for (const k of [0, 1, 2, 3])
        say(
          `traffic ${name} ${rows[0]![k]!.throws}: best ${withError(rows.map((row) => row[k]!.best))} [${rows.map((row) => bag[row[k]!.bestBall]!.id).join(' ')}] by ball ${[0, 1, 2, 3, 4].map((ball) => one(mean(rows.map((row) => row[k]!.perBall[ball]!)))).join(' ')}; first line ${withError(rows.map((row) => row[k]!.firstLine))}`,
        )
    }
  },
}

/**
 * Lessons of the lane: `npm run study lessons [SEEDS] [PART...]`. Before is the model with friction by film and slip alike, a
 * wide aim off the usual speed and pins on their spots; wanted is common practice, no source. Standard errors in brackets.
 *
 *     `npm run study lessons 3`                          before        now                            wanted
 *     near-best exit a foot of length, 35 to 47 ft       0.1 board     .67 (220), .63 (200)           0.5 at least
 *     mean miss of length less 31                        -             1.2 (220), 1.7 (200) boards    2.3 at most
 *     straight up 14 on flat 45 ft hooks                 some 20       12.1, 10.8 strong; 8.2 pearl   9 to 14; 5 to 9
 *     house over flat, pins a game                       8 to 11       13.1 15.5 14.6 25.8 32.4       12-20; 18-35 (160 to elite)
 *     best after 12, 24, 48 own throws, elite on flat    +14, +26, -   +3.6 (.8) +8.3 (1.7) +16 (2)   24: +10 at most
 *     one who stays, 24 throws, 200 on house             -             -1.4 (.3)                      -5 to -15: not reached
 *     the same on sport, elite on flat                   -             -21.1 (1.5), -18.4 (.5)
 *     old line in 36 throws, house: solid, pearl         0.0-0.6       +0.7 (.1), -1.8 (.2) boards    0.5 to 2.5
 *     the same on flat                                   0.0-0.6       +1.8 (.1), -0.5 (.1)           0.5 to 2.5
 *     four bowlers, 40 / 80 / 160 throws on flat         - / - / +35   +2.9 (.4) +10.7 (1.1) +29 (4)  80: within 8: not reached
 *     the same on house                                  -             -0.2 (.6) -0.5 (.3) +1.9 (.2)
 *     who stays while four bowl 80, flat / house         -             -10 (5) / -31 (10)
 *     room of a 200, house / flat                        1.3-2.4 / -   2.2 / 0.9 boards               2, and twice flat
 *     another speed best                                 0 of 48       34 of 514                      5 to 25 %
 *     best line enters, house: 160, 200                  18.5 to 20.2  18.5, 17.7                     17 to 18.5
 *     the same on flat                                   18.5 to 20.2  19.6, 19.9                     17 to 18.5: not reached
 *
 * Fitted on house 40 ft, flat 45 ft and sport 39 ft and the lengths; held out before fitting: heavy house 42 ft (room 2.1; old line
 * +0.9, -1.3), light house 38 ft (2.5; +1.0, -1.4), long flat 43 ft (0.8; +1.6, -0.7), challenge 41 ft (1.2; +1.5, -1.0).
 */
export function run(args: readonly string[]): void {
  const seeds = seedsUpTo(Number(args[0] ?? 4))
  const wanted = args.length > 1 ? args.slice(1) : Object.keys(PARTS)
  for (const part of wanted) PARTS[part]!(seeds)
  say(`another speed best in ${speeds.offUsual} of ${speeds.searches} searches`)
}
