import { builtInNames } from '../../../src/scenarios/library/library.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { gradeFair } from '../../../src/sim/analysis/grade/fair-grade.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { metresToBoard } from '../../../src/sim/units.js'
import { dynamicsOf } from '../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome, rollBall } from '../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../src/sim/world/ball/step-table.js'
import { beginBlock, patternOf } from '../../../src/sim/world/block/begin.js'
import { intendedLaunch } from '../../../src/sim/world/bowler/release.js'
import { mirrorFilm } from '../../../src/sim/world/lane/film.js'
import { layPattern } from '../../../src/sim/world/lane/pattern.js'

const outcome = newRollOutcome()

/**
 * Where the starting line enters on the sheet of every built-in lane that posts one, and what it costs there. Of 31 lanes 29
 * enter within a board of 17.5; first-league (15.8) and light-house (15.9) are drier than what their figures let one expect.
 */
export async function startingLines(): Promise<void> {
  const offs: number[] = []
  for (const name of builtInNames()) {
    const { setup } = await loadScenario(name)
    if (setup.posted === 'nothing') continue
    const begun = beginBlock({ ...setup, practiceThrows: 0, fieldFramesBefore: 0 }, 'start')
    const { ballId, aim } = playerView(begun)!.suggestion
    const ball = setup.bag.find(({ id }) => id === ballId)!
    const sheet = layPattern(patternOf(setup.lanes[0].oil, 'start', 0))
    const film = setup.bowler.hand === 'left' ? mirrorFilm(sheet) : sheet
    rollBall(film, buildStepTable(film), dynamicsOf(ball), intendedLaunch(setup.bowler, aim, 'strike'), outcome)
    const entry = metresToBoard(outcome.lateralAtPinsMetres)
    const exit = metresToBoard(outcome.breakpointLateralMetres)
    offs.push(Math.abs(entry - 17.5))
    const { givenAwayPins } = gradeFair(begun, playerView(begun)!.suggestion)
    console.log(
      `${name.padEnd(22)} ${ballId} ${aim.feetBoard}/${aim.targetBoard}: exit ${exit.toFixed(1)}, entry ${entry.toFixed(1)}, costs ${givenAwayPins?.toFixed(2)}`,
    )
  }
  console.log(
    `furthest from 17.5: ${Math.max(...offs).toFixed(2)} boards; beyond one: ${offs.filter((off) => off > 1).length} of ${offs.length}`,
  )
}
