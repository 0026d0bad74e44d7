import { createHash } from 'node:crypto'
import { beginScenario } from '../../src/scenarios/files/scenario/begin-scenario.js'
import { scenarioFrom } from '../../src/scenarios/files/scenario/scenario.js'
import { locateNowhere } from '../../src/scenarios/files/text/source-text.js'
import { builtInScenario } from '../../src/scenarios/library/library.js'
import { debriefOf } from '../../src/scenarios/reports/debrief/debrief.js'
import { debriefText } from '../../src/scenarios/reports/debrief/debrief-report.js'
import { recordOf } from '../../src/scenarios/store/record.js'
import { replayRecord } from '../../src/scenarios/store/replay.js'
import { gradeFair } from '../../src/sim/analysis/grade/fair-grade.js'
import { choose } from '../../src/sim/analysis/policies/policies.js'
import { advance } from '../../src/sim/world/block/advance.js'

const SCENARIO = 'unseen-draw'
const SEED = 's11'
const BALLS = ['sanded-asymmetric', 'weak-pearl']
/** One of practice, then a first ball and the spare it leaves, each of which gives pins away. */
const THROWS = 3

/**
 * A digest of all that is kept of a block once it is worked out: grades, account and debrief of careless choices on oil that nobody
 * was told of, every figure to the last bit. One lane and two balls, so that it takes seconds.
 */
export function gradeDigest(): string {
  const unseen = builtInScenario(SCENARIO)!
  const bag = unseen.bag.filter(({ id }) => BALLS.includes(id))
  const scenario = scenarioFrom(
    SCENARIO,
    locateNowhere(SCENARIO, { ...unseen, lanes: unseen.lanes.slice(0, 1), bag, practiceThrows: 1 }),
  )
  let state = beginScenario(scenario, SEED)
  while (state.throws.length < THROWS) state = advance(state, choose('random', state))
  const record = recordOf(scenario, state)
  const replay = replayRecord(record, SCENARIO)
  const grades = state.throws.map(({ decision }, index) => gradeFair(replay.states[index]!, decision))
  const debrief = debriefOf(replay)
  const kept = [JSON.stringify(grades), JSON.stringify(debrief.account), debriefText(record, debrief)]
  return createHash('sha256').update(kept.join('\n')).digest('hex').slice(0, 16)
}
