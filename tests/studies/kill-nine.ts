import { existsSync } from 'node:fs'
import { stream } from '../../src/sim/random.js'
import { type KilledPlay, killAt } from '../cli/kill-moments.js'
import { killScreenAt } from '../cli/killed-screen.js'

const MOMENTS = 300
const SCREEN_MOMENTS = 40
const PROGRAM = 'dist/cli.js'

/**
 * Kills the built program outright at random moments of play, line by line and then on the screen in a pseudo-terminal, and counts
 * what was lost; all of lost, broken and stuck should be 0. Arguments: moments line by line, moments on the screen.
 *
 *     line by line   300 moments, 3,167 results told, lost 0, broken 0, stuck 0
 *     on the screen   40 moments,   138 results told, lost 0, broken 0, stuck 0
 */
export async function run([lines, screens]: readonly string[] = []): Promise<void> {
  if (!existsSync(PROGRAM)) throw new Error(`${PROGRAM} is not there; npm run build makes it.`)
  const draw = stream({ seed: 'kill-nine', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const some = (most: number): number => Math.floor(draw() * most)
  await count('line by line', Number(lines ?? MOMENTS), () =>
    killAt(some(22), Math.floor(draw() * draw() * 60), [PROGRAM]),
  )
  await count('on the screen', Number(screens ?? SCREEN_MOMENTS), (moment) =>
    killScreenAt(some(8), Math.floor(draw() * draw() * 500), [PROGRAM], moment % 2 === 1),
  )
}

async function count(where: string, moments: number, kill: (moment: number) => Promise<KilledPlay>): Promise<void> {
  const sums = { moments: 0, told: 0, lost: 0, broken: 0, stuck: 0 }
  for (let moment = 0; moment < moments; moment++) {
    const { told, kept, after, broken } = await kill(moment)
    sums.moments++
    sums.told += told
    sums.lost += Math.max(0, told - kept)
    sums.broken += broken.length
    if (kept > 0 && after <= kept) sums.stuck++
    if ((moment + 1) % 25 === 0 || moment + 1 === moments) process.stdout.write(`${where}: ${JSON.stringify(sums)}\n`)
  }
}
