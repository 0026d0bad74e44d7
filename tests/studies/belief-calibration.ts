import { dynamicsOf } from '../../src/sim/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/ball/launch.js'
import { rollBall } from '../../src/sim/ball/motion.js'
import { buildStepTable } from '../../src/sim/ball/step-table.js'
import { beginBelief, filmOf, updateBelief } from '../../src/sim/belief/belief.js'
import { effectiveSize } from '../../src/sim/belief/hypotheses.js'
import { shownThrows } from '../../src/sim/belief/shown.js'
import { type Reading, readingOf, summarise } from '../../src/sim/belief/summary.js'
import { advance } from '../../src/sim/block/advance.js'
import { beginBlock } from '../../src/sim/block/begin.js'
import { followTheMiss } from '../../src/sim/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision, LaneOil, Posted } from '../../src/sim/block/types.js'
import { levelProfile } from '../../src/sim/bowler/levels.js'
import { intendedLaunch } from '../../src/sim/bowler/release.js'
import { playerView } from '../../src/sim/decision/player-view.js'
import { mirrorFilm, type OilFilm } from '../../src/sim/lane/film.js'
import { WIDEST_LIMITS } from '../../src/sim/lane/generator.js'
import { measurePattern, type OilPattern } from '../../src/sim/lane/pattern.js'
import { drawNormal, stream } from '../../src/sim/random.js'
import { feetToMetres, metresToBoard, metresToFeet } from '../../src/sim/units.js'
import { bag } from '../sim/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/lane/patterns-for-tests.js'

/*
 * Last figures (before the carry table was sampled in full), 200 blocks a run, 300 hypotheses; covered % / mean width / mean miss of the mean; one standard error of a
 * share of 80 % is 2.8 %. Wanted: 75 to 85 % after five throws.
 *
 * patterns of the generator, nothing posted
 * throws     length ft           volume mL           ratio              entry board
 *      0     86  13.00  4.00     81  11.20  3.50     80  5.42  1.79     83  12.20  3.70
 *      1     93   5.18  1.31     81  11.02  3.41     82  5.01  1.67     85   4.21  1.02
 *      3     90   3.12  0.82     84  10.89  3.36     81  4.40  1.51     85   2.43  0.62
 *      5     91   2.62  0.73     81  10.66  3.41     76  4.21  1.51     84   1.98  0.55
 *     10     88   2.06  0.63     79  10.28  3.51     74  3.91  1.43     78   1.47  0.48
 *
 * written patterns, nothing posted
 *      0     99  13.00  3.04     93  11.20  2.68     76  5.41  2.35     94  12.19  3.07
 *      1     90   5.05  1.39     92  11.01  2.61     76  5.15  2.22     90   4.21  1.00
 *      3     89   3.42  0.96     89  10.82  2.68     79  4.92  1.94     88   2.58  0.66
 *      5     90   2.94  0.80     88  10.62  2.81     82  4.67  1.85     85   2.13  0.57
 *     10     89   2.34  0.68     84  10.19  2.75     81  4.14  1.64     80   1.54  0.50
 *
 * patterns of the generator, length posted
 *      0    100   2.00  0.25     81  11.20  3.38     79  5.41  1.86     91   3.57  0.89
 *      1     99   1.89  0.27     81  10.91  3.24     78  4.80  1.60     88   2.41  0.62
 *      3     99   1.67  0.29     80  10.63  3.23     78  4.49  1.49     85   1.84  0.50
 *      5     99   1.55  0.29     82  10.38  3.15     79  4.42  1.46     83   1.60  0.45
 *     10     98   1.39  0.31     77  10.00  3.24     77  4.03  1.42     75   1.34  0.49
 *
 * Known gaps: with nothing posted the length's interval is too wide (91 %) after five throws; a posted length is taken
 * as good to a foot though it is rounded to half of one, so its interval nearly always covers. Volume is hardly learnt
 * at all, because a ball floats on 2 µm of oil as it does on 3. Written patterns are narrower in length and volume than
 * the prior, so those two intervals start too wide for them.
 */

const CHECKPOINTS = [0, 1, 3, 5, 10] as const
const FIGURES = ['length ft', 'volume mL', 'ratio', 'entry board'] as const

const DRAWN: LaneOil = { kind: 'limits', limits: WIDEST_LIMITS }
const RUNS = [
  { name: 'drawn', title: 'patterns of the generator, nothing posted', posted: 'nothing', oilOf: () => DRAWN },
  { name: 'length', title: 'patterns of the generator, length posted', posted: 'length', oilOf: () => DRAWN },
  { name: 'written', title: 'written patterns, nothing posted', posted: 'nothing', oilOf: writtenOil },
] as const

/**
 * How often the 80 % intervals cover the truth, for patterns of the generator and for written ones: of the fresh oil's
 * length, volume and ratio, and of the board at the pins that the next ball would reach without a miss on the oil as it
 * lies by then.
 * Arguments: blocks a run (200), name of the only run wanted.
 */
export function run(args: readonly string[] = []): void {
  const blocks = Number(args[0] ?? 200)
  for (const { name, title, posted, oilOf } of RUNS)
    if (args[1] === undefined || args[1] === name) report(`${blocks} ${title}`, blocks, posted, oilOf)
}

/** A written pattern stretched, thinned and reshaped by the seed: nothing the generator or the hypotheses would draw. */
function writtenOil(block: number): LaneOil {
  const random = stream({ seed: `written ${block}`, game: 0, frame: 0, ball: 0, purpose: 'study' })
  const written = [houseForty, flatFortyFive, shortThirtyFive, flatForty][block % 4]
  const stretch = Math.round((random() - 0.5) * 8) / 2
  const amount = 0.85 + 0.3 * random()
  const passes = written.passes.map((pass) => ({
    ...pass,
    microlitresPerBoard: pass.microlitresPerBoard * amount * Math.max(0.3, 1 + 0.25 * drawNormal(random)),
    toMetres: pass.toMetres + feetToMetres(stretch),
  }))
  const pattern: OilPattern = { name: `${written.name} ${block}`, passes }
  return { kind: 'pattern', pattern }
}

function setupFor(oil: LaneOil, posted: Posted, block: number): BlockSetup {
  return {
    name: 'calibration',
    lanes: [{ name: 'lane 7', oil }],
    bag,
    bowler: levelProfile((['220', '200', '180'] as const)[block % 3], 'tweener', block % 2 === 0 ? 'right' : 'left'),
    field: [],
    practiceThrows: CHECKPOINTS[CHECKPOINTS.length - 1] + 1,
    games: 1,
    scoring: 'ten-pin',
    posted,
    seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
  }
}

/** Follows the miss, two and one, from the rule-of-thumb opening line. */
function thumb(state: BlockState, block: number): Decision {
  const view = playerView(state)
  if (!view) throw new RangeError('The block is over.')
  const last = view.onThisLane.at(-1)
  if (!last) return { ...view.suggestion, ballId: bag[1 + (block % 3)].id }
  return { ...last.decision, aim: followTheMiss(last.decision.aim, last.observation) }
}

interface Tally {
  covered: number
  width: number
  miss: number
}

function report(title: string, blocks: number, posted: Posted, oilOf: (block: number) => LaneOil): void {
  const tallies = CHECKPOINTS.map(() => FIGURES.map((): Tally => ({ covered: 0, width: 0, miss: 0 })))
  const milliseconds: number[] = []
  let effective = 0
  for (let block = 0; block < blocks; block++) {
    const seed = `calibration ${title} ${block}`
    const setup = setupFor(oilOf(block), posted, block)
    let state = beginBlock(setup, seed)
    const truth = measurePattern(state.lanes[0].film)
    const fresh = [metresToFeet(truth.lengthMetres), truth.volumeMicrolitres / 1000, truth.ratio]
    let belief = beginBelief(setup, 0, seed)
    let thrown = 0
    CHECKPOINTS.forEach((checkpoint, c) => {
      for (; thrown < checkpoint; thrown++) {
        state = advance(state, thumb(state, block))
        const shown = shownThrows(state, belief.lanes)[thrown]
        const start = performance.now()
        belief = updateBelief(belief, shown)
        milliseconds.push(performance.now() - start)
      }
      const { lengthFeet, volumeMillilitres, ratio } = summarise(belief)
      const next = errorFreeBall(state, block)
      const entries = Float64Array.from(belief.hypotheses.weights, (_, i) => next(filmOf(belief, i)))
      const readings = [lengthFeet, volumeMillilitres, ratio, readingOf(entries, belief.hypotheses.weights)]
      add(tallies[c], readings, [...fresh, next(state.lanes[0].film)])
    })
    effective += effectiveSize(belief.hypotheses.weights) / blocks
  }
  print(title, blocks, tallies)
  milliseconds.sort((a, b) => a - b)
  const at = (share: number): string => milliseconds[Math.floor(share * (milliseconds.length - 1))].toFixed(0)
  console.log(
    `ms a throw: median ${at(0.5)}, 90 % ${at(0.9)}, most ${at(1)}; effective size at the end ${effective.toFixed(0)}\n`,
  )
}

/** Board at the pins of the next ball as meant, on whatever film. */
function errorFreeBall(state: BlockState, block: number): (film: OilFilm) => number {
  const { aim, release, ballId } = thumb(state, block)
  const { bowler } = state.setup
  const ball = dynamicsOf(bag.find((one) => one.id === ballId) ?? bag[0])
  const launch = intendedLaunch(bowler, aim, release)
  const out = newRollOutcome()
  return (film) => {
    const own = bowler.hand === 'left' ? mirrorFilm(film) : film
    rollBall(own, buildStepTable(own), ball, launch, out)
    return metresToBoard(out.lateralAtPinsMetres)
  }
}

function add(tallies: Tally[], readings: readonly Reading[], figures: readonly number[]): void {
  readings.forEach(({ low, high, mean }, f) => {
    if (figures[f] >= low && figures[f] <= high) tallies[f].covered++
    tallies[f].width += high - low
    tallies[f].miss += Math.abs(mean - figures[f])
  })
}

function print(title: string, blocks: number, tallies: readonly (readonly Tally[])[]): void {
  console.log(title)
  const heads = FIGURES.map((figure) => `${figure}: covered`.padStart(22).concat('  width  miss'))
  console.log(`throws${heads.join('')}`)
  CHECKPOINTS.forEach((checkpoint, c) => {
    const cells = tallies[c].map(({ covered, width, miss }) => {
      const share = `${((100 * covered) / blocks).toFixed(0)} %`
      return share.padStart(22) + (width / blocks).toFixed(2).padStart(7) + (miss / blocks).toFixed(2).padStart(6)
    })
    console.log(String(checkpoint).padStart(6) + cells.join(''))
  })
}
