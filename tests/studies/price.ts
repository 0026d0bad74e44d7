import { auditCharges } from './price/audit.js'
import { bestChoices } from './price/best-choices.js'
import { findingSums } from './price/finding-sums.js'
import { playLadder, sumLadder } from './price/ladder.js'
import { spareErrors } from './price/spare-errors.js'
import { startingLines } from './price/starting-lines.js'

/*
 * Whether a price is whole and lanes must be read. Each part runs by itself, its sizes as arguments; long ones can be run in
 * pieces (first block, count) that add up.
 *
 *   npm run study price audit 0 60             charged over true loss by brute force, and costly calls that are none
 *   npm run study price findings 0 50          what findings add up to against the charge
 *   npm run study price spares 1500            prices of 12 leaves against so many live throws
 *   npm run study price ladder 0 200 FOLDER    policies and blind strategies on drawn and posted oil, a line a block and policy
 *   npm run study price ladder-sum FOLDER      the ladder of what lies there
 *   npm run study price best 0 20              best ball changes, other speeds, distance of the best that is shown
 *   npm run study price start                  where the starting line enters on every built-in lane with a sheet, and its price
 */
export async function run([part = '', ...rest]: readonly string[]): Promise<void> {
  const [first = 0, count = 2] = rest.map(Number).filter(Number.isFinite)
  switch (part) {
    case 'audit':
      return auditCharges(first, count)
    case 'findings':
      return findingSums(first, count)
    case 'spares':
      return spareErrors(first || 200)
    case 'ladder':
      return playLadder(first, count, rest[2])
    case 'ladder-sum':
      return sumLadder(rest[0])
    case 'best':
      return bestChoices(first, count)
    case 'start':
      return startingLines()
    default:
      process.stderr.write('Say which part: audit, findings, spares, ladder, ladder-sum, best or start.\n')
      process.exitCode = 64
  }
}
