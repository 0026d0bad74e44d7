import { calledPins } from '../../scenarios/called-pins.js'
import type { Scenario } from '../../scenarios/scenario.js'
import type { BlockState, Decision } from '../../sim/block/types.js'
import type { KnownGrade } from '../../sim/decision/grade.js'
import type { DecisionField } from '../parts/decision-panel.js'

/** Known once weighed; null where a throw is not priced. Undefined while nobody has asked. */
export type ThrowGrade = KnownGrade | null | undefined

/** Where a throw is between the decision and its result. */
export type Stage =
  | { readonly kind: 'deciding' }
  /** The grade is being worked out; the screen says so first. */
  | { readonly kind: 'weighing' }
  /** The grade is fixed and shown; the result is not. */
  | { readonly kind: 'rolling'; readonly next: BlockState; readonly grade: KnownGrade | null; readonly frame: number }
  /** Asked to end the block early. */
  | { readonly kind: 'leaving' }
  | { readonly kind: 'done' }

/** A block being played. */
export interface PlayState {
  readonly scenario: Scenario
  /** The block before each throw, and last as it stands. */
  readonly states: readonly BlockState[]
  /** One for each throw. */
  readonly grades: readonly ThrowGrade[]
  readonly decision: Decision
  /** Earlier versions of the decision, to go back to until the throw. */
  readonly undo: readonly Decision[]
  readonly field: DecisionField
  readonly bagOpen: boolean
  readonly stage: Stage
  /** Why the last key did nothing; empty when it did. */
  readonly notice: string
}

/** Pins a choice is said to give away: 0 where that is too close to call, or where nothing is priced. */
export const pinsGiven = (grade: ThrowGrade): number => (grade ? calledPins(grade) : 0)

/** Pins given away by all choices weighed so far. */
export const allPinsGiven = (play: PlayState): number =>
  play.grades.reduce<number>((sum, grade) => sum + pinsGiven(grade), 0)

export const blockOf = (play: PlayState): BlockState => play.states.at(-1)!

const NO_DECISION: Decision = { ballId: '', aim: { feetBoard: 20, targetBoard: 10, speedStep: 0 }, release: 'strike' }

/** A block to be played on from its last state. */
export function playFrom(
  scenario: Scenario,
  states: readonly BlockState[],
  grades: readonly ThrowGrade[],
  suggestion: Decision | undefined,
): PlayState {
  return {
    scenario,
    states,
    grades,
    decision: suggestion ?? NO_DECISION,
    undo: [],
    field: 'feet',
    bagOpen: false,
    stage: { kind: states.at(-1)?.spot ? 'deciding' : 'done' },
    notice: '',
  }
}
