import { describe, expect, it } from 'vitest'
import { beginBelief } from '../../../../../src/sim/analysis/belief/belief.js'
import { BENT_LAWS, type BentWorth, doubtPhysics } from '../../../../../src/sim/analysis/debrief/reading/model-doubt.js'
import { dynamicsOfBag } from '../../../../../src/sim/analysis/value/bowler-pricing.js'
import { houseSetup } from '../block-for-tests.js'
import { line } from '../readings-for-tests.js'

const belief = beginBelief(houseSetup, 0, 'doubt', 24)
const better = line(26, 13)
const worse = line(24, 12)
const [straight] = dynamicsOfBag(houseSetup.bag)

/** Worths made up so that it is known under which laws the better choice stays better. */
const standsWith = (gain: BentWorth): boolean =>
  doubtPhysics(houseSetup, belief, 0, worse, (film, balls, choice, carryWidth) =>
    choice === better ? gain(film, balls, choice, carryWidth) : 0,
  ).stands(better, worse, 0.2)

const meanFilm = ({ film }: Parameters<BentWorth>[0]): number =>
  film.microns.reduce((sum, cell) => sum + cell, 0) / film.microns.length

describe('findings under doubted physics', () => {
  it('bends friction, wear and carry by a tenth each way', () => {
    expect(BENT_LAWS).toHaveLength(6)
    const bent = BENT_LAWS.flatMap((laws) => Object.entries(laws).filter(([, factor]) => factor !== 1))
    expect(bent.map(([law, factor]) => `${law} ${factor}`).sort()).toEqual([
      'carryWidth 0.9',
      'carryWidth 1.1',
      'friction 0.9',
      'friction 1.1',
      'wear 0.9',
      'wear 1.1',
    ])
  })

  it('stand when they hold under every law, and under all but one of six', () => {
    expect(standsWith(() => 1)).toBe(true)
    expect(standsWith((_, __, ___, width) => (width < 1 ? -1 : 1))).toBe(true)
  })

  it('fall when they fail under two of six, more than a fifth', () => {
    expect(standsWith((_, __, ___, width) => (width === 1 ? 1 : -1))).toBe(false)
    const isBent: BentWorth = (_, [ball]) => (ball.friction.dryFriction === straight.friction.dryFriction ? 1 : -1)
    expect(standsWith(isBent)).toBe(false)
  })

  it('fall when what is left is too close to call', () => {
    expect(standsWith(() => 0.19)).toBe(false)
    expect(standsWith(() => 0.21)).toBe(true)
  })

  it('let the oil make up for bent friction, so that the line seen comes in where it was seen', () => {
    const oilAtFriction = new Map<number, number>()
    standsWith((film, [ball]) => {
      oilAtFriction.set(ball.friction.dryFriction, meanFilm(film))
      return 1
    })
    const oil = (factor: number): number => oilAtFriction.get(straight.friction.dryFriction * factor)!
    expect(oil(1.1)).toBeGreaterThan(oil(1))
    expect(oil(0.9)).toBeLessThan(oil(1))
  })
})
