import { findingParagraph, findingWords } from '../../src/scenarios/words/finding-words.js'
import { luckWords } from '../../src/scenarios/words/luck-words.js'
import { type Account, accountOf } from '../../src/sim/analysis/debrief/account.js'
import { LEDGER_TERMS, type LedgerTerms } from '../../src/sim/analysis/debrief/ledger/ledger.js'
import { playerView } from '../../src/sim/analysis/view/player-view.js'
import { stream } from '../../src/sim/random.js'
import { advance } from '../../src/sim/world/block/advance.js'
import { beginBlock } from '../../src/sim/world/block/begin.js'
import { followTheMiss } from '../../src/sim/world/block/follow-the-miss.js'
import type { BlockSetup, BlockState, Decision } from '../../src/sim/world/block/types.js'
import { levelProfile } from '../../src/sim/world/bowler/levels.js'
import { WIDEST_LIMITS } from '../../src/sim/world/lane/generator.js'
import { FULL_RACK, leaveName } from '../../src/sim/world/pins/leaves.js'
import { bag } from '../sim/world/ball/bag-for-tests.js'
import { flatFortyFive, houseForty, shortThirtyFive } from '../sim/world/lane/patterns-for-tests.js'

const [sandedSolid, , hybrid, weakPearl] = bag

const house: BlockSetup = {
  name: 'house',
  lanes: [{ name: 'lane 3', oil: { kind: 'pattern', pattern: houseForty } }],
  bag,
  bowler: levelProfile('200'),
  field: [
    {
      profile: levelProfile('180', 'cranker'),
      ball: sandedSolid,
      aim: { feetBoard: 28, targetBoard: 15, speedStep: 0 },
    },
    { profile: levelProfile('200'), ball: hybrid, aim: { feetBoard: 26, targetBoard: 13, speedStep: 0 } },
    { profile: levelProfile('160', 'stroker'), ball: weakPearl, aim: { feetBoard: 22, targetBoard: 11, speedStep: 0 } },
  ],
  practiceThrows: 3,
  games: 1,
  scoring: 'ten-pin',
  posted: 'sheet',
  seeing: { arrowsBoardStep: 1, breakpointBoardStep: 1, breakpointFeetStep: 2, speedMphStep: 0.1 },
}

/*
 * Read as a coach would, 20 blocks (four kinds of lanes, five habits), and what was changed for it:
 *
 *   what was wrong                                                          what was done
 *   the best line of all named as the cure, often ten boards away along     the nearest choice as good is named
 *     a ridge of lines that are equally good
 *   one wrong ball told twice, in pieces of a game                          throws alike told together; what a dearer finding
 *                                                                             has claimed is taken out of the others
 *   three findings of one lane played too far in                            lines off to the same side are one finding
 *   a chase away from the good line told as a wrong line only               moves the other way are named
 *   a ball half a board off at the arrows given as the reason for a         less than a board is said to be within a board,
 *     miss of 2.5                                                             with what a board there does at the pins
 *   one runaway told in two findings, since feet and target had to go        the way the feet had to go puts lines together
 *     opposite ways
 *   findings of 0.3 pin                                                     half a pin is the least, all its throws together
 *   a finding of 2.0 pins on a throw charged 0.6                            a finding costs no more than was charged
 *   flat oil: "a line outside was better", which the lifted oil             what the oil as it was contradicts is not told
 *     contradicted (pattern swing −12 pins a game)
 *   "the target was the costly part" where feet and target belonged         a part is named alone only when its share is
 *     together (shares −2.5 and 4.0 of 1.5)                                   0.7 to 1.3 of the gain
 *   "feet and target together" where only the target differed               the one part that differs is named
 *
 * Read again when a choice was first held against lanes drawn apart. What was wrong, and what was done:
 *
 *   "8 to 16 boards right" on flat oil, 12 pins charged where the lifted     lanes drawn apart count the loss, throws between the
 *     oil gave 1                                                              rolled ones are judged: 3 to 6 pins are charged now
 *   a corner pin shot at as the panel suggests, up the gutter's edge, and     the suggestion is good on dry boards too
 *     charged 0.5 to 1.9 pins
 *   a ball in the gutter before the arrows "NaN at the arrows"               it is said to be off the lane by then
 *
 * Pattern swing of these blocks is now -0.09 a throw (standard error 0.05, 9 blocks). Still to be minded: on flat oil many lines
 * are as good, and the nearest that is as good from what had been seen can be far outside, 16 boards in two cases of 20.
 * The rule of thumb answers any gutter as one on the own side; doubled, it runs away across the lane (block 18).
 * No block here stays on a line that goes from good to bad, so moved-too-late and missed-a-change are read in tests only.
 *
 * Means a throw of the terms that should be 0, thumb rule on 18 blocks, standard error over blocks:
 *
 *                     first balls       spares
 *   delivery luck     0.28 ± 0.20       −0.06 ± 0.37
 *   carry luck        0.10 ± 0.25        0.14 ± 0.16
 */

/** Lanes of several kinds, told and untold. */
const SETUPS: readonly BlockSetup[] = [
  house,
  { ...house, name: 'flat and long', lanes: [{ name: 'lane 11', oil: { kind: 'pattern', pattern: flatFortyFive } }] },
  {
    ...house,
    name: 'short, alone',
    lanes: [{ name: 'lane 5', oil: { kind: 'pattern', pattern: shortThirtyFive } }],
    field: [],
    bowler: levelProfile('180'),
  },
  {
    ...house,
    name: 'unseen pair',
    lanes: [
      { name: 'lane 7', oil: { kind: 'limits', limits: WIDEST_LIMITS } },
      { name: 'lane 8', oil: { kind: 'limits', limits: WIDEST_LIMITS } },
    ],
    field: [],
    posted: 'nothing',
  },
]

type Habit =
  | 'answers each call'
  | 'never moves'
  | 'moves half as much'
  | 'moves twice as much'
  | 'first ball of the bag'
const HABITS: readonly Habit[] = [
  'answers each call',
  'never moves',
  'moves half as much',
  'moves twice as much',
  'first ball of the bag',
]

/** What a bowler of some habit throws next; opening lines are the rule of thumb's, spares by habit. */
function choose(state: BlockState, habit: Habit, seed: string): Decision {
  const view = playerView(state)
  if (!view) throw new RangeError('The block is over.')
  if (state.standing !== FULL_RACK || view.suggestion.release === 'spare') return view.suggestion
  const last = view.onThisLane.findLast((one) => one.standingBefore === FULL_RACK)
  if (!last) {
    const draw = stream({ seed, game: 0, frame: 0, ball: 0, purpose: 'study' })()
    const index = habit === 'first ball of the bag' ? 0 : 1 + Math.floor(draw * 3)
    return { ...view.suggestion, ballId: state.setup.bag[index].id }
  }
  if (habit === 'never moves') return last.decision
  const { aim } = last.decision
  const answered = followTheMiss(aim, last.observation)
  const factor = habit === 'moves half as much' ? 0.5 : habit === 'moves twice as much' ? 2 : 1
  const moved = (from: number, to: number): number => Math.round((from + factor * (to - from)) * 2) / 2
  return {
    ...last.decision,
    aim: {
      ...aim,
      feetBoard: Math.min(46, Math.max(8, moved(aim.feetBoard, answered.feetBoard))),
      targetBoard: Math.min(30, Math.max(2, moved(aim.targetBoard, answered.targetBoard))),
    },
  }
}

/** Debriefs with the events around their findings, to be read by one who knows the trade. @param args how many, and from which number on */
export function run(args: readonly string[] = []): void {
  const count = Number(args[0] ?? 20)
  const first = Number(args[1] ?? 0)
  const perThrow: LedgerTerms[][] = []
  for (let number = first; number < first + count; number++) {
    const setup = SETUPS[number % SETUPS.length]
    const habit = HABITS[number % HABITS.length]
    const seed = `debrief ${number}`
    let state = beginBlock(setup, seed)
    while (state.spot) state = advance(state, choose(state, habit, seed))
    const begin = process.cpuUsage()
    const account = accountOf(state, { alternatives: false })
    const { user, system } = process.cpuUsage(begin)
    console.log(`\n=== ${number}: ${setup.name}, ${habit} (${((user + system) / 1e6).toFixed(0)} s)`)
    print(account, state)
    perThrow.push(account.throws.flatMap(({ graded }) => (graded ? [graded.ledger] : [])))
  }
  printMeans(perThrow)
}

/** Means a throw of the terms that should have mean 0, with their error over blocks, which alone are independent. */
function printMeans(blocks: readonly (readonly LedgerTerms[])[]): void {
  for (const term of ['patternSwingPins', 'deliveryPins', 'carryPins'] as const) {
    const means = blocks.map((block) => block.reduce((sum, one) => sum + one[term], 0) / block.length)
    const mean = means.reduce((sum, one) => sum + one, 0) / means.length
    const variance = means.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (means.length - 1)
    console.log(
      `${term}: ${mean.toFixed(2)} a throw, standard error ${Math.sqrt(variance / means.length).toFixed(2)}, ${means.length} blocks`,
    )
  }
}

function print(account: Account, state: BlockState): void {
  for (const { index, spot, kind, decision, observation, standingAfter, graded, innovation } of account.throws) {
    const { aim } = decision
    const ball = state.setup.bag.find((one) => one.id === decision.ballId)?.name ?? decision.ballId
    const terms = graded ? LEDGER_TERMS.map((term) => graded.ledger[term].toFixed(1).padStart(5)).join('') : ''
    const best = graded?.grade.best
    const held =
      graded && best && graded.grade.givenAwayPins > 0
        ? ` charged ${graded.grade.givenAwayPins.toFixed(1)} best ${best.ballId} ${best.aim.feetBoard}/${best.aim.targetBoard}/${best.aim.speedStep}`
        : ''
    const told = innovation
      ? ` off ${(innovation.shownBoard - innovation.predictedBoard).toFixed(1)} throw ${innovation.deliveryShare.toFixed(2)}`
      : ''
    console.log(
      `${String(index).padStart(3)} ${spot.phase === 'practice' ? 'p' : 'f'}${spot.frame}.${spot.ball} lane ${spot.lane} ${kind === 'spare' ? 'spare' : 'first'} ${ball} ${aim.feetBoard}/${aim.targetBoard}/${aim.speedStep} saw ${observation.arrowsBoard}, ${observation.breakpointBoard}@${observation.breakpointFeet}, ${observation.contact}; ${leaveName(standingAfter)} |${terms}|${held}${told}`,
    )
  }
  const { ledger, chargedPins } = account.sums.block
  console.log(
    `sum ${LEDGER_TERMS.map((term) => `${term} ${ledger[term].toFixed(1)}`).join(', ')}; charged ${chargedPins.toFixed(1)}`,
  )
  const block = { setup: state.setup, throws: state.throws }
  for (const tag of account.tags) {
    const words = findingWords(tag, block)
    console.log(`* ${tag.kind} [${tag.throws.join(' ')}] ${findingParagraph(words)}`)
    console.log(`    ${words.figures}`)
  }
  for (const note of account.luck)
    console.log(`~ ${luckWords(note, state.throws, state.setup.games, state.setup.bowler.hand)}`)
}
