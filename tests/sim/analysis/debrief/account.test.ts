import { beforeAll, describe, expect, it } from 'vitest'
import { type Account, accountOf, accountSteps } from '../../../../src/sim/analysis/debrief/account.js'
import { LEDGER_TERMS, shortfallOf } from '../../../../src/sim/analysis/debrief/ledger/ledger.js'
import { throwWorths, trueOilPrices } from '../../../../src/sim/analysis/debrief/ledger/throw-worths.js'
import { stateBefore } from '../../../../src/sim/analysis/debrief/moments.js'
import { settling } from '../../../../src/sim/analysis/debrief/settling.js'
import type { BlockSetup, BlockState, ThrowRecord } from '../../../../src/sim/world/block/types.js'
import { hybrid, plastic } from '../../world/ball/bag-for-tests.js'
import { houseSetup, stubbornState, thumbStates } from './block-for-tests.js'

const last = <T>(list: readonly T[]): T => list[list.length - 1]

/** The state with its last throw shown and recorded otherwise. */
function withLastThrow(state: BlockState, change: (record: ThrowRecord) => ThrowRecord): BlockState {
  const changed = change(last(state.throws))
  return {
    ...state,
    throws: [...state.throws.slice(0, -1), changed],
    events: state.events.map((event) =>
      event.type === 'throw' && event.record === last(state.throws) ? { type: 'throw', record: changed } : event,
    ),
  }
}

/** Two balls, so that a search is quick. */
const setup: BlockSetup = { ...houseSetup, bag: [hybrid, plastic] }
const COUNT = 5
const played = last(thumbStates(setup, 'account', COUNT))
const account = accountOf(played)
const grades = account.throws.map(({ graded }) => graded?.grade)
/** Everything but the last throw is graded already; that one is graded anew. */
const lastAnew = { alternatives: false, grades: grades.slice(0, -1) } as const

describe('the account of a block', () => {
  it('closes for every throw, frame and game, spares among them, to 1e-9', () => {
    expect(account.throws).toHaveLength(COUNT)
    expect(account.throws.some(({ kind }) => kind === 'spare')).toBe(true)
    for (const { graded, index } of account.throws) {
      const before = stateBefore(played, index)
      const record = played.throws[index]
      const worths = throwWorths(trueOilPrices(before), record, graded!.grade.best, graded!.bestKnown)
      expect(Math.abs(shortfallOf(graded!.ledger) - (worths.bestKnown - worths.result))).toBeLessThan(1e-9)
      expect(graded!.ledger.givenAwayPins).toBeGreaterThanOrEqual(0)
      expect(graded!.ledger.hiddenPins).toBeGreaterThanOrEqual(0)
    }
    const { frames, games, block, firstBalls, spares } = account.sums
    for (const term of LEDGER_TERMS) {
      const byFrames = frames.reduce((sum, { ledger }) => sum + ledger[term], 0)
      expect(byFrames).toBeCloseTo(block.ledger[term], 9)
      expect(games[0].ledger[term]).toBeCloseTo(block.ledger[term], 9)
      expect(firstBalls.ledger[term] + spares.ledger[term]).toBeCloseTo(block.ledger[term], 9)
    }
    // one price for one ball: the ledger's first part is the charge
    expect(block.chargedPins).toBeCloseTo(block.ledger.givenAwayPins, 9)
  })

  it('shares the whole charge out to findings, and prices every choice once', () => {
    const told = account.tags.reduce((sum, { pins }) => sum + pins, 0)
    expect(told + account.untoldPins).toBeCloseTo(account.sums.block.chargedPins, 9)
    expect(account.untoldPins).toBeGreaterThan(-1e-9)
    for (const { graded } of account.throws) {
      const { grade, knownLostPins, ledger, alternatives } = graded!
      expect(ledger.givenAwayPins).toBe(grade.givenAwayPins)
      expect(knownLostPins).toBeCloseTo(ledger.givenAwayPins + ledger.patternSwingPins + ledger.hiddenPins, 9)
      const best = alternatives.find(({ what }) => what === 'best')
      if (best) expect(best.fairGainPins).toBe(grade.givenAwayPins)
    }
  })

  it('comes out the same from kept grades, telling how far it is', () => {
    const steps = accountSteps(played, { grades, alternatives: false })
    const told: number[] = []
    let step = steps.next()
    for (; !step.done; step = steps.next()) if (step.value) told.push(step.value.done)
    expect(told).toEqual([1, 2, 3, 4, 5])
    expect(step.value.sums).toEqual(account.sums)
    expect(step.value.tags).toEqual(account.tags)
  })

  it('comes out the same again, settled behind play, throw by throw, as afterwards', () => {
    const states = thumbStates(setup, 'account', COUNT)
    const behind = settling(states[0]!)
    for (const [at, after] of states.slice(1).entries()) {
      behind.thrown(states[at]!, after, grades[at])
      while (behind.step());
    }
    expect(behind.step()).toBe(false)
    const steps = accountSteps(played, {}, behind.soFar())
    const { done, value } = steps.next()
    expect(done).toBe(true)
    expect(value).toEqual(account)
  })

  // The grade is fixed before the throw, so what the pins did to it can change nothing but the last term.
  it('changes in carry luck alone when only the carry of the last throw changes', () => {
    const other = withLastThrow(played, (record) => {
      const standing = record.standingAfter === 0 ? 1 << 9 : 0
      return { ...record, standingAfter: standing, observation: { ...record.observation, standing } }
    })
    const changed = accountOf(other, lastAnew)
    expect(changed.throws.map(({ graded }) => graded?.grade)).toEqual(grades)
    expect(changed.tags).toEqual(account.tags)
    changed.throws.forEach(({ graded }, index) => {
      for (const term of LEDGER_TERMS) {
        const moved = graded!.ledger[term] !== account.throws[index].graded!.ledger[term]
        expect(moved).toBe(index === COUNT - 1 && term === 'carryPins')
      }
    })
  })

  it('grades without a look at the hidden oil', () => {
    const other = withLastThrow(played, (record) => ({
      ...record,
      truth: {
        ...record.truth,
        normals: [2, -1, 1, 0, 1],
        laneBefore: {
          ...record.truth.laneBefore,
          film: { microns: record.truth.laneBefore.film.microns.map((film) => 0.5 * film) },
        },
      },
    }))
    const changed = accountOf(other, lastAnew)
    expect(changed.throws.map(({ graded }) => graded?.grade)).toEqual(grades)
    expect(last(changed.throws).graded!.ledger).not.toEqual(last(account.throws).graded!.ledger)
  })

  describe('of a plastic ball for first balls on house oil', () => {
    // A straight ball strikes far less often than one that hooks into the pocket: common practice, no source.
    let straight: Account
    beforeAll(() => {
      const aim = { feetBoard: 24, targetBoard: 16, speedStep: 0 } as const
      const state = stubbornState(setup, 'plastic', { ballId: plastic.id, aim, release: 'strike' }, 2)
      straight = accountOf(state, { alternatives: false })
    }, 120_000)

    it('says what it costs, and what it would take', () => {
      const firstBalls = straight.throws.filter(({ kind }) => kind === 'first-ball')
      expect(firstBalls.length).toBeGreaterThan(0)
      for (const { graded, paths } of firstBalls) {
        expect(graded!.grade.givenAwayPins).toBeGreaterThan(0.5)
        expect(graded!.grade.best.ballId).not.toBe(plastic.id)
        expect(paths.bestKnown!.entryAngleRadians).toBeGreaterThan(paths.choice.entryAngleRadians)
      }
      const tag = straight.tags.find(({ kind }) => kind === 'wrong-ball')
      expect(tag).toBeDefined()
      expect(tag!.mend.ballId).not.toBe(plastic.id)
    })

    // Of 1.47 pins the line takes 0.74 and the ball 0.45: plastic on its best line here costs 0.43 alone.
    it.fails('known gap: blames the ball before the line (0.45 pins to 0.74)', () => {
      expect(straight.tags[0]?.kind).toBe('wrong-ball')
    })
  })
})
