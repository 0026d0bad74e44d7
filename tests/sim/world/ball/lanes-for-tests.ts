import { drawNormal, stream } from '../../../../src/sim/random.js'
import { dynamicsOf } from '../../../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../../../src/sim/world/ball/launch.js'
import { rollBall } from '../../../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../../../src/sim/world/ball/step-table.js'
import { FILM_ROWS, type OilFilm } from '../../../../src/sim/world/lane/film.js'
import { generatePattern, WIDEST_LIMITS } from '../../../../src/sim/world/lane/generator.js'
import { layPattern } from '../../../../src/sim/world/lane/pattern.js'
import { freshLane, wearLane } from '../../../../src/sim/world/lane/wear.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../lane/patterns-for-tests.js'
import { hybrid, sandedSolid, symmetricSolid } from './bag-for-tests.js'
import { throwOf } from './throws-for-tests.js'

const drawn = (index: number): OilFilm =>
  layPattern(
    generatePattern(WIDEST_LIMITS, stream({ seed: 'lanes', game: 0, frame: 0, ball: 0, purpose: 'study', index })),
  )

/** A lane after `throws` balls on much the same line, with a club bowler's scatter. */
export function wornFilm(film: OilFilm, throws: number, laydown: number, target: number): OilFilm {
  const random = stream({ seed: 'worn', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const balls = [sandedSolid, symmetricSolid, hybrid].map((ball) => dynamicsOf(ball))
  const outcome = newRollOutcome()
  const path = new Float64Array(FILM_ROWS)
  let lane = freshLane(film)
  for (let count = 0; count < throws; count++) {
    const ball = balls[count % balls.length]!
    const launch = throwOf({ laydown: laydown + 0.7 * drawNormal(random), target: target + 0.7 * drawNormal(random) })
    rollBall(lane.film, buildStepTable(lane.film), ball, launch, outcome, path)
    lane = wearLane(lane, { path, coverUptake: ball.uptake, freshCoverShare: ball.freshCoverShare })
  }
  return lane.film
}

/** Eight lanes to throw on: written, drawn and worn. */
export function testLanes(): readonly { readonly name: string; readonly film: OilFilm }[] {
  const house = layPattern(houseForty)
  const flat = layPattern(flatFortyFive)
  return [
    { name: 'house 40 ft', film: house },
    { name: 'flat 45 ft', film: flat },
    { name: 'flat 40 ft', film: layPattern(flatForty) },
    { name: 'short 35 ft', film: layPattern(shortThirtyFive) },
    { name: 'drawn A', film: drawn(1) },
    { name: 'drawn B', film: drawn(2) },
    { name: 'house 40 ft after 40 throws', film: wornFilm(house, 40, 17.5, 11.5) },
    { name: 'flat 45 ft after 40 throws', film: wornFilm(flat, 40, 15, 10.5) },
  ]
}
