import type { DecidedSkill, DecidePosition, Family, Position } from '../../../../src/sim/analysis/practice/position.js'

const HOUSE: Family = { length: 'medium', shape: 'houseLike' }

/** A decision whose answers cost so much; the first changes nothing. */
export function decide(
  id: string,
  costsPins: readonly number[],
  skill: DecidedSkill = 'timing',
  family = HOUSE,
): DecidePosition {
  return {
    id,
    kind: 'decide',
    skill,
    family,
    moment: { scenario: 'house-forty', seed: id, decisions: [] },
    stakesPins: Math.max(...costsPins),
    standing: 0,
    answers: costsPins.map((costPins, place) => ({
      decision: {
        ballId: 'urethane',
        aim: { feetBoard: 20 + place, targetBoard: 10, speedStep: 0 },
        release: 'strike',
      },
      costPins,
      entryBoard: 17,
      contacts: { light: 0.2, pocket: 0.6, high: 0.2 },
    })),
  }
}

const seen = { moment: { scenario: 'house-forty', seed: 'seen', decisions: [] }, family: HOUSE, stakesPins: 2 }

export const shapeRead = (ideal: readonly number[]): Position => ({
  ...seen,
  id: 'shape',
  kind: 'read',
  skill: 'read',
  question: 'shape',
  vanishesFeet: null,
  ideal,
  before: [1 / 3, 1 / 3, 1 / 3],
  truth: 0,
})

export const lengthRead = (ideal: readonly number[], before: readonly number[]): Position => ({
  ...seen,
  id: 'length',
  kind: 'read',
  skill: 'read',
  question: 'lengthFeet',
  vanishesFeet: null,
  ideal,
  before,
  truth: 40,
})

export const call = (ideal: readonly number[]): Position => ({
  ...seen,
  id: 'call',
  kind: 'call',
  skill: 'call',
  decision: { ballId: 'urethane', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' },
  ideal,
  truth: 17,
})

export const throwOrLane = (ideal: number): Position => ({
  ...seen,
  id: 'share',
  kind: 'throw-or-lane',
  skill: 'throw-or-lane',
  ideal,
  predictedBoard: 17.5,
  shownBoard: 20,
})
