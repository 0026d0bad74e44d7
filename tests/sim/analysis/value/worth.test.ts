import fc from 'fast-check'
import { mean, standardDeviation } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { type Before, BONUS_AFTER, expectedGameByProgramme } from '../../../../src/sim/analysis/value/programme.js'
import { waitingBonus, weightsOfNextBall } from '../../../../src/sim/analysis/value/score-state.js'
import {
  expectedGame,
  type FirstBallOutcome,
  frameOdds,
  frameWeights,
  leaveWorth,
  NO_BONUS,
  stationaryBonus,
  weighFrame,
  weighLeave,
  weighSecondBall,
} from '../../../../src/sim/analysis/value/worth.js'
import { stream } from '../../../../src/sim/random.js'
import { nextBall, type Scoring, tally } from '../../../../src/sim/world/scoring/game.js'

const always = (felled: number, conversion: number, missPins = 0): FirstBallOutcome[] => [
  { felled, chance: 1, conversion, missPins },
]

/** Random outcome lists: two to six leaves and perhaps a strike, any chances. */
const outcomeLists = fc
  .array(
    fc.record({
      felled: fc.nat(10),
      chance: fc.double({ min: 0.01, max: 1, noNaN: true }),
      conversion: fc.double({ min: 0, max: 1, noNaN: true }),
      missShare: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { minLength: 2, maxLength: 7 },
  )
  .map((list): FirstBallOutcome[] => {
    const sum = list.reduce((s, { chance }) => s + chance, 0)
    return list.map(({ felled, chance, conversion, missShare }) => ({
      felled,
      chance: chance / sum,
      conversion,
      missPins: missShare * Math.max(0, 9 - felled),
    }))
  })

const gameOutcomes = fc.array(outcomeLists, { minLength: 12, maxLength: 12 })
const scorings = fc.constantFrom<Scoring>('ten-pin', 'current-frame')
const befores = fc.constantFrom<Before>('open', 'spare', 'strike', 'double')

/** An invented bowler, good but not special. */
const CLUB: readonly FirstBallOutcome[] = [
  { felled: 10, chance: 0.42, conversion: 0, missPins: 0 },
  { felled: 9, chance: 0.33, conversion: 0.85, missPins: 0 },
  { felled: 8, chance: 0.13, conversion: 0.7, missPins: 0.6 },
  { felled: 8, chance: 0.05, conversion: 0.12, missPins: 0.9 },
  { felled: 6, chance: 0.07, conversion: 0.35, missPins: 2.4 },
]
const CLUB_ODDS = frameOdds(CLUB)

function drawOutcome(outcomes: readonly FirstBallOutcome[], uniform: number): FirstBallOutcome {
  let below = 0
  for (const outcome of outcomes) {
    below += outcome.chance
    if (uniform < below) return outcome
  }
  return outcomes[outcomes.length - 1]
}

describe('expected game', () => {
  it.each([
    // the rules' own arithmetic: 12 strikes (or 10), and 10 x 19, 15, 9
    ['ten-pin', 10, 0, 300],
    ['ten-pin', 9, 1, 190],
    ['ten-pin', 5, 1, 150],
    ['ten-pin', 9, 0, 90],
    ['current-frame', 10, 0, 300],
    ['current-frame', 9, 1, 190],
    ['current-frame', 5, 1, 150],
    ['current-frame', 9, 0, 90],
  ] as const)('%s, always %i with conversion %i: %i', (scoring, felled, conversion, score) => {
    const outcomes = always(felled, conversion)
    expect(expectedGame(scoring, frameOdds(outcomes))).toBeCloseTo(score, 9)
    expect(expectedGameByProgramme(scoring, [outcomes])).toBeCloseTo(score, 9)
  })

  it('is the same by closed form and by programme, whatever the odds of each frame', () => {
    fc.assert(
      fc.property(scorings, gameOutcomes, (scoring, outcomes) => {
        const closed = expectedGame(scoring, outcomes.map(frameOdds))
        expect(Math.abs(closed - expectedGameByProgramme(scoring, outcomes))).toBeLessThan(1e-9)
      }),
      { numRuns: 300, seed: 51 },
    )
  })

  it.each(['ten-pin', 'current-frame'] as const)('is the mean of games bowled and added up (%s)', (scoring) => {
    // the score sheet is the judge: random games scored by tally(), 4 standard errors allowed
    const random = stream({ seed: 'worth', game: 0, frame: 0, ball: 0, purpose: 'study' })
    const totals: number[] = []
    for (let game = 0; game < 12_000; game += 1) {
      const balls: number[][] = Array.from({ length: 10 }, () => [])
      let leave: FirstBallOutcome = CLUB[0]
      for (let next = nextBall(scoring, balls); next !== null; next = nextBall(scoring, balls)) {
        const frame = balls[next.frame - 1]
        if (next.newRack) {
          leave = drawOutcome(CLUB, random())
          frame.push(leave.felled)
        } else if (random() < leave.conversion) frame.push(next.standing)
        else {
          // a whole number of pins with mean missPins
          const whole = Math.floor(leave.missPins)
          frame.push(whole + (random() < leave.missPins - whole ? 1 : 0))
        }
      }
      totals.push(tally(scoring, balls).total)
    }
    const standardError = standardDeviation(totals) / Math.sqrt(totals.length)
    expect(Math.abs(mean(totals) - expectedGame(scoring, CLUB_ODDS))).toBeLessThan(4 * standardError)
    expect(standardError).toBeLessThan(0.25)
  })

  it('refuses chances that do not add up', () => {
    expect(() => frameOdds([{ felled: 9, chance: 0.5, conversion: 0, missPins: 0 }])).toThrow(RangeError)
  })
})

describe('worth of one choice', () => {
  it('differs between choices by exactly what the programme says, in any frame and bonus state', () => {
    fc.assert(
      fc.property(
        scorings,
        gameOutcomes,
        outcomeLists,
        fc.integer({ min: 1, max: 10 }),
        befores,
        (scoring, outcomes, choice, frame, before) => {
          const odds = outcomes.map(frameOdds)
          const weights = frameWeights(scoring, BONUS_AFTER[before], odds[frame], odds[frame + 1])
          const closed = weighFrame(weights, frameOdds(choice)) - weighFrame(weights, odds[frame - 1])
          const changed = outcomes.map((own, index) => (index === frame - 1 ? choice : own))
          const programme =
            expectedGameByProgramme(scoring, changed, frame, before) -
            expectedGameByProgramme(scoring, outcomes, frame, before)
          expect(Math.abs(closed - programme)).toBeLessThan(1e-9)
        },
      ),
      { numRuns: 200, seed: 52 },
    )
  })

  it('averages a leave table back to the frame it is made of', () => {
    fc.assert(
      fc.property(scorings, outcomeLists, fc.double({ min: 0, max: 2, noNaN: true }), (scoring, outcomes, b1) => {
        const weights = frameWeights(scoring, { b1, b2: b1 / 2 }, CLUB_ODDS)
        const byLeaves = outcomes.reduce((sum, o) => sum + o.chance * weighLeave(weights, o), 0)
        expect(byLeaves).toBeCloseTo(weighFrame(weights, frameOdds(outcomes)), 10)
      }),
      { numRuns: 200, seed: 53 },
    )
  })

  it('is zero on average for the baseline itself', () => {
    for (const scoring of ['ten-pin', 'current-frame'] as const)
      for (const bonus of [stationaryBonus(CLUB_ODDS), ...Object.values(BONUS_AFTER)]) {
        const average = CLUB.reduce(
          (sum, o) => sum + o.chance * leaveWorth(CLUB_ODDS, bonus, scoring, o.felled, o.conversion, o.missPins),
          0,
        )
        expect(Math.abs(average)).toBeLessThan(1e-10)
      }
  })

  it('prices a strike against a nine-count in current-frame scoring by hand', () => {
    // strike 30; nine-count made 10 + 9, missed 9
    const strike = leaveWorth(CLUB_ODDS, NO_BONUS, 'current-frame', 10, 0, 0)
    const nine = leaveWorth(CLUB_ODDS, NO_BONUS, 'current-frame', 9, 0.85, 0)
    expect(strike - nine).toBeCloseTo(30 - (0.85 * 19 + 0.15 * 9), 10)
  })

  it('makes a strike dearer the more bonuses wait', () => {
    const edge = (before: Before) =>
      leaveWorth(CLUB_ODDS, BONUS_AFTER[before], 'ten-pin', 10, 0, 0) -
      leaveWorth(CLUB_ODDS, BONUS_AFTER[before], 'ten-pin', 9, 0.85, 0)
    expect(edge('open')).toBeLessThan(edge('spare'))
    expect(edge('spare')).toBeLessThan(edge('strike'))
    expect(edge('strike')).toBeLessThan(edge('double'))
  })
})

describe('bonuses waiting', () => {
  it('stand as the score sheet says', () => {
    const at = (...frames: number[][]) => waitingBonus('ten-pin', frames)
    expect(at()).toEqual(BONUS_AFTER.open)
    expect(at([9, 0])).toEqual(BONUS_AFTER.open)
    expect(at([9, 1])).toEqual(BONUS_AFTER.spare)
    expect(at([9, 1], [10])).toEqual(BONUS_AFTER.strike)
    expect(at([10], [9, 1])).toEqual(BONUS_AFTER.spare)
    expect(at([10], [10])).toEqual(BONUS_AFTER.double)
    expect(at([10], [10], [10])).toEqual(BONUS_AFTER.double)
    expect(waitingBonus('current-frame', [[10], [10]])).toEqual(BONUS_AFTER.open)
  })

  it('settle at the stationary means', () => {
    // long-run frequencies of frame endings, walked frame by frame
    const { strike, spare } = CLUB_ODDS
    const share: Record<Before, number> = { open: 1, spare: 0, strike: 0, double: 0 }
    for (let frame = 0; frame < 60; frame += 1) {
      const running = share.strike + share.double
      share.strike = strike * (share.open + share.spare)
      share.double = strike * running
      share.spare = spare
      share.open = 1 - strike - spare
    }
    const average = (bonus: 'b1' | 'b2') =>
      (Object.keys(share) as Before[]).reduce((sum, before) => sum + share[before] * BONUS_AFTER[before][bonus], 0)
    expect(stationaryBonus(CLUB_ODDS).b1).toBeCloseTo(average('b1'), 12)
    expect(stationaryBonus(CLUB_ODDS).b2).toBeCloseTo(average('b2'), 12)
  })
})

describe('worth as the game stands', () => {
  /** Expected final score from here on, by playing out every continuation on the score sheet. */
  function expectedFinal(
    scoring: Scoring,
    balls: number[][],
    outcomes: readonly FirstBallOutcome[],
    leave?: FirstBallOutcome,
  ): number {
    const next = nextBall(scoring, balls)
    if (next === null) return tally(scoring, balls).total
    const scoreWith = (pins: number, left?: FirstBallOutcome) => {
      const more = balls.map((frame, index) => (index === next.frame - 1 ? [...frame, pins] : frame))
      return expectedFinal(scoring, more, outcomes, left)
    }
    if (next.newRack) return outcomes.reduce((sum, o) => sum + o.chance * scoreWith(o.felled, o), 0)
    const { conversion, missPins } = leave!
    return conversion * scoreWith(next.standing) + (1 - conversion) * scoreWith(missPins)
  }

  const FEW: readonly FirstBallOutcome[] = [
    { felled: 10, chance: 0.5, conversion: 0, missPins: 0 },
    { felled: 9, chance: 0.3, conversion: 0.8, missPins: 0 },
    { felled: 7, chance: 0.2, conversion: 0.4, missPins: 1 },
  ]
  const FEW_ODDS = frameOdds(FEW)
  const opening = [[9, 0], [9, 1], [10], [8, 1], [10], [10], [7, 2]]

  it.each([
    ['the ninth after an open frame', [...opening, [9, 0], [], []]],
    ['the ninth after a strike', [...opening, [10], [], []]],
    ['the tenth after two strikes', [...opening, [10], [10], []]],
    ['the tenth after a spare', [...opening, [10], [9, 1], []]],
    ['the first fill ball after three strikes', [...opening, [10], [10], [10]]],
    ['the first fill ball after a strike in the tenth alone', [...opening, [10], [8, 1], [10]]],
    ['the last fill ball after two', [...opening, [10], [10], [10, 10]]],
    ['the last fill ball after a spare', [...opening, [10], [10], [9, 1]]],
  ])('agrees with the score sheet at %s', (_name, balls) => {
    for (const scoring of ['ten-pin', 'current-frame'] as const) {
      if (scoring === 'current-frame' && balls[9].length > 0) continue
      const weights = weightsOfNextBall(scoring, balls, FEW_ODDS)!
      const next = nextBall(scoring, balls)!
      const bySheet = (o: FirstBallOutcome) => {
        const more = balls.map((frame, index) => (index === next.frame - 1 ? [...frame, o.felled] : frame))
        return expectedFinal(scoring, more, FEW, o)
      }
      // differences between any two leaves, as only those are worth anything
      for (const a of FEW) {
        const closed = weighLeave(weights, a) - weighLeave(weights, FEW[0])
        expect(closed).toBeCloseTo(bySheet(a) - bySheet(FEW[0]), 9)
      }
    }
  })

  it.each([
    ['the ninth after a strike', [...opening, [10], [7], []]],
    ['the tenth after two strikes', [...opening, [10], [10], [7]]],
    ['the third ball after a strike and seven', [...opening, [10], [10], [10, 7]]],
  ])('prices the spare attempt in %s', (_name, balls) => {
    const weights = weightsOfNextBall('ten-pin', balls, FEW_ODDS)!
    const sure = (conversion: number, missPins: number) =>
      expectedFinal('ten-pin', balls, FEW, { felled: 7, chance: 1, conversion, missPins })
    const closed = weighSecondBall(weights, 7, 1, 3) - weighSecondBall(weights, 7, 0, 1)
    expect(closed).toBeCloseTo(sure(1, 0) - sure(0, 1), 9)
  })

  it('has nothing to weigh when the game is over', () => {
    expect(
      weightsOfNextBall(
        'current-frame',
        Array.from({ length: 10 }, () => [10]),
        FEW_ODDS,
      ),
    ).toBeNull()
  })
})
