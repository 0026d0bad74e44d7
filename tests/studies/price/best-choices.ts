import { builtInNames } from '../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { choicesFor, gradeFair, pricesOf } from '../../../src/sim/analysis/grade/fair-grade.js'
import { distanceBetween } from '../../../src/sim/analysis/grade/nearest-as-good.js'
import { ballIndexOf } from '../../../src/sim/analysis/shots/shots.js'
import { facesNewRack } from '../../../src/sim/analysis/view/player-view.js'
import { statesBy } from './blocks.js'

/** Every so many throws are looked at, since each takes a search. */
const STRIDE = 2

/**
 * Two-game blocks of the library by rule of thumb: in how many the best ball changes, how often another speed is the best, and
 * how far from the last line the best is that is shown.
 */
export async function bestChoices(first: number, count: number): Promise<void> {
  const names = builtInNames()
  let changing = 0
  let decisions = 0
  let otherSpeeds = 0
  const distances: number[] = []
  for (let block = first; block < first + count; block++) {
    const scenario = await loadScenario(names[block % names.length]!)
    const setup = { ...scenario.setup, games: 2 }
    const balls = new Set<number>()
    const states = statesBy('thumb', setup, `best ${block}`)
    for (const [at, state] of states.entries()) {
      if (at % STRIDE !== 0 || state.spot?.phase !== 'game' || !facesNewRack(state)) continue
      const search = choicesFor(state)
      if (search.kind !== 'first-ball') continue
      const [leader] = search.finalists
      balls.add(leader!.ballIndex)
      decisions++
      if (leader!.aim.speedStep !== 0) otherSpeeds++
      const { decision } = states[at + 1]!.throws.at(-1)!
      const { givenAwayPins } = gradeFair(state, decision, search)
      if (givenAwayPins === null || givenAwayPins >= 0.5) continue
      const last = state.throws.findLast(
        (one) => one.spot.lane === state.spot!.lane && one.decision.release === 'strike',
      )
      if (!last) continue
      const shotOf = ({ ballId, aim }: typeof decision) => ({ ballIndex: ballIndexOf(setup.bag, ballId), aim })
      const shown = pricesOf(state, search).shownBest()
      distances.push(distanceBetween(shotOf(shown), shotOf(last.decision)))
    }
    if (balls.size > 1) changing++
    console.log(`${scenario.name}: best balls ${[...balls].map((ball) => setup.bag[ball]!.id).join(', ')}`)
  }
  distances.sort((a, b) => a - b)
  console.log(
    `best ball changes in ${changing} of ${count} blocks; another speed best in ${((100 * otherSpeeds) / decisions).toFixed(1)} % of ${decisions}; shown best median ${distances[distances.length >> 1]} boards away, nine in ten within ${distances[Math.floor(0.9 * distances.length)]} (${distances.length})`,
  )
}
