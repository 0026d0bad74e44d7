import { leaveName } from '../../src/sim/world/pins/leaves.js'
import { manyThrows, rackNumber, tallied, throwOf } from '../sim/world/pins/rack-numbers.js'
import { throwAtRapierRack } from '../sim/world/pins/rapier-rack.js'

const BOARDS = [20, 19.5, 19, 18.5, 18, 17.5, 17, 16.5, 16, 15.5, 15, 14, 13]
const ANGLES = [0, 2, 4, 6]
const JUDGE_THROWS = 150
const OWN_THROWS = 1000

/** Strike shares and commonest leaves of the rack and of a general rigid-body library, on a wide grid (some minutes). */
export function run(): void {
  console.log('board angle   strikes own / judge   total variation   commonest leaves own | judge')
  for (const angle of ANGLES) {
    for (const board of BOARDS) {
      const rackThrow = throwOf(board, angle)
      const study = `wide ${board} ${angle}`
      const own = tallied(manyThrows(rackThrow, study, OWN_THROWS).map(({ standing }) => standing))
      const judge = tallied(
        Array.from({ length: JUDGE_THROWS }, (_, k) => throwAtRapierRack(rackThrow, rackNumber(study, k))),
      )
      const ownShare = new Map(own)
      const judgeShare = new Map(judge)
      let variation = 0
      for (const mask of new Set([...ownShare.keys(), ...judgeShare.keys()]))
        variation += Math.abs((ownShare.get(mask) ?? 0) - (judgeShare.get(mask) ?? 0)) / 2
      const percent = (share: number | undefined): string => (100 * (share ?? 0)).toFixed(0).padStart(3)
      const list = (leaves: typeof own): string =>
        leaves
          .filter(([mask]) => mask !== 0)
          .slice(0, 4)
          .map(([mask, share]) => `${leaveName(mask)}${percent(share)} %`)
          .join(', ')
      console.log(
        `${board.toFixed(1).padStart(5)} ${angle}°   ${percent(ownShare.get(0))} / ${percent(judgeShare.get(0))}   ${variation.toFixed(2)}   ${list(own)} | ${list(judge)}`,
      )
    }
  }
}
