import { choose } from '../../sim/analysis/policies/policies.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { EXIT } from '../files/text/exit-codes.js'
import { loadScenario } from '../library/load.js'
import { openingLines } from '../plain/opening-lines.js'
import { announce, throwOne } from '../plain/play-lines.js'
import type { CommandConsole } from './console/console.js'

const SCENARIO = 'house-forty'
const SEED = 'demonstration'
const FRAMES = 2

/** A few frames played by the rule of thumb, for a reader without a terminal. */
export async function demonstrationCommand(console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(SCENARIO)
  console.print('There is no terminal here to play on, so this is a demonstration: the rule of thumb decides.')
  console.print('')
  for (const line of openingLines(scenario, SEED)) console.print(line)
  let state = beginScenario(scenario, SEED)
  while (state.spot && !(state.spot.phase === 'game' && state.spot.frame > FRAMES)) {
    announce(state, console.print)
    state = await throwOne(state, choose('thumb', state), {
      say: console.print,
      keep: async () => {},
      grade: true,
    })
  }
  console.print('')
  console.print(`The demonstration stops after ${FRAMES} frames. To decide yourself: dryboard play ${SCENARIO} --plain`)
  return EXIT.fine
}
