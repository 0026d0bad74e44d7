import { describe, expect, it } from 'vitest'
import type { HypothesisSet } from '../../../../src/sim/analysis/belief/hypotheses.js'
import { beginSession, type FairSession, follow } from '../../../../src/sim/analysis/belief/session.js'
import { bestFairChoice, gradeFair, prepareFair, pricesOf } from '../../../../src/sim/analysis/grade/fair-grade.js'
import { choose } from '../../../../src/sim/analysis/policies/policies.js'
import { facesNewRack, playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import type { BlockEvent, BlockState, Decision, Truth } from '../../../../src/sim/world/block/types.js'
import { emptyFilm } from '../../../../src/sim/world/lane/film.js'
import { freshLane } from '../../../../src/sim/world/lane/wear.js'
import { flatFortyFive } from '../../world/lane/patterns-for-tests.js'
import { lopsided, mirrored, setup, stateAfter } from './block-for-tests.js'

const moved = (decision: Decision, feet: number, target: number): Decision => ({
  ...decision,
  aim: {
    ...decision.aim,
    feetBoard: decision.aim.feetBoard + feet,
    targetBoard: decision.aim.targetBoard + target,
  },
})

const suggestionOf = (state: BlockState): Decision => {
  const view = playerView(state)
  if (!view) throw new Error('the block is over')
  return view.suggestion
}

/** The same block at a first ball. */
function atFirstBall(state: BlockState): BlockState {
  let later = state
  while (!facesNewRack(later)) later = advance(later, choose('thumb', later))
  return later
}

/** The same block as if the coming ball faced what `standing` says. */
const facing = (state: BlockState, standing: number): BlockState => ({ ...state, standing })
const SEVEN_PIN = 1 << 6

const quiet = { ...setup, field: [] }
const ready = atFirstBall(stateAfter(quiet, 4))

/** The same block with everything hidden made into something else: oil, true paths, misses. */
function withOtherTruth(state: BlockState): BlockState {
  const nothing: Truth = {
    path: new Float64Array(120),
    entryBoard: 3,
    entryAngleRadians: 0.2,
    entrySpeedMetresPerSecond: 1,
    breakpointBoard: 39,
    breakpointFeet: 2,
    hookStartFeet: 1,
    rollStartFeet: 2,
    leftLaneFeet: 3,
    touched: 1023,
    laneBefore: freshLane(emptyFilm()),
    normals: [9, 9, 9, 9, 9],
  }
  const events = state.events.map((event): BlockEvent => {
    if (event.type === 'throw') return { type: 'throw', record: { ...event.record, truth: nothing } }
    if (event.type !== 'field-throw') return event
    return {
      type: 'field-throw',
      record: { ...event.record, truth: nothing, aim: { feetBoard: 9, targetBoard: 9, speedStep: 1 } },
    }
  })
  return {
    ...state,
    setup: { ...state.setup, lanes: [{ name: 'lane 3', oil: { kind: 'pattern', pattern: flatFortyFive } }] },
    lanes: [freshLane(emptyFilm())],
    events,
    throws: events.flatMap((event) => (event.type === 'throw' ? [event.record] : [])),
    fieldThrows: events.flatMap((event) => (event.type === 'field-throw' ? [event.record] : [])),
  }
}

describe('fair grade', () => {
  it('reads nothing hidden: other oil, paths and misses leave it the same to the last bit', () => {
    const played = atFirstBall(stateAfter(setup, 2))
    for (const state of [played, facing(played, SEVEN_PIN)]) {
      const choice = moved(suggestionOf(state), 3, 0.5)
      expect(gradeFair(withOtherTruth(state), choice)).toEqual(gradeFair(state, choice))
    }
  })

  it('is the same for a left-hander on the mirrored lane', () => {
    const right = atFirstBall(
      stateAfter({ ...quiet, lanes: [{ name: 'l', oil: { kind: 'pattern', pattern: lopsided } }] }, 2),
    )
    const left = stateAfter(
      {
        ...right.setup,
        bowler: { ...right.setup.bowler, hand: 'left' },
        lanes: [{ name: 'l', oil: { kind: 'pattern', pattern: mirrored(lopsided) } }],
      },
      right.throws.length,
    )
    expect(left.balls).toEqual(right.balls)
    const choice = moved(suggestionOf(right), 2, 1)
    expect(gradeFair(left, choice)).toEqual(gradeFair(right, choice))
  })

  it('is the same whether throws are taken in one by one or all at once', () => {
    const late = stateAfter(setup, 2)
    const early = stateAfter(setup, 1)
    const atOnce = follow(beginSession(setup, late.seed), { ...late, setup })
    const stepped = follow(follow(beginSession(setup, late.seed), early), {
      ...late,
      events: [...early.events, ...late.events.slice(early.events.length)],
    })
    const setsOf = ({ beliefs: [{ toChooseBy, toCountBy }] }: FairSession): HypothesisSet[] => [
      toChooseBy.hypotheses,
      toCountBy().hypotheses,
    ]
    const [stepwise, whole] = [setsOf(stepped), setsOf(atOnce)]
    for (const k of [0, 1]) {
      expect(stepwise[k].weights).toEqual(whole[k].weights)
      expect(stepwise[k].films).toEqual(whole[k].films)
    }
    expect(whole[0].films).not.toEqual(whole[1].films)
  })

  it('takes nothing for the best choice and never more than is lost', () => {
    const state = ready
    const best = bestFairChoice(state)
    expect(gradeFair(state, best)).toMatchObject({ lostPins: 0, givenAwayPins: 0, best, percentile: 1 })
    for (const choice of [moved(best, 5, 0), moved(best, -3, -1), moved(best, 1, 0)]) {
      const grade = gradeFair(state, choice)
      if (grade.kind === 'practice') throw new Error('not practice')
      const { lostPins, tooCloseToCallPins, standardErrorPins, givenAwayPins } = grade
      expect(tooCloseToCallPins).toBe(Math.max(0.1, 1.64 * standardErrorPins))
      expect([0, lostPins]).toContain(givenAwayPins)
      if (lostPins <= tooCloseToCallPins) expect(givenAwayPins).toBe(0)
      expect(grade.bestWorth - grade.choiceWorth).toBeCloseTo(lostPins, 9)
    }
  })

  it('charges the whole of a loss, and shows a best that itself costs nothing and is no further away than the very best', () => {
    const state = ready
    const choices = prepareFair(state)
    if (choices.kind !== 'first-ball') throw new Error('a first ball is ready')
    const { priceOf, shownBest } = pricesOf(state, choices)
    const last = suggestionOf(state)
    for (const feet of [4, 6]) {
      const choice = moved(last, feet, 0)
      const { best, givenAwayPins, lostPins } = gradeFair(state, choice, choices)
      expect(givenAwayPins).toBe(lostPins)
      expect(priceOf(choice).chargedPins).toBe(givenAwayPins)
      expect(best).toEqual(shownBest())
      expect(priceOf(best).chargedPins).toBe(0)
    }
    const away = (one: Decision): number =>
      Math.abs(one.aim.feetBoard - last.aim.feetBoard) + Math.abs(one.aim.targetBoard - last.aim.targetBoard)
    const leader = bestFairChoice(state, choices)
    if (shownBest().ballId === leader.ballId) expect(away(shownBest())).toBeLessThanOrEqual(away(leader) + 5)
  })

  it('forgives half a board of slide beside a choice that costs nothing, and no whole one', () => {
    const choices = prepareFair(ready)
    if (choices.kind !== 'first-ball') throw new Error('a first ball is ready')
    const { priceOf } = pricesOf(ready, choices)
    const isGood = (one: Decision): boolean => priceOf(one).lostPins <= priceOf(one).tooCloseToCallPins
    const best = bestFairChoice(ready, choices)
    for (let feet = -4; feet <= 4; feet += 0.5) {
      const choice = moved(best, feet, 0)
      const isFree = [-0.5, 0, 0.5].some((off) => isGood(moved(choice, off, 0)))
      expect(priceOf(choice).chargedPins).toBe(isFree ? 0 : priceOf(choice).lostPins)
    }
  })

  it('takes more for a line that misses the pocket by far than for one beside it', () => {
    const state = ready
    const best = bestFairChoice(state)
    const lost = [0, 2, 4, 6].map((feet) => gradeFair(state, moved(best, feet, 0)).lostPins ?? Number.NaN)
    expect([...lost].sort((a, b) => a - b)).toEqual(lost)
    expect(lost[3]).toBeGreaterThan(3)
  })

  it('puts no pins at stake in practice, only what a throw teaches', () => {
    const state = stateAfter(quiet, 0)
    const grade = gradeFair(state, suggestionOf(state))
    expect(grade).toMatchObject({ kind: 'practice', givenAwayPins: null, lostPins: null, stakesPins: null })
    if (grade.kind !== 'practice') throw new Error('practice comes first')
    expect(grade.teachingPins).toBeGreaterThanOrEqual(0)
    expect(grade.bestTeachingPins).toBeGreaterThanOrEqual(grade.teachingPins)
  })

  it('grades a spare against the best way of shooting at what stands', () => {
    const state = facing(ready, SEVEN_PIN)
    const best = bestFairChoice(state)
    expect(gradeFair(state, best)).toMatchObject({ kind: 'spare', lostPins: 0, givenAwayPins: 0 })
    // past the pin on one side, in the gutter with every delivery on the other
    for (const target of [-8, 8]) expect(gradeFair(state, moved(best, 0, target)).givenAwayPins).toBeGreaterThan(4)
  })

  it('counts by the game as it stands where asked: a strike weighs more with two strikes waiting', () => {
    const { frame } = ready.spot ?? { frame: 1 }
    const having = (pins: number): BlockState => ({
      ...ready,
      balls: [Array.from({ length: frame - 1 }, () => (pins === 10 ? [10] : [pins, 0]))],
    })
    const [strikes, opens] = [having(10), having(8)]
    const choice = moved(bestFairChoice(ready), 3, 0)
    const lostBy = (state: BlockState): number => gradeFair(state, choice, undefined, 'score').lostPins ?? Number.NaN
    expect(lostBy(strikes)).toBeGreaterThan(1.3 * lostBy(opens))
    expect(gradeFair(strikes, choice).lostPins).toBe(gradeFair(ready, choice).lostPins)
  })

  it('grades under current-frame scoring', () => {
    const state: BlockState = { ...ready, setup: { ...quiet, scoring: 'current-frame' }, balls: [] }
    const best = bestFairChoice(state)
    expect(gradeFair(state, best).givenAwayPins).toBe(0)
    expect(gradeFair(state, moved(best, 6, 0)).givenAwayPins).toBeGreaterThan(1)
  })

  it('refuses a ball that is not in the bag', () => {
    const state = ready
    expect(() => gradeFair(state, { ...suggestionOf(state), ballId: 'nobody’s' })).toThrow(RangeError)
  })

  it('answers by choices that were prepared before', () => {
    const choice = moved(bestFairChoice(ready), -1, -0.5)
    expect(gradeFair(ready, choice, prepareFair(ready))).toEqual(gradeFair(ready, choice))
  })
})
