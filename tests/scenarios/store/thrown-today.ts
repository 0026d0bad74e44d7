import { readFileSync, writeFileSync } from 'node:fs'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { scenarioFrom } from '../../../src/scenarios/files/scenario/scenario.js'
import { locateNowhere } from '../../../src/scenarios/files/text/source-text.js'
import { type BlockRecord, decisionsOf } from '../../../src/scenarios/store/record.js'
import { advance } from '../../../src/sim/world/block/advance.js'

type Played = Pick<BlockRecord, 'name' | 'scenario' | 'seed' | 'decisions'>

/**
 * Writes into an old record or journal the pins that its choices leave by today's model, and changes nothing else of its text: what is
 * asked of it is whether its format is still read, and pins of an older model are refused for good reason.
 */
export function throwToday(path: string): void {
  const text = readFileSync(path, 'utf8')
  const left = pinsLeft(path.endsWith('.jsonl') ? fromJournal(text) : JSON.parse(text))
  let index = 0
  writeFileSync(
    path,
    text.replaceAll(/("standing":\s*)\d+/g, (_, name: string) => name + left[index++]),
  )
}

function fromJournal(text: string): Played {
  const [head, ...decisions] = text
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line))
  return { ...head, decisions }
}

function pinsLeft(played: Played): number[] {
  let state = beginScenario(scenarioFrom(played.name, locateNowhere(played.name, played.scenario)), played.seed)
  return decisionsOf(played).map((decision) => {
    state = advance(state, decision)
    return state.throws.at(-1)!.standingAfter
  })
}
