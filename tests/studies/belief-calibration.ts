import { beginBelief, filmOf, updateBelief } from '../../src/sim/analysis/belief/belief.js'
import { effectiveSize } from '../../src/sim/analysis/belief/hypotheses.js'
import { shownThrows } from '../../src/sim/analysis/belief/shown.js'
import { type Reading, readingOf, summarise } from '../../src/sim/analysis/belief/summary.js'
import { playerView } from '../../src/sim/analysis/view/player-view.js'
import { drawNormal, stream } from '../../src/sim/random.js'
import { feetToMetres, metresToBoard, metresToFeet } from '../../src/sim/units.js'
import { dynamicsOf } from '../../src/sim/world/ball/dynamics.js'
import { newRollOutcome } from '../../src/sim/world/ball/launch.js'
import { rollBall } from '../../src/sim/world/ball/motion.js'
import { buildStepTable } from '../../src/sim/world/ball/step-table.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import { followTheMiss } from '../../src/sim/world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision, FieldBowler, LaneOil, Posted } from '../../src/sim/world/block/types.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { intendedLaunch } from '../../src/sim/world/bowler/release.js'
import { mirrorFilm, type OilFilm } from '../../src/sim/world/lane/film.js'
import { WIDEST_LIMITS } from '../../src/sim/world/lane/generator.js'
import { measurePattern, type OilPattern } from '../../src/sim/world/lane/pattern.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { flatForty, flatFortyFive, houseForty, shortThirtyFive } from '../sim/world/lane/patterns-for-tests.js'

/*
 * Last figures, 200 hypotheses; covered % / mean width / mean miss of the mean. Wanted: 75 to 85 % after five throws; one
 * standard error of a share of 80 % is 2.8 %.
 *
 * patterns of the generator, nothing posted, 201 blocks
 * throws     length ft           volume mL           ratio              entry board
 *      0     78  13.20  4.23     83  11.20  3.48     83  5.42  1.64     78  12.10  3.83
 *      1     84   5.52  1.50     81  10.99  3.51     80  5.13  1.64     89   4.61  1.12
 *      3     85   3.37  0.97     79  10.79  3.45     80  4.53  1.47     85   2.62  0.71
 *      5     84   2.87  0.81     78  10.63  3.45     81  4.19  1.33     81   2.13  0.57
 *     10     84   2.29  0.69     76  10.29  3.43     81  3.93  1.17     84   1.62  0.50
 *
 * covered %, 201 blocks each     length ft         volume mL         ratio           entry board
 * after throws                   1    5   10       1    5   10       1    5   10      1    5   10
 * length posted                100   98   97      77   77   74      80   79   78     91   87   86
 * written patterns              93   87   82      93   93   90      76   80   81     93   89   86
 * two others on the lane        89   85   86      80   69   67      78   74   74     87   85   79
 *
 * A posted length is taken as good to a foot though it is rounded to half of one. Volume is hardly learnt at all, because a
 * ball floats on 2 µm of oil as it does on 3. Known gap: with two others on the lane, who show two throws for each of
 * the player's own, volume and ratio are believed a little too surely.
 */

const CHECKPOINTS = [0, 1, 3, 5, 10] as const
const FIGURES = ['length ft', 'volume mL', 'ratio', 'entry board'] as const

const DRAWN: LaneOil = { kind: 'limits', limits: WIDEST_LIMITS }
/** Two others on the lane, whose lines nobody tells. */
const OTHERS: readonly FieldBowler[] = (['tweener', 'cranker'] as const).map((style) => ({
  profile: levelProfile('200', style),
  ball: bag[0],
  aim: { feetBoard: 24, targetBoard: 12, speedStep: 0 },
}))

interface Run {
  readonly name: string
  readonly title: string
  readonly posted: Posted
  readonly field: readonly FieldBowler[]
  readonly oilOf: (block: number) => LaneOil
}

const drawn: Run = {
  name: 'drawn',
  title: 'patterns of the generator, nothing posted',
  posted: 'nothing',
  field: [],
  oilOf: () => DRAWN,
}
const RUNS: readonly Run[] = [
  drawn,
  { ...drawn, name: 'length', title: 'patterns of the generator, length posted', posted: 'length' },
  {
    ...drawn,
    name: 'field',
    title: 'patterns of the generator, nothing posted, two others on the lane',
    field: OTHERS,
  },
  { ...drawn, name: 'written', title: 'written patterns, nothing posted', oilOf: writtenOil },
]

/**
 * How often the 80 % intervals cover the truth, for patterns of the generator and for written ones: of the fresh oil's
 * length, volume and ratio, and of the board at the pins that the next ball would reach without a miss on the oil as it
 * lies by then.
 * Arguments: blocks a run (200), name of the only run wanted.
 */
export function run(args: readonly string[] = []): void {
  const blocks = Number(args[0] ?? 200)
  for (const one of RUNS) if (args[1] === undefined || args[1] === one.name) report(one, blocks)
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

function setupFor({ oilOf, posted, field }: Run, block: number): BlockSetup {
  return {
    name: 'calibration',
    lanes: [{ name: 'lane 7', oil: oilOf(block) }],
    bag,
    bowler: levelProfile((['220', '200', '180'] as const)[block % 3], 'tweener', block % 2 === 0 ? 'right' : 'left'),
    field,
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

function report(studied: Run, blocks: number): void {
  const title = `${blocks} ${studied.title}`
  const tallies = CHECKPOINTS.map(() => FIGURES.map((): Tally => ({ covered: 0, width: 0, miss: 0 })))
  const milliseconds: number[] = []
  let effective = 0
  for (let block = 0; block < blocks; block++) {
    const seed = `calibration ${title} ${block}`
    const setup = setupFor(studied, block)
    let state = beginBlock(setup, seed)
    const truth = measurePattern(state.lanes[0].film)
    const fresh = [metresToFeet(truth.lengthMetres), truth.volumeMicrolitres / 1000, truth.ratio]
    let belief = beginBelief(setup, 0, seed)
    let thrown = 0
    CHECKPOINTS.forEach((checkpoint, c) => {
      for (; thrown < checkpoint; thrown++) {
        const before = state.events.length
        state = advance(state, thumb(state, block))
        for (const shown of shownThrows({ ...state, events: state.events.slice(before) }, belief.lanes)) {
          const start = performance.now()
          belief = updateBelief(belief, shown)
          milliseconds.push(performance.now() - start)
        }
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
