import { mean as plainMean, sampleVariance } from 'simple-statistics'
import { describe, expect, it } from 'vitest'
import { judgeOn } from '../../../../src/sim/analysis/belief/absorb.js'
import { beliefAfter } from '../../../../src/sim/analysis/belief/belief.js'
import { creditOf } from '../../../../src/sim/analysis/belief/credit.js'
import { drawAnew } from '../../../../src/sim/analysis/belief/draw-anew.js'
import {
  blankHypotheses,
  COORDINATES,
  copyHypotheses,
  drawCoordinates,
  filmAt,
  type HypothesisSet,
  layHypotheses,
  layHypothesis,
  mirrorInPlace,
} from '../../../../src/sim/analysis/belief/hypotheses.js'
import { moveHypotheses } from '../../../../src/sim/analysis/belief/move-hypotheses.js'
import { rangesOf } from '../../../../src/sim/analysis/belief/pattern-ranges.js'
import { stream } from '../../../../src/sim/random.js'
import { playedBlock, setupFor } from './block-for-tests.js'

const draws = (index: number) => stream({ seed: 'renew', game: 0, frame: 0, ball: 0, purpose: 'study', index })
const ranges = rangesOf({ lengthFeet: 40 })
const SIZE = 400

function drawnSet(): HypothesisSet {
  const set = blankHypotheses(SIZE, 1)
  drawCoordinates(set, draws(1))
  layHypotheses(set, ranges, false)
  return set
}

const columnOf = (set: HypothesisSet, c: number): number[] =>
  Array.from({ length: set.size }, (_, i) => set.coordinates[i * COORDINATES + c])

describe('moving hypotheses of which nothing was seen', () => {
  it('leaves every coordinate standard normal, within sampling', () => {
    const set = drawnSet()
    for (let time = 0; time < 3; time++) moveHypotheses(set, ranges, false, [], draws(2 + time))
    for (let c = 0; c < COORDINATES; c++) {
      const column = columnOf(set, c)
      // Four standard errors of a mean and of a variance of 400 normal numbers, 4/√400 and 4·√(2/400).
      expect(Math.abs(plainMean(column))).toBeLessThan(0.2)
      expect(Math.abs(sampleVariance(column) - 1)).toBeLessThan(0.283)
    }
  })

  it('moves nearly all of them somewhere else', () => {
    const set = drawnSet()
    const before = set.coordinates.slice()
    moveHypotheses(set, ranges, false, [], draws(7))
    const stayed = columnOf(set, 0).filter((_, i) =>
      Array.from({ length: COORDINATES }, (_, c) => i * COORDINATES + c).every(
        (at) => set.coordinates[at] === before[at],
      ),
    )
    expect(stayed.length).toBeLessThan(SIZE / 5)
  })
})

describe('a set drawn anew', () => {
  it('holds each hypothesis, oil and all, the whole number of times above or below its due, equally weighted', () => {
    const set = drawnSet()
    for (let i = 0; i < SIZE; i++) set.weights[i] = set.coordinates[i * COORDINATES + 2] > 0.5 ? 1 : 0.02
    const total = set.weights.reduce((sum, weight) => sum + weight, 0)
    for (let i = 0; i < SIZE; i++) set.weights[i] /= total
    const old = copyHypotheses(set)
    drawAnew(set, draws(9))
    expect(set.weights.every((weight) => weight === 1 / SIZE)).toBe(true)
    const parents = columnOf(set, 0).map((value) => columnOf(old, 0).indexOf(value))
    for (let parent = 0; parent < SIZE; parent++) {
      const times = parents.filter((one) => one === parent).length
      expect(Math.abs(times - SIZE * old.weights[parent])).toBeLessThan(1 + 1e-9)
    }
    parents.forEach((parent, i) => {
      expect(set.volumeMillilitres[i]).toBe(old.volumeMillilitres[parent])
      expect(set.wearFactors[i]).toBe(old.wearFactors[parent])
      expect(filmAt(set, 0, i).microns).toEqual(filmAt(old, 0, parent).microns)
    })
  })
})

describe('hypotheses that were drawn anew and moved between throws', () => {
  it('each lie and count as if their oil had been there from the first throw on', () => {
    const state = playedBlock(setupFor('nothing'), 'renewed', 6)
    const { hypotheses, past, ranges: known } = beliefAfter(state, 0, 40)
    expect(past.length).toBeGreaterThanOrEqual(6)
    const trial = blankHypotheses(1, hypotheses.laneCount)
    for (let i = 0; i < hypotheses.size; i++) {
      trial.coordinates.set(hypotheses.coordinates.subarray(i * COORDINATES, (i + 1) * COORDINATES))
      layHypothesis(trial, 0, known, false)
      const film = filmAt(trial, 0, 0)
      let credit = 0
      for (const taken of past) {
        if (taken.isLeftHanded) mirrorInPlace(film.microns)
        credit += creditOf(judgeOn(film, taken, trial.wearFactors[0]), taken.meanLikelihood, taken.trust)
        if (taken.isLeftHanded) mirrorInPlace(film.microns)
      }
      expect(credit).toBeCloseTo(hypotheses.credits[i], 9)
      const own = filmAt(hypotheses, 0, i)
      for (let cell = 0; cell < film.microns.length; cell += 7) expect(film.microns[cell]).toBe(own.microns[cell])
    }
  })
})
