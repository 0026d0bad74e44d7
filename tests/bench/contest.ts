import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { checkAll } from '../../src/scenarios/contest/standings/check-all.js'
import { folder, movedBy, oneBall, playEntry, sealed } from '../scenarios/contest/contest-for-tests.js'
import { type BenchRow, startWatch, timesOf } from './measure.js'

const ENTRIES = 500
/** Five hundred replays take minutes; what is measured is said of all of them. */
const MEASURED = 6
const GAMES = 2

/** Standings of two-game entries, each checked by itself: seconds a record, and for 500 of them on one core. */
export async function benchContest(): Promise<BenchRow[]> {
  const { opened } = sealed({ games: GAMES }, undefined, oneBall(GAMES))
  const played = await playEntry(opened, 'Ansa', movedBy(1))
  const into = folder()
  const paths = Array.from({ length: MEASURED }, (_, index) => join(into, `${index}.json`))
  for (const path of paths) copyFileSync(played.path, path)
  const measure = async (luck: boolean) => {
    const taken = []
    for (const path of paths) {
      const stop = startWatch()
      await checkAll([path], opened, { luck, accounts: null, kept: null, jobs: 1, reached: () => {} })
      taken.push(stop())
    }
    return taken
  }
  const [verified, adjusted] = [await measure(false), await measure(true)]
  return [
    { name: 'verify an entry of two games', unit: 'ms', measured: timesOf(verified), goal: { most: 50, of: 'median' } },
    { name: '… and take its luck out', unit: 'ms', measured: timesOf(adjusted) },
    { name: `${ENTRIES} entries, verified, on one core`, unit: 's', measured: timesOf(verified, ENTRIES / 1000) },
    { name: `${ENTRIES} entries without luck, on one core`, unit: 's', measured: timesOf(adjusted, ENTRIES / 1000) },
  ]
}
