import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import {
  type Belief,
  beginBelief,
  beliefAfter,
  beliefFrom,
  filmOf,
  pick,
  updateBelief,
  weights,
} from '../../../../src/sim/analysis/belief/belief.js'
import { type ShownThrow, shownThrows } from '../../../../src/sim/analysis/belief/shown.js'
import { summarise } from '../../../../src/sim/analysis/belief/summary.js'
import type { BlockEvent, BlockState, Truth } from '../../../../src/sim/world/block/types.js'
import { mirrorFilm } from '../../../../src/sim/world/lane/film.js'
import { mirrorMask } from '../../../../src/sim/world/pins/leaves.js'
import { flatFortyFive, houseForty } from '../../world/lane/patterns-for-tests.js'
import { eyesight, playedBlock, setupFor } from './block-for-tests.js'

const SIZE = 60
const played = playedBlock(setupFor('nothing'), 'belief 1', 5)
const after = beliefAfter(played, 0, SIZE)

/** Every number of a belief, to the last bit. */
function bits(belief: Belief): string {
  const hash = createHash('sha256')
  for (const [name, part] of Object.entries(belief.hypotheses)) {
    hash.update(name)
    hash.update(part instanceof Float64Array ? new Uint8Array(part.buffer) : String(part))
  }
  return hash.digest('hex')
}

function expectSame(first: Belief, second: Belief): void {
  expect(bits(second)).toBe(bits(first))
}

/** The block with every hidden figure of every throw replaced by nonsense. */
function withOtherTruth(state: BlockState): BlockState {
  const nonsense: Omit<Truth, 'laneBefore'> = {
    path: new Float64Array(120).fill(0.5),
    entryBoard: 3,
    entryAngleRadians: 1,
    entrySpeedMetresPerSecond: 1,
    breakpointBoard: 39,
    breakpointFeet: 1,
    hookStartFeet: 1,
    rollStartFeet: 2,
    leftLaneFeet: 30,
    touched: 0,
    normals: [9, 9, 9, 9, 9],
  }
  const hide = <Record extends { readonly truth: Truth }>(record: Record): Record => ({
    ...record,
    truth: { ...nonsense, laneBefore: state.lanes[0] },
  })
  const events = state.events.map((event): BlockEvent => {
    if (event.type === 'throw') return { ...event, record: hide(event.record) }
    return event.type === 'field-throw' ? { ...event, record: hide(event.record) } : event
  })
  return { ...state, events, throws: state.throws.map(hide), fieldThrows: state.fieldThrows.map(hide) }
}

describe('what a belief may know', () => {
  it('does not change when everything hidden about the throws changes', () => {
    expectSame(after, beliefAfter(withOtherTruth(played), 0, SIZE))
  })

  it('does not change when other oil lies on the lane and nothing is posted', () => {
    const oil = { kind: 'pattern', pattern: flatFortyFive } as const
    const otherOil = { ...played, setup: setupFor('nothing', oil), lanes: [...played.lanes].reverse() }
    expectSame(after, beliefAfter(otherOil, 0, SIZE))
  })

  it("leaves out where the field's bowlers aim", () => {
    const otherAims = played.events.map((event): BlockEvent => {
      if (event.type !== 'field-throw') return event
      return { ...event, record: { ...event.record, aim: { feetBoard: 40, targetBoard: 30, speedStep: 1 } } }
    })
    expect(shownThrows(played, [0]).some((shown) => shown.line === null)).toBe(true)
    expectSame(after, beliefAfter({ ...played, events: otherAims }, 0, SIZE))
  })
})

describe('taking throws in', () => {
  it('gives the same from scratch as throw by throw, and leaves each earlier belief as it was', () => {
    const steps = [beginBelief(played.setup, 0, played.seed, SIZE)]
    const kept = [bits(steps[0])]
    for (const shown of shownThrows(played, [0])) {
      steps.push(updateBelief(steps[steps.length - 1], shown))
      kept.push(bits(steps[steps.length - 1]))
    }
    expect(steps.map(bits)).toEqual(kept)
    expectSame(steps[steps.length - 1], after)
  })

  it('keeps weights that sum to 1 and films without a negative cell', () => {
    expect(weights(after).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
    expect(after.hypotheses.films.every((microns) => microns >= 0)).toBe(true)
  })

  it('leaves a lone hypothesis all the weight, and wears its oil', () => {
    const start = beginBelief(played.setup, 0, played.seed, 1)
    const end = updateBelief(start, shownThrows(played, [0])[0])
    expect([...weights(end)]).toEqual([1])
    expect(sum(filmOf(end, 0).microns)).toBeLessThan(sum(filmOf(start, 0).microns))
  })

  it('refuses a throw on another lane in one sentence', () => {
    const elsewhere: ShownThrow = { ...shownThrows(played, [0])[0], lane: 1 }
    expect(() => updateBelief(after, elsewhere)).toThrow('The belief is about lane 0, not lane 1.')
  })

  it('draws hypotheses for a search in proportion to their weight, the same each time', () => {
    const picked = [...pick(after, 400, 3)]
    expect([...pick(after, 400, 3)]).toEqual(picked)
    weights(after).forEach((weight, i) => {
      const count = picked.filter((index) => index === i).length
      // Systematic resampling takes either the whole number below or above count · weight (Kitagawa 1996, from memory).
      expect(Math.abs(count - 400 * weight)).toBeLessThan(1 + 1e-9)
    })
  })
})

describe('mirrored lanes and hands', () => {
  it('give the mirrored belief, to the last bit', () => {
    const shown = shownThrows(played, [0])
    const mirrored = shown.map((one): ShownThrow => {
      const hand = one.bowler.hand === 'left' ? 'right' : 'left'
      const observation = { ...one.observation, standing: mirrorMask(one.observation.standing) }
      return { ...one, bowler: { ...one.bowler, hand }, observation }
    })
    const known = { posted: [null], seeing: eyesight }
    const right = shown.reduce(updateBelief, beliefFrom({ ...known, hand: 'right' }, 0, 'mirror', SIZE))
    const left = mirrored.reduce(updateBelief, beliefFrom({ ...known, hand: 'left' }, 0, 'mirror', SIZE))
    expect([...weights(left)]).toEqual([...weights(right)])
    for (let i = 0; i < SIZE; i++) expect(mirrorFilm(filmOf(left, i)).microns).toEqual(filmOf(right, i).microns)
  })
})

describe('two lanes', () => {
  const pair = (first: typeof houseForty, second: typeof houseForty) => ({
    ...setupFor('sheet'),
    lanes: [
      { name: 'lane 3', oil: { kind: 'pattern', pattern: first } },
      { name: 'lane 4', oil: { kind: 'pattern', pattern: second } },
    ] as const,
  })

  it('are learnt together when they are posted with the same sheet', () => {
    const state = playedBlock(pair(houseForty, houseForty), 'pair', 3)
    const belief = beliefAfter(state, 1, SIZE)
    expect(belief.lanes).toEqual([0, 1])
    expect(belief.throwsSeen).toBe(6)
    expect([...weights(beliefAfter(state, 0, SIZE))]).toEqual([...weights(belief)])
    expect(sum(filmOf(belief, 0, 0).microns)).not.toBe(sum(filmOf(belief, 0, 1).microns))
  })

  it('are learnt apart when their sheets differ', () => {
    const state = playedBlock(pair(houseForty, flatFortyFive), 'pair', 3)
    const belief = beliefAfter(state, 1, SIZE)
    expect(belief.lanes).toEqual([1])
    expect(belief.throwsSeen).toBe(2)
  })
})

describe('learning', () => {
  it('narrows the length and brings its mean nearer within five throws, on the average of eight lanes', () => {
    let before = 0
    let later = 0
    let missBefore = 0
    let missLater = 0
    for (let lane = 0; lane < 8; lane++) {
      const state = playedBlock({ ...setupFor('nothing'), field: [] }, `learning ${lane}`, 5)
      const truth = beginBelief({ ...state.setup, posted: 'length' }, 0, state.seed, 1).known.posted[0]?.lengthFeet ?? 0
      const prior = summarise(beginBelief(state.setup, 0, state.seed, 120)).lengthFeet
      const posterior = summarise(beliefAfter(state, 0, 120)).lengthFeet
      before += (prior.high - prior.low) / 8
      later += (posterior.high - posterior.low) / 8
      missBefore += Math.abs(prior.mean - truth) / 8
      missLater += Math.abs(posterior.mean - truth) / 8
    }
    expect(later).toBeLessThan(0.5 * before)
    expect(missLater).toBeLessThan(0.6 * missBefore)
  })
})

describe('the summary for the player', () => {
  it('shares out length and shape, even over what may be', () => {
    const { length, shape } = summarise(beginBelief(setupFor('nothing'), 0, 'summary', 400))
    // Even over the 33 half feet from 32 to 48 ft: 11 are up to 37 ft, 13 from 42 ft (counted by hand).
    expect(length.short).toBeCloseTo(11 / 33, 1)
    expect(length.long).toBeCloseTo(13 / 33, 1)
    // Even in 1/ratio from 1/12 to 1/1.5: (2/3 − 1/4) / (7/12) of it is up to 4:1, (1/7 − 1/12) / (7/12) above 7:1.
    expect(shape.flat).toBeCloseTo(0.714, 1)
    expect(shape.houseLike).toBeCloseTo(0.102, 1)
    expect(shape.flat + shape.between + shape.houseLike).toBeCloseTo(1, 12)
  })
})

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0)
