import { drawNormal, stream } from '../../src/sim/random.js'
import { leaveName } from '../../src/sim/world/pins/leaves.js'
import { throwAtRack } from '../../src/sim/world/pins/rack.js'
import { manyThrows, rackNumber, strikeShare, tallied, throwOf } from '../sim/world/pins/rack-numbers.js'

const BOARDS = Array.from({ length: 25 }, (_, index) => 14 + index * 0.5)
const ANGLES = [0, 1, 2, 3, 4, 5, 6, 7, 8]

/** Strike shares by board and angle, and what a right-hander's spread about the pocket leaves (about a minute). */
export function run(): void {
  console.log(`strike % at 17.5 mph; board by angle\n      ${ANGLES.map((angle) => `${angle}°`.padStart(5)).join('')}`)
  for (const board of BOARDS) {
    const shares = ANGLES.map((angle) => strikeShare(manyThrows(throwOf(board, angle), `map ${board} ${angle}`, 150)))
    console.log(board.toFixed(1).padStart(6) + shares.map((share) => (100 * share).toFixed(0).padStart(5)).join(''))
  }
  for (const spreadBoards of [0.6, 1.1, 1.6]) {
    const draw = stream({ seed: 'rack-map', game: 0, frame: 0, ball: 1, purpose: 'study' })
    const leaves = Array.from({ length: 6000 }, (_, k) => {
      const board = 17.6 + spreadBoards * drawNormal(draw)
      const angle = 5 + 0.8 * drawNormal(draw)
      return throwAtRack(throwOf(board, angle, 16.5), rackNumber('mixed', k)).standing
    })
    const strikes = leaves.filter((mask) => mask === 0).length / leaves.length
    const rest = tallied(leaves.filter((mask) => mask !== 0)).slice(0, 14)
    console.log(
      `\nboards N(17.6, ${spreadBoards}), angles N(5, 0.8): strikes ${(100 * strikes).toFixed(1)} %; of the rest`,
    )
    console.log(rest.map(([mask, share]) => `${leaveName(mask)} ${(100 * share).toFixed(1)} %`).join(', '))
  }
}
