import { stream } from '../../sim/random.js'
import { boardToMetres, degreesToRadians, mphToMetresPerSecond, poundsToKilograms } from '../../sim/units.js'
import { countPins, leaveName } from '../../sim/world/pins/leaves.js'
import { drawRackNature } from '../../sim/world/pins/nature.js'
import { throwAtRack } from '../../sim/world/pins/rack.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText, rounded } from '../files/text/json.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface RackOptions {
  readonly board: number
  readonly angle: number
  readonly speed: number
  readonly throws: number
  /** Mask of the pins standing. */
  readonly standing: number
  readonly weight: number
  readonly seed: string
  readonly json?: boolean
}

const HEADPIN_BOARD = 20
const THROWS_A_STEP = 100

/** What the pins do when the same ball comes again and again: every leave with how often it came. */
export function rackCommand(options: RackOptions, console: CommandConsole): number {
  const counts = new Map<number, number>()
  const progress = progressOn(console, 'throws')
  let felled = 0
  for (let number = 1; number <= options.throws; number++) {
    const random = stream({ seed: options.seed, game: 0, frame: 0, ball: number, purpose: 'rack' })
    const { standing } = throwAtRack(
      {
        offsetMetres: boardToMetres(HEADPIN_BOARD) - boardToMetres(options.board),
        angleRadians: degreesToRadians(options.angle),
        speedMetresPerSecond: mphToMetresPerSecond(options.speed),
        ballMassKilograms: poundsToKilograms(options.weight),
        standing: options.standing,
      },
      drawRackNature(random),
    )
    counts.set(standing, (counts.get(standing) ?? 0) + 1)
    felled += countPins(options.standing) - countPins(standing)
    if (number % THROWS_A_STEP === 0) progress.reached(number, options.throws)
  }
  progress.over()
  const leaves = [...counts]
    .sort(([maskA, countA], [maskB, countB]) => countB - countA || maskA - maskB)
    .map(([mask, count]) => ({
      leave: mask === 0 ? 'all down' : leaveName(mask),
      count,
      share: count / options.throws,
    }))
  const cleared = (counts.get(0) ?? 0) / options.throws
  const meanPins = felled / options.throws
  if (options.json) {
    const rows = leaves.map(({ leave, count, share }) => ({ leave, count, share: rounded(share, 6) }))
    printText(
      console,
      jsonText({
        board: options.board,
        angleDegrees: options.angle,
        speedMph: options.speed,
        throws: options.throws,
        seed: options.seed,
        cleared: rounded(cleared, 6),
        meanPins: rounded(meanPins, 6),
        leaves: rows,
      }),
    )
    return EXIT.fine
  }
  console.print(
    `Board ${options.board}, ${options.angle} degrees, ${options.speed} mph at the pins; ${options.throws} throws`,
  )
  console.print(
    `  all down ${percent(cleared)}, give or take ${percent(twoErrors(cleared, options.throws))}; mean ${meanPins.toFixed(2)} pins`,
  )
  for (const { leave, count, share } of leaves) {
    console.print(`  ${percent(share).padStart(6)}  ${String(count).padStart(6)}  ${leave}`)
  }
  return EXIT.fine
}

/** Two standard errors of a share. */
function twoErrors(share: number, throws: number): number {
  return 2 * Math.sqrt((share * (1 - share)) / throws)
}

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`
}
