import { mean } from 'simple-statistics'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import type { OilPattern } from '../../src/sim/world/lane/pattern.js'
import { evenSolid, hybrid, pearl, strongSolid } from '../sim/world/lane/field-balls.js'
import { entryBoard, laydownForPocket, playShots, USUAL } from '../sim/world/lane/line-drift.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/world/lane/patterns-for-tests.js'

const SEEDS = ['a', 'b', 'c', 'd', 'e', 'f']

const withVolume = (pattern: OilPattern, factor: number, name: string): OilPattern => ({
  name,
  passes: pattern.passes.map((pass) => ({ ...pass, microlitresPerBoard: pass.microlitresPerBoard * factor })),
})

/**
 * Prints how a line changes as a field of three strong balls plays it: entry board of the old line, the move of the feet
 * (target moving half as far) that restores the pocket, and the entry boards of misses at the arrows, 1 and 2 boards right and 1
 * left, from the old line and from the moved one.
 */
export function run(): void {
  console.log(
    'pattern, target, fresh laydown | after 0, 20, 40 shots: old line (1 right, 2 right, 1 left) move left (same misses)',
  )
  for (const [pattern, target, reading] of [
    [flatFortyFive, 8, strongSolid],
    [flatFortyFive, 11, strongSolid],
    [flatFortyFive, 14, strongSolid],
    [flatForty, 8, strongSolid],
    [flatForty, 11, strongSolid],
    [flatForty, 14, strongSolid],
    [withVolume(flatFortyFive, 22 / 26, 'flat 45, 22 mL'), 11, strongSolid],
    [withVolume(flatForty, 40 / 45, 'flat 40, film of 45/26'), 11, strongSolid],
    [houseForty, 11, hybrid],
    [houseForty, 11, pearl],
    [shortThirtyFive, 6, pearl],
  ] as const) {
    const reader = dynamicsOf(reading)
    const runs = SEEDS.map((seed) => playShots(pattern, [strongSolid, evenSolid, hybrid], target, 40, seed))
    const film = (lanes: (typeof runs)[number], shots: number) => lanes[shots]!.film
    const guess = { ...USUAL, laydownBoard: target + 5, targetBoard: target }
    const shot = { ...guess, laydownBoard: laydownForPocket(film(runs[0]!, 0), reader, guess, 0) }
    const figures = [0, 20, 40].map((shots) => {
      const moves = runs.map((lanes) => laydownForPocket(film(lanes, shots), reader, shot, 0.5) - shot.laydownBoard)
      const entry = (aside: number, moved: number) =>
        mean(
          runs.map((lanes, i) =>
            entryBoard(film(lanes, shots), reader, {
              ...shot,
              laydownBoard: shot.laydownBoard + moved * moves[i]!,
              targetBoard: target + aside + (moved * moves[i]!) / 2,
            }),
          ),
        )
      const misses = (moved: number) => [-1, -2, 1].map((aside) => entry(aside, moved).toFixed(1)).join(' ')
      return `${entry(0, 0).toFixed(1)} (${misses(0)}) ${mean(moves).toFixed(1)} (${misses(1)})`.padStart(42)
    })
    const title = `${pattern.name}, ${target}, ${shot.laydownBoard.toFixed(1)}, ${reading.name}`
    console.log(title.padEnd(44), figures.join(' |'))
  }
}
