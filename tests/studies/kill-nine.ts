import { stream } from '../../src/sim/random.js'
import { killAt } from '../cli/kill-moments.js'

const MOMENTS = 300

/** Kills scripted play at 300 random moments and counts what was lost; all of lost, broken and stuck should be 0. */
export async function run([count]: readonly string[] = []): Promise<void> {
  const moments = count === undefined ? MOMENTS : Number(count)
  const draw = stream({ seed: 'kill-nine', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const sums = { moments: 0, told: 0, lost: 0, broken: 0, stuck: 0 }
  for (let moment = 0; moment < moments; moment++) {
    const { told, kept, after, broken } = await killAt(Math.floor(draw() * 22), Math.floor(draw() * draw() * 60))
    sums.moments++
    sums.told += told
    sums.lost += Math.max(0, told - kept)
    sums.broken += broken.length
    if (kept > 0 && after < kept) sums.stuck++
    if ((moment + 1) % 25 === 0 || moment + 1 === moments) process.stdout.write(`${JSON.stringify(sums)}\n`)
  }
}
