import { copyFileSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { standingsOf } from '../../src/scenarios/contest/standings/standings.js'
import { standingsReport } from '../../src/scenarios/contest/standings/standings-report.js'
import { standingsLines } from '../../src/scenarios/contest/standings/standings-text.js'
import { choose, type Policy } from '../../src/sim/analysis/policies/policies.js'
import { type Chooser, folder, movedBy, playEntry, sealed } from '../scenarios/contest/contest-for-tests.js'

const as =
  (policy: Policy): Chooser =>
  (state) =>
    choose(policy, state)

/** Ten entrants; the played ones stand a few boards off the line a sensible bowler starts with and stay there. */
const ENTRANTS: readonly (readonly [string, Chooser])[] = [
  ['fair', as('fair')],
  ['memo', as('memo')],
  ['thumb', as('thumb')],
  ['stay', as('stay')],
  ['random', as('random')],
  ['played-1-left', movedBy(1)],
  ['played-2-left', movedBy(2)],
  ['played-4-left', movedBy(4)],
  ['played-1-right', movedBy(-1)],
  ['played-2-right', movedBy(-2)],
]

/**
 * A contest of ten scripted entrants on one lane with one ball, one game; then the standings told again from the records' JSON by a few
 * lines that share no code with the program: scores from the pins left, places from the frames told.
 *
 *     scores that do not come out again 0; places told again: the same; random tenth, the other nine within 1.64 standard errors
 */
export async function run(): Promise<void> {
  const { opened } = sealed()
  const into = folder()
  for (const [player, chooser] of ENTRANTS) {
    const { path } = await playEntry(opened, player, chooser)
    copyFileSync(path, join(into, `${player}.json`))
    process.stdout.write(`${player} played\n`)
  }
  const paths = ENTRANTS.map(([player]) => join(into, `${player}.json`))
  const wanted = { entrants: null, accounts: join(into, 'accounts'), evidence: false, reached: () => {} }
  const report = standingsReport(await standingsOf(paths, opened, wanted))
  for (const line of standingsLines(report)) process.stdout.write(`${line}\n`)
  const wrong = report.places.filter(({ player, score }) => scoreOf(join(into, `${player}.json`)) !== score)
  process.stdout.write(`scores that do not come out again from the records' JSON: ${wrong.length}\n`)
  const again = placesAgain(report.places.map(({ player, score, frames }) => ({ player, score, frames })))
  const told = report.places.map(({ player, place }) => `${place} ${player}`)
  process.stdout.write(
    `places told again: ${JSON.stringify(again) === JSON.stringify(told) ? 'the same' : `otherwise: ${again.join(', ')}`}\n`,
  )
}

/** Ten-pin scoring by its definition: a strike adds the next two balls, a spare the next one (USBC Playing Rules 2). */
function scoreOf(path: string): number {
  const { decisions } = JSON.parse(readFileSync(path, 'utf8')) as { decisions: { standing: number }[] }
  const pins = (mask: number): number => mask.toString(2).split('1').length - 1
  const balls: number[] = []
  let [before, onRack] = [10, 0]
  for (const { standing } of decisions) {
    const left = pins(standing)
    balls.push(before - left)
    onRack++
    const isNew = left === 0 || onRack === 2
    before = isNew ? 10 : left
    if (isNew) onRack = 0
  }
  let total = 0
  let at = 0
  for (let frame = 1; frame <= 10; frame++) {
    const [one = 0, two = 0, three = 0] = balls.slice(at, at + 3)
    if (one === 10 || one + two === 10) total += one + two + three
    else total += one + two
    at += one === 10 ? 1 : 2
  }
  return total
}
interface Told {
  readonly player: string
  readonly score: number
  readonly frames: readonly { readonly score: number; readonly luck: number | null }[]
}

/** Best sum of score and luck first; whoever is within 1.64 paired standard errors of a leader shares the place, by score. */
function placesAgain(entries: readonly Told[]): string[] {
  const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0)
  const shares = ({ frames }: Told): number[] => frames.map(({ score, luck }) => score + (luck ?? 0))
  const left = [...entries].sort((a, b) => sum(shares(b)) - sum(shares(a)))
  const told: string[] = []
  while (left.length > 0) {
    const leader = left[0]!
    const group: Told[] = []
    while (left.length > 0) {
      const gaps = shares(leader).map((one, at) => one - shares(left[0]!)[at]!)
      const mean = sum(gaps) / gaps.length
      const error = Math.sqrt((gaps.length * sum(gaps.map((gap) => (gap - mean) ** 2))) / (gaps.length - 1))
      if (left[0] !== leader && sum(gaps) !== 0 && Math.abs(sum(gaps)) >= 1.64 * error) break
      group.push(left.shift()!)
    }
    const place = told.length + 1
    group.sort((a, b) => b.score - a.score || a.player.localeCompare(b.player))
    told.push(...group.map(({ player }) => `${place} ${player}`))
  }
  return told
}
