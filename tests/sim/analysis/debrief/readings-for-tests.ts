import type { Innovation } from '../../../../src/sim/analysis/debrief/reading/innovation.js'
import type {
  FirstBallReading,
  FirstBallShares,
  SpareReading,
  Staying,
} from '../../../../src/sim/analysis/debrief/reading/reading.js'
import type { Decision, ThrowRecord } from '../../../../src/sim/world/block/types.js'
import { FULL_RACK } from '../../../../src/sim/world/pins/leaves.js'
import { hybrid, weakPearl } from '../../world/ball/bag-for-tests.js'

/** Readings written by hand, so that the right finding is known. */

const TOO_CLOSE = 0.2

export const line = (feetBoard: number, targetBoard: number, ballId: string = hybrid.id): Decision => ({
  ballId,
  aim: { feetBoard, targetBoard, speedStep: 0 },
  release: 'strike',
})

export const pearlLine = (feetBoard: number, targetBoard: number): Decision =>
  line(feetBoard, targetBoard, weakPearl.id)

export function staying(decision: Decision, parts: Partial<Omit<Staying, 'decision'>> = {}): Staying {
  return { index: 0, decision, record: recordOf(decision), chargedPins: 0, innovation: null, ...parts }
}

/** A throw shown to cross the arrows where asked. */
export function recordOf(decision: Decision, arrowsBoard = decision.aim.targetBoard): ThrowRecord {
  return {
    spot: { phase: 'game', lane: 0, game: 1, frame: 1, ball: 1 },
    decision,
    standingBefore: FULL_RACK,
    standingAfter: 0,
    observation: { arrowsBoard, breakpointBoard: 8, breakpointFeet: 42, contact: 'high', speedMph: 16.5, standing: 0 },
    truth: {
      path: new Float64Array(0),
      entryBoard: 17.5,
      entryAngleRadians: 0.08,
      entrySpeedMetresPerSecond: 7.4,
      breakpointBoard: 8,
      breakpointFeet: 42,
      hookStartFeet: 33,
      rollStartFeet: 51,
      leftLaneFeet: Number.POSITIVE_INFINITY,
      touched: 0,
      laneBefore: { film: { microns: new Float64Array(0) }, laidMicrolitres: 0, wipedMicrolitres: 0 },
      normals: [0, 0, 0, 0, 0],
    },
  }
}

/** A surprise of so many boards at the pins, of which the throw had this share. */
export const surprise = (shownBoards: number, deliveryShare: number): Innovation => ({
  predictedBoard: 17.5,
  shownBoard: 17.5 + shownBoards,
  deliveryBoards: deliveryShare * shownBoards,
  laneBoards: (1 - deliveryShare) * shownBoards,
  deliveryShare,
})

/** What a first ball was charged, part by part, and what would have cost nothing. */
export interface Costly extends Partial<FirstBallShares> {
  readonly best?: Decision
  readonly staying?: Staying
  readonly stands?: boolean
}

/** A first ball in a frame; it costs what its parts add up to, and without any nothing. */
export function firstBall(frame: number, decision: Decision, costly: Costly = {}): FirstBallReading {
  const { best = decision, staying: before = null, stands = true, ...parts } = costly
  const shares = { ball: 0, slide: 0, target: 0, speed: 0, lesson: 0, ...parts }
  const pins = Object.values(shares).reduce((sum, one) => sum + one, 0)
  return {
    kind: 'first-ball',
    index: frame - 1,
    spot: { phase: 'game', lane: 0, game: 1, frame, ball: 1 },
    decision,
    verdict: { best, lostPins: pins, tooCloseToCallPins: TOO_CLOSE, givenAwayPins: pins, teachingPins: null },
    staying: before,
    shares: pins > 0 ? shares : null,
    stands: pins > 0 && stands,
  }
}

export function spare(
  frame: number,
  shares: { ball: number; line: number },
  parts: Partial<SpareReading> = {},
): SpareReading {
  const pins = shares.ball + shares.line
  return {
    kind: 'spare',
    index: 100 + frame,
    spot: { phase: 'game', lane: 0, game: 1, frame, ball: 2 },
    decision: line(24, 12),
    standing: 1 << 9,
    verdict: {
      best: { ...line(33, 20, 'polished-plastic'), release: 'spare' },
      lostPins: pins,
      tooCloseToCallPins: TOO_CLOSE,
      givenAwayPins: pins,
      teachingPins: null,
    },
    shares,
    stands: true,
    ...parts,
  }
}
