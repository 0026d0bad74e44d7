import { boardToMetres, feetToMetres, metresToBoard, metresToBoards } from '../../units.js'
import { newRollOutcome, rollBall } from '../../world/ball/motion.js'
import { lateralSpreadAt } from '../../world/bowler/profile.js'
import { type Aim, intendedLaunch } from '../../world/bowler/release.js'
import { spareOdds } from '../carry/spare-odds.js'
import { type PricedSpare, type SpareShot, type SpareSituation, tabulatedSpareWorth } from './spare-choice.js'

const HEADPIN_BOARD = 20
const PINS_PER_ARROWS = 4
/** Laydowns that are tried, by boards from the bowler's side: cross-lane angles from both sides. */
const LAYDOWN_BOARDS = [6, 10, 14, 18, 22, 26, 30, 34] as const
const TARGET_RANGE: readonly [number, number] = [2, 30]
const FEET_RANGE: readonly [number, number] = [8, 46]

const outcome = newRollOutcome()

/** The best way to shoot at what stands with any ball of the bag and the spare release. */
export function searchSpare(situation: SpareSituation): PricedSpare {
  return spareShots(situation).reduce((best, shot) => (shot.worth > best.worth ? shot : best))
}

/**
 * One way to shoot at what stands for every ball and side of the lane.
 * @throws RangeError when no line reaches it
 */
export function spareShots(situation: SpareSituation): PricedSpare[] {
  const goalBoard = metresToBoard(boardToMetres(HEADPIN_BOARD) - bestOffset(situation))
  const shots = situation.bag.flatMap((_, ballIndex) =>
    LAYDOWN_BOARDS.flatMap((laydown) => {
      const shot = shotAt(situation, ballIndex, laydown, goalBoard)
      return shot ? [{ ...shot, worth: tabulatedSpareWorth(situation, shot) }] : []
    }),
  )
  if (shots.length === 0) throw new RangeError('No playable line reaches the standing pins.')
  return shots
}

function bestOffset({ profile, standing }: SpareSituation): number {
  return spareOdds(standing, lateralSpreadAt(profile.spareError, feetToMetres(60))).bestOffsetMetres
}

/** The half-board aim from about a laydown that sends an error-free ball nearest to a board at the pins. */
function shotAt(situation: SpareSituation, ballIndex: number, laydown: number, goalBoard: number): SpareShot | null {
  const slide = metresToBoards(situation.profile.slideToLaydownMetres)
  let target = laydown + (goalBoard - laydown) / PINS_PER_ARROWS
  for (let round = 0; round < 3; round++) {
    const aim = aimOf(laydown + slide, target)
    target += (goalBoard - boardAtPins(situation, ballIndex, aim)) / PINS_PER_ARROWS
  }
  const targetBoard = toHalf(target)
  if (targetBoard < TARGET_RANGE[0] || targetBoard > TARGET_RANGE[1]) return null
  // turning about a fixed target, a board of feet is three boards at the pins the other way
  let feet = laydown + slide
  for (let round = 0; round < 2; round++)
    feet -= (goalBoard - boardAtPins(situation, ballIndex, aimOf(feet, targetBoard))) / (PINS_PER_ARROWS - 1)
  const feetBoard = toHalf(feet)
  if (feetBoard < FEET_RANGE[0] || feetBoard > FEET_RANGE[1]) return null
  return { ballIndex, aim: aimOf(feetBoard, targetBoard), release: 'spare' }
}

function boardAtPins({ inPlay, bag, profile }: SpareSituation, ballIndex: number, aim: Aim): number {
  rollBall(inPlay.film, inPlay.steps, bag[ballIndex], intendedLaunch(profile, aim, 'spare'), outcome)
  return metresToBoard(outcome.lateralAtPinsMetres)
}

const aimOf = (feetBoard: number, targetBoard: number): Aim => ({ feetBoard, targetBoard, speedStep: 0 })
const toHalf = (board: number): number => Math.round(board * 2) / 2
