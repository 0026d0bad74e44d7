import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Ball, ballsAllowed, nextBall, type Scoring, tally } from '../../src/sim/world/scoring/game.js'

/** Balls of a game from a printed score line: frames by commas, balls by spaces, F for a foul that felled nothing. */
function parse(line: string): Ball[][] {
  return line.split(',').map((frame) => {
    let standing = 10
    return frame
      .trim()
      .split(/\s+/)
      .map((symbol): Ball => {
        if (symbol === 'F') return { felled: 0, foul: true }
        const felled = symbol === 'X' || symbol === '/' ? standing : symbol === '-' ? 0 : Number(symbol)
        standing = felled === standing ? 10 : standing - felled
        return felled
      })
  })
}

const cumulative = (scoring: Scoring, line: string) => tally(scoring, parse(line)).frames.map((f) => f.cumulative)
const total = (scoring: Scoring, line: string) => tally(scoring, parse(line)).total
const repeat = (frame: string, times: number, last = frame) => [...Array(times - 1).fill(frame), last].join(', ')

describe('printed games', () => {
  // International Bowling Federation rule book, 2.1.2: the specimen score sheet
  const specimen = 'X, X, X, 7 2, 8 /, F 9, X, 7 /, 9 -, X X 8'
  const specimenCurrentFrame = 'X, X, X, 7 2, 8 /, F 9, X, 7 /, 9 -, X'

  it('adds up the rule-book specimen to 180', () => {
    expect(cumulative('ten-pin', specimen)).toEqual([30, 57, 76, 85, 95, 104, 124, 143, 152, 180])
  })

  it('shows the specimen as it was written', () => {
    const symbols = tally('ten-pin', parse(specimen)).frames.map((f) => f.symbols.join(' '))
    expect(symbols.join(', ')).toBe(specimen)
  })

  it('adds up the same game to 212 in current-frame scoring', () => {
    // worked by hand from the international rule: strike 30, spare 10 + own first ball, no fill balls
    expect(cumulative('current-frame', specimenCurrentFrame)).toEqual([30, 60, 90, 99, 117, 126, 156, 173, 182, 212])
  })

  it('adds up the Scottish rule-book line to 179', () => {
    expect(total('ten-pin', 'X, X, X, 7 2, 8 /, F 9, X, 7 /, 9 -, X X 7')).toBe(179)
  })

  it('counts a perfect game 300: twelve strikes, or ten in current-frame scoring', () => {
    // International Bowling Federation 2.1.5; encyclopaedia article citing World Bowling for current-frame
    expect(total('ten-pin', repeat('X', 10, 'X X X'))).toBe(300)
    expect(total('current-frame', repeat('X', 10))).toBe(300)
  })

  it('counts the arithmetic classics', () => {
    // each follows in one line from the rules: 10 x 19, 10 x 15, 10 x 20, 10 x 9
    expect(total('ten-pin', repeat('9 /', 10, '9 / 9'))).toBe(190)
    expect(total('ten-pin', repeat('5 /', 10, '5 / 5'))).toBe(150)
    expect(total('ten-pin', 'X, 9 /, X, 9 /, X, 9 /, X, 9 /, X, 9 / X')).toBe(200)
    expect(total('ten-pin', '9 /, X, 9 /, X, 9 /, X, 9 /, X, 9 /, X 9 /')).toBe(200)
    expect(total('ten-pin', repeat('9 -', 10))).toBe(90)
    expect(total('current-frame', repeat('9 /', 10))).toBe(190)
    expect(total('current-frame', repeat('5 /', 10))).toBe(150)
    expect(total('current-frame', 'X, 9 /, X, 9 /, X, 9 /, X, 9 /, X, 9 /')).toBe(245)
    expect(total('current-frame', '9 /, X, 9 /, X, 9 /, X, 9 /, X, 9 /, X')).toBe(245)
    expect(total('current-frame', repeat('9 -', 10))).toBe(90)
  })

  it('keeps the bounds of the British rules: strike then spare is 20, a double then 9 is 29', () => {
    expect(tally('ten-pin', parse('X, 7 /')).frames[0].frameScore).toBe(20)
    expect(tally('ten-pin', parse('X, X, 9 -')).frames[0].frameScore).toBe(29)
  })
})

describe('fouls (US playing rules 5a, 6b)', () => {
  const foul = (felled: number): Ball => ({ felled, foul: true })

  it('respots ten after a first-ball foul; ten on the second is a spare', () => {
    expect(nextBall('ten-pin', [[foul(8)]])).toEqual({
      frame: 1,
      ball: 2,
      standingReset: true,
      newRack: false,
      standing: 10,
    })
    const line = tally('ten-pin', [[foul(8), 10], [4]])
    expect(line.frames[0].symbols).toEqual(['F', '/'])
    expect(line.frames[0].frameScore).toBe(14)
  })

  it('scores that spare 10 in current-frame, its first ball counting nothing', () => {
    expect(tally('current-frame', [[foul(8), 10]]).frames[0].frameScore).toBe(10)
  })

  it('counts only the first ball when the second is a foul', () => {
    for (const scoring of ['ten-pin', 'current-frame'] as const) {
      const line = tally(scoring, [[6, foul(4)]])
      expect(line.frames[0].symbols).toEqual(['6', 'F'])
      expect(line.frames[0].frameScore).toBe(6)
      expect(line.frames[0].complete).toBe(true)
    }
  })

  it('is no strike to fell ten with a foul', () => {
    const line = tally('ten-pin', [[foul(10), 3]])
    expect(line.frames[0].frameScore).toBe(3)
  })

  it('respots ten for the last fill ball after a foul on the first', () => {
    const nine = Array.from({ length: 9 }, () => [9, 0])
    expect(nextBall('ten-pin', [...nine, [10, foul(10)]])?.standing).toBe(10)
    const line = tally('ten-pin', [...nine, [10, foul(10), 10]])
    expect(line.frames[9].symbols).toEqual(['X', 'F', '/'])
    expect(line.total).toBe(81 + 20)
  })
})

describe('what is thrown next', () => {
  const strikes = (count: number) => Array.from({ length: count }, () => [10])

  it('walks a game ball by ball', () => {
    const at = (balls: number[][]) => {
      const next = nextBall('ten-pin', balls)
      return next && [next.frame, next.ball, next.standing, next.newRack]
    }
    expect(at([])).toEqual([1, 1, 10, true])
    expect(at([[7]])).toEqual([1, 2, 3, false])
    expect(at([[0]])).toEqual([1, 2, 10, false])
    expect(at([[10]])).toEqual([2, 1, 10, true])
    expect(at([...strikes(9), [10]])).toEqual([10, 2, 10, true])
    expect(at([...strikes(9), [10, 6]])).toEqual([10, 3, 4, false])
    expect(at([...strikes(9), [10, 10]])).toEqual([10, 3, 10, true])
    expect(at([...strikes(9), [6, 4]])).toEqual([10, 3, 10, true])
    expect(at([...strikes(9), [6, 3]])).toBeNull()
    expect(nextBall('current-frame', strikes(10))).toBeNull()
    expect(nextBall('current-frame', [...strikes(9), [6, 4]])).toBeNull()
  })

  it('says how many balls a frame may still take', () => {
    expect(ballsAllowed('ten-pin', 1, [])).toBe(2)
    expect(ballsAllowed('ten-pin', 1, [10])).toBe(0)
    expect(ballsAllowed('ten-pin', 10, [10])).toBe(2)
    expect(ballsAllowed('ten-pin', 10, [4, 6])).toBe(1)
    expect(ballsAllowed('current-frame', 10, [10])).toBe(0)
  })

  it('refuses what cannot have happened, in one sentence', () => {
    expect(() => tally('ten-pin', [[7, 4]])).toThrow(
      new RangeError('frame 1, ball 2: 4 pins felled, but it must be a whole number from 0 to the 3 that stood.'),
    )
    expect(() => tally('ten-pin', [[10, 1]])).toThrow(
      new RangeError('frame 1, ball 2: the frame was over after ball 1.'),
    )
    expect(() => tally('ten-pin', [[3], [4, 5]])).toThrow(
      new RangeError('Frame 2 has balls, but frame 1 is not finished.'),
    )
    expect(() => tally('ten-pin', [...strikes(10), [10]])).toThrow(RangeError)
    expect(() => tally('current-frame', [...strikes(9), [10, 10]])).toThrow(RangeError)
    expect(() => tally('ten-pin', [[2.5]])).toThrow(RangeError)
  })
})

/** Games from lists of fractions: each ball fells that share of what stands; possibly cut short, possibly with fouls. */
function play(scoring: Scoring, throws: readonly { share: number; foul: boolean }[]): Ball[][] {
  const balls: Ball[][] = Array.from({ length: 10 }, () => [])
  for (const { share, foul } of throws) {
    const next = nextBall(scoring, balls)
    if (next === null) break
    const felled = Math.min(next.standing, Math.floor(share * (next.standing + 1)))
    balls[next.frame - 1].push(foul ? { felled, foul } : felled)
  }
  return balls
}

const throwsOf = (minLength: number) =>
  fc.array(
    fc.record({
      // strikes and cleared racks often enough to meet every bonus
      share: fc.oneof(fc.constant(1), fc.double({ min: 0, max: 1, noNaN: true })),
      foul: fc.nat(11).map((n) => n === 0),
    }),
    { minLength, maxLength: 21 },
  )

const scorings = fc.constantFrom<Scoring>('ten-pin', 'current-frame')
const counts = (ball: Ball): number => (typeof ball === 'number' ? ball : ball.foul ? 0 : ball.felled)

/**
 * Ten-pin by the other road: walk the balls forward, each worth its pins times one plus the bonuses waiting for it;
 * bonuses are earned in frames 1 to 9 only.
 */
function forwardTotal(balls: readonly (readonly Ball[])[]): number {
  let sum = 0
  let onNext = 0
  let onSecond = 0
  balls.forEach((frame, index) => {
    let first = 0
    frame.forEach((ball, k) => {
      sum += counts(ball) * (1 + onNext)
      onNext = onSecond
      onSecond = 0
      if (index === 9) return
      if (k === 0 && counts(ball) === 10) {
        onNext += 1
        onSecond += 1
      } else if (k === 1 && first + counts(ball) === 10) onNext += 1
      first += counts(ball)
    })
  })
  return sum
}

describe('every game that can be bowled', () => {
  it('scores 0 to 300, adds up over its frames, and never runs backwards', () => {
    fc.assert(
      fc.property(scorings, throwsOf(21), (scoring, throws) => {
        const line = tally(scoring, play(scoring, throws))
        expect(line.complete).toBe(true)
        expect(line.total).toBeGreaterThanOrEqual(0)
        expect(line.total).toBeLessThanOrEqual(300)
        expect(line.maximumPossible).toBe(line.total)
        let running = 0
        for (const frame of line.frames) {
          expect(frame.frameScore).toBeGreaterThanOrEqual(0)
          expect(frame.frameScore).toBeLessThanOrEqual(30)
          running += frame.frameScore ?? Number.NaN
          expect(frame.cumulative).toBe(running)
        }
        expect(line.total).toBe(running)
      }),
      { numRuns: 2000, seed: 41 },
    )
  })

  it('scores the same by waiting bonuses as by looking ahead', () => {
    fc.assert(
      fc.property(throwsOf(0), (throws) => {
        const balls = play('ten-pin', throws)
        expect(tally('ten-pin', balls).total).toBe(forwardTotal(balls))
      }),
      { numRuns: 3000, seed: 42 },
    )
  })

  it('brackets the final score between what is certain and what is possible, ever closer', () => {
    fc.assert(
      fc.property(scorings, throwsOf(21), (scoring, throws) => {
        const final = tally(scoring, play(scoring, throws)).total
        let certain = 0
        let possible = 300
        for (let n = 0; n <= 21; n += 1) {
          const line = tally(scoring, play(scoring, throws.slice(0, n)))
          expect(line.total).toBeGreaterThanOrEqual(certain)
          expect(line.maximumPossible).toBeLessThanOrEqual(possible)
          certain = line.total
          possible = line.maximumPossible
          expect(certain).toBeLessThanOrEqual(final)
          expect(possible).toBeGreaterThanOrEqual(final)
        }
      }),
      { numRuns: 300, seed: 43 },
    )
  })
})
