import { mean } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import type { OilPattern } from '../../../../src/sim/world/lane/pattern.js'
import { evenSolid, hybrid, strongSolid } from './field-balls.js'
import { entryBoard, laydownForPocket, playShots, USUAL } from './line-drift.js'
import { flatForty, flatFortyFive } from './patterns-for-tests.js'

const TARGET = 11
const reader = dynamicsOf(strongSolid)

/** The line of the strong solid on fresh oil, and the lanes of four fields of strong balls that play over its target. */
function played(pattern: OilPattern) {
  const runs = ['a', 'b', 'c', 'd'].map((seed) =>
    playShots(pattern, [strongSolid, evenSolid, hybrid], TARGET, 40, seed),
  )
  const film = (run: number, shots: number) => runs[run]![shots]!.film
  const guess = { ...USUAL, laydownBoard: TARGET + 5, targetBoard: TARGET }
  const shot = { ...guess, laydownBoard: laydownForPocket(film(0, 0), reader, guess, 0) }
  const overRuns = (of: (run: number) => number) => mean(runs.map((_, run) => of(run)))
  return {
    /** How far left the feet go, the target half as far, to hit the pocket again. */
    move: (shots: number) =>
      overRuns((run) => laydownForPocket(film(run, shots), reader, shot, 0.5) - shot.laydownBoard),
    entry: (shots: number, asideBoards: number) =>
      overRuns((run) => entryBoard(film(run, shots), reader, { ...shot, targetBoard: TARGET + asideBoards })),
  }
}

describe('a line as a field plays it', () => {
  const long = played(flatFortyFive)

  it('drifts left by 1 to 3 boards in 20 shots and by up to 5 in 40 on a flat 45 ft pattern (common practice, no source)', () => {
    expect(long.move(20)).toBeGreaterThan(1)
    expect(long.move(20)).toBeLessThan(3)
    expect(long.move(40)).toBeGreaterThan(long.move(20))
    expect(long.move(40)).toBeLessThan(5)
  })

  it('sends a ball 1 board right of the target light or past the headpin when fresh (common practice, no source)', () => {
    expect(long.entry(0, -1)).toBeLessThan(16)
  })

  // The old line itself comes back from board 17.4 to 20.4, high.
  it.fails('known gap: lets that ball come back past board 17 after 40 shots (measured 16.5; common practice, no source)', () => {
    expect(long.entry(40, -1)).toBeGreaterThan(17)
  })

  describe('against 40 ft of the same volume', () => {
    const short = played(flatForty)

    it.fails('known gap: moves a tenth sooner in 20 shots (measured 1.05 boards to 1.02; common practice, no source)', () => {
      expect(long.move(20)).toBeGreaterThan(1.1 * short.move(20))
    })

    it.fails('known gap: moves a tenth sooner in 40 shots (measured 2.18 boards to 2.10; common practice, no source)', () => {
      expect(long.move(40)).toBeGreaterThan(1.1 * short.move(40))
    })
  })
})
