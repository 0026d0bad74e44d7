import { existsSync } from 'node:fs'
import { stream } from '../../src/sim/random.js'
import { canTrace, playFailing } from '../cli/failing-calls.js'
import { canMount, playOnFullDisk, screenOnFullDisk } from '../cli/full-disk.js'
import { type KilledPlay, killAt } from '../cli/kill-moments.js'
import { killScreenAt } from '../cli/killed-screen.js'

const LINES = 300
const SCREENS = 100
const CALLS = 200
const PROGRAM = process.env.DRYBOARD_PROGRAM ?? 'dist/cli.js'
/** Kilobytes of the disks that fill up. */
const DISKS = [4, 8, 12, 16, 24, 32, 48, 64]
/** System calls that keep a block. Writes are left to the full disk: a failing write elsewhere is not the store's affair. */
const FAILING = ['fsync', 'fdatasync', 'rename', 'link', 'unlink', 'mkdir', 'openat', 'close'] as const
const CODES = ['EIO', 'ENOSPC', 'EPERM', 'EMFILE'] as const

/**
 * Breaks play of the built program in every way a machine can and counts what was lost: killed outright at random moments line by line
 * and on the screen, the moments of filing among them; system calls that fail; disks that are full. All of lost (told, not on the disk),
 * twice, broken, stuck, drafts and traces should be 0. Arguments: moments line by line, on the screen, failing calls, disks.
 *
 *     killed, line by line    300 moments, 1,699 results told: lost 0, twice 0, broken 0, stuck 0, drafts 0, traces 0
 *     killed, on the screen   100 moments,   305 results told: all 0
 *     a system call fails     200 calls,     558 results told: all 0; ended with 73 in 18, else with 0
 *     a full disk, by line      8 disks,     133 results told: all 0; ended with 73 in 4, with 0 in 4
 *     a full disk, on screen    8 disks,  91 results told: all 0; one filled up, and said so in one line
 *
 * Calls that fail while Node is still loading the program are left out: what it says then is its own.
 */
export async function run(counts: readonly string[] = []): Promise<void> {
  if (!existsSync(PROGRAM)) throw new Error(`${PROGRAM} is not there; npm run build makes it.`)
  const [lines, screens, calls, disks] = [LINES, SCREENS, CALLS, DISKS.length].map((usual, at) =>
    Number(counts[at] ?? usual),
  )
  const draw = stream({ seed: 'faults', game: 0, frame: 0, ball: 0, purpose: 'study' })
  const some = (most: number): number => Math.floor(draw() * most)
  await count('killed, line by line', lines!, (moment) => {
    const throws = 1 + some(12)
    return moment % 3 === 0
      ? killAt(throws, Math.floor(draw() * 40), [PROGRAM], throws)
      : killAt(throws - 1, Math.floor(draw() * draw() * 60), [PROGRAM])
  })
  await count('killed, on the screen', screens!, (moment) => {
    const then = (['filing', 'plain play', 'the screen'] as const)[moment % 3]!
    return killScreenAt(1 + some(5), Math.floor(draw() * draw() * (then === 'filing' ? 150 : 500)), [PROGRAM], then)
  })
  if (canTrace()) {
    await count('a system call fails', calls!, (moment) => {
      const call = FAILING[moment % FAILING.length]!
      // Of opening and closing, the first hundreds are the program's own files.
      const at = call === 'openat' || call === 'close' ? 60 + some(80) : 1 + some(12)
      return playFailing({ call, code: CODES[some(CODES.length)]!, at, forEver: draw() < 0.3 }, [PROGRAM])
    })
  } else process.stdout.write('no tracing tool here: the faulty file layer of the tests has to do\n')
  if (canMount()) {
    await count('a full disk, line by line', disks!, (at) => playOnFullDisk(DISKS[at]!, [PROGRAM]))
    await count('a full disk, on the screen', disks!, (at) => screenOnFullDisk(DISKS[at]!, [PROGRAM]))
  } else process.stdout.write('no disk of a size of our own can be had here\n')
}

type Outcome = KilledPlay & {
  readonly exitCode?: number | null
  readonly trace?: string
  readonly said?: number | boolean | null
}

async function count(where: string, moments: number, play: (moment: number) => Promise<Outcome>): Promise<void> {
  const sums = { moments: 0, told: 0, lost: 0, twice: 0, broken: 0, stuck: 0, drafts: 0, traces: 0 }
  const ends = new Map<string, number>()
  for (let moment = 0; moment < moments; moment++) {
    const one = await play(moment)
    sums.moments++
    sums.told += one.told
    sums.lost += Math.max(0, one.told - one.kept)
    sums.twice += one.twice
    sums.broken += one.broken.length
    if (one.kept > 0 && !one.filed && one.after <= one.kept) sums.stuck++
    sums.drafts += one.drafts.length
    if (one.trace) sums.traces++
    const end = one.said ?? one.exitCode
    if (end !== undefined) ends.set(String(end), (ends.get(String(end)) ?? 0) + 1)
    const wrong = one.told > one.kept || one.twice + one.broken.length + one.drafts.length > 0 || one.trace
    if (wrong) process.stdout.write(`  ${where} ${moment}: ${JSON.stringify(one)}\n`)
    if ((moment + 1) % 25 === 0 || moment + 1 === moments) {
      const ended = ends.size > 0 ? ` ended with ${JSON.stringify(Object.fromEntries(ends))}` : ''
      process.stdout.write(`${where}: ${JSON.stringify(sums)}${ended}\n`)
    }
  }
}
