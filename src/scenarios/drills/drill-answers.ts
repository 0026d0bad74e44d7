import type { Decision } from '../../sim/world/block/types.js'
import type { DebriefReport } from '../reports/debrief/debrief-report.js'
import { scenarioHash } from '../store/hashes.js'
import { type BlockRecord, decisionsOf, ownThrows } from '../store/record.js'
import type { Drill, DrillPosition } from './load-drill.js'

type ReportedThrow = DebriefReport['throws'][number]

/** A record that may hold an answer, with its debrief. */
export interface AnsweredBlock {
  readonly path: string
  readonly player: string
  readonly record: BlockRecord
  readonly report: DebriefReport
}

/** What one player did at one position. Costs are null in practice, which costs nothing. */
export interface DrillAnswer {
  readonly player: string
  readonly record: string
  /** 1 for the first time this player came to it. */
  readonly attempt: number
  readonly throws: readonly {
    readonly answered: ReportedThrow['decision']
    readonly best: ReportedThrow['decision'] | null
    readonly costPins: number | null
    /** What lies within so many pins of the best cannot be told from it. */
    readonly marginPins: number | null
    readonly left: readonly number[]
  }[]
}

/**
 * The answers to a drill among records: those of drills that begin with exactly what a position gave, on its scenario with its seed, and go on
 * with choices of the player's own.
 *
 * @param blocks in order of play
 * @returns for each position of the drill, in its order
 */
export function answersTo(drill: Drill, blocks: readonly AnsweredBlock[]): readonly (readonly DrillAnswer[])[] {
  return drill.positions.map((position) => {
    const hash = scenarioHash(position.scenario.data)
    const answers: DrillAnswer[] = []
    for (const block of blocks) {
      if (block.record.scenarioHash !== hash || !isAnswer(position, block.record)) continue
      const attempt = answers.filter(({ player }) => player === block.player).length + 1
      answers.push({ player: block.player, record: block.path, attempt, throws: thrownAt(position, block.report) })
    }
    return answers
  })
}

function isAnswer({ state, given }: DrillPosition, record: BlockRecord): boolean {
  if (record.origin.cameToBe !== 'drill' || record.seed !== state.seed || record.decisions.length <= given.length)
    return false
  const own = ownThrows(record)
  const decided = decisionsOf(record)
  return (
    given.every((decision, index) => !own[index] && isSame(decision, decided[index]!)) && own[given.length] === true
  )
}

function thrownAt({ given, throws }: DrillPosition, report: DebriefReport): DrillAnswer['throws'] {
  return report.throws.slice(given.length, given.length + throws).map(({ decision, fair, standingAfter }) => ({
    answered: decision,
    best: fair?.best ?? null,
    costPins: fair?.givenAwayPins ?? null,
    marginPins: fair?.tooCloseToCallPins ?? null,
    left: standingAfter,
  }))
}

function isSame(one: Decision, other: Decision): boolean {
  return (
    one.ballId === other.ballId &&
    one.release === other.release &&
    one.aim.feetBoard === other.aim.feetBoard &&
    one.aim.targetBoard === other.aim.targetBoard &&
    one.aim.speedStep === other.aim.speedStep
  )
}
