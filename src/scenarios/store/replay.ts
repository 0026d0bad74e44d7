import { advance, checkDecision } from '../../sim/world/block/advance.js'
import type { BlockState, Spot } from '../../sim/world/block/types.js'
import { leaveName } from '../../sim/world/pins/leaves.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { type Scenario, scenarioFrom } from '../files/scenario/scenario.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { locateNowhere } from '../files/text/source-text.js'
import { modelFingerprint } from './model-fingerprint.js'
import { type BlockRecord, decisionsOf } from './record.js'

export interface Replay {
  readonly scenario: Scenario
  /** The block before each decision, and last the block after all of them. */
  readonly states: readonly BlockState[]
}

/** A record that no longer comes out the same because the model has changed since; see keptBlock for what is left of it. */
export class EarlierModelError extends ScenarioError {}

/**
 * Plays a record again.
 *
 * @param known the record's scenario where it was read before: what is worked out of a scenario is kept with it
 * @throws ScenarioError where a decision cannot be thrown or the pins fall otherwise than the record says; an EarlierModelError
 * where the record was made by another model.
 */
export function replayRecord(record: BlockRecord, name: string, known?: Scenario): Replay {
  const scenario = known ?? scenarioOf(record, name)
  const states = [beginScenario(scenario, record.seed)]
  decisionsOf(record).forEach((decision, index) => {
    const state = states[index]
    const problem = checkDecision(state, decision)
    if (problem !== null) throw faultOf(record, [`${name}: decision ${index + 1} cannot be thrown: ${problem}`])
    const next = advance(state, decision)
    const left = next.throws[index].standingAfter
    if (left !== record.decisions[index].standing) {
      // Whoever edits a choice of an entry must not be told what it would have left.
      const sentence =
        record.contest === undefined
          ? differenceSentence(record, name, index, left)
          : heldBackSentence(name, index, state.spot!)
      throw faultOf(record, [sentence])
    }
    states.push(next)
  })
  return { scenario, states }
}

/**
 * Plays a record again that is known to come out the same, since what was worked out of it is kept: its racks are not thrown anew,
 * which takes nearly all the time.
 *
 * @throws ScenarioError
 */
export function replayKnown(record: BlockRecord, name: string): Replay {
  const scenario = scenarioOf(record, name)
  const states = [beginScenario(scenario, record.seed)]
  decisionsOf(record).forEach((decision, index) => {
    states.push(advance(states[index], decision, record.decisions[index].standing))
  })
  return { scenario, states }
}

const scenarioOf = (record: BlockRecord, name: string): Scenario =>
  scenarioFrom(record.name, locateNowhere(`${name} scenario`, record.scenario))

/** Where an entry of a contest no longer comes out the same, and no more. */
function heldBackSentence(name: string, index: number, { phase, game, frame, ball }: Spot): string {
  const place = phase === 'practice' ? `practice throw ${frame}` : `game ${game}, frame ${frame}, ball ${ball}`
  return `${name}: ${place}: decisions ${index + 1} > standing: found other pins than this choice leaves; the file was changed, or another model made it.`
}

const faultOf = ({ model }: BlockRecord, sentences: readonly string[]): ScenarioError =>
  model === modelFingerprint() ? new ScenarioError(sentences) : new EarlierModelError(sentences)

function differenceSentence(record: BlockRecord, name: string, index: number, left: number): string {
  const pins = (mask: number): string => (mask === 0 ? 'nothing' : `the ${leaveName(mask)}`)
  const model = modelFingerprint()
  const why =
    record.model === model
      ? 'the file was changed by hand'
      : `it was made by model ${record.model} and this is ${model}`
  return `${name}: decision ${index + 1} leaves ${pins(left)}, but the record says ${pins(record.decisions[index].standing)}; ${why}.`
}
