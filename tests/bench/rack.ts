import { throwAtRack } from '../../src/sim/world/pins/rack.js'
import { rackNumber, throwOf } from '../sim/world/pins/rack-numbers.js'
import { throwAtRapierRack } from '../sim/world/pins/rapier-rack.js'
import { type BenchRow, timeEach, timesOf } from './measure.js'

const BOARDS = [13, 15, 16, 16.5, 17, 17.5, 18, 18.5, 19, 20, 22] as const
const ANGLES = [1, 3, 4, 5, 6] as const

const throws = BOARDS.flatMap((board) => ANGLES.map((angle) => throwOf(board, angle)))
const natures = Array.from({ length: 64 }, (_, index) => rackNumber('bench', index))

/** One throw at a full rack, from thin hits to nose hits, beside the general rigid-body library. */
export function benchRack(): BenchRow[] {
  const ours = (run: number): unknown => throwAtRack(throws[run % throws.length]!, natures[run % natures.length]!)
  const theirs = (run: number): unknown =>
    throwAtRapierRack(throws[run % throws.length]!, natures[run % natures.length]!)
  return [
    {
      name: 'full rack',
      unit: 'ms',
      measured: timesOf(timeEach(ours, 1100, 220)),
      goal: { most: 2, of: 'median' },
      beside: { name: 'Rapier', median: timesOf(timeEach(theirs, 55, 11)).median },
    },
  ]
}
