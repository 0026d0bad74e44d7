import type { Account } from '../../../sim/analysis/debrief/account.js'
import { throwLuck } from '../../../sim/analysis/debrief/ledger/throw-luck.js'
import type { BlockState, Decision } from '../../../sim/world/block/types.js'
import { FULL_RACK } from '../../../sim/world/pins/leaves.js'
import { tally } from '../../../sim/world/scoring/game.js'
import type { ChoiceTrace } from '../evidence/evidence.js'

/** One frame of an entry; pins. */
export interface FrameFigures {
  readonly game: number
  readonly frame: number
  readonly score: number
  /** What delivery and carry lost against their means; null where it was not asked for. */
  readonly luck: number | null
  /** What its choices cost; null where it was not asked for. */
  readonly cost: number | null
}

export interface EntryFigures {
  readonly games: readonly number[]
  readonly score: number
  readonly strikes: number
  readonly frames: readonly FrameFigures[]
  readonly choices: readonly ChoiceTrace[] | null
}

interface FiguresWanted {
  readonly luck: boolean
  /** The account of the block, where choices are to be priced. */
  readonly account: Account | null
}

/** All that standings need of an entry that was played again. @param states before each throw, and last as it ended */
export function entryFigures(states: readonly BlockState[], { luck, account }: FiguresWanted): EntryFigures {
  const ended = states.at(-1)!
  const lost = new Map<string, { luck: number; cost: number }>()
  const keyOf = (game: number, frame: number): string => `${game}-${frame}`
  ended.throws.forEach((record, index) => {
    const { phase, game, frame } = record.spot
    if (phase !== 'game') return
    const key = keyOf(game, frame)
    const sum = lost.get(key) ?? { luck: 0, cost: 0 }
    const ledger = account?.throws[index]?.graded?.ledger
    const own = !luck ? null : (ledger ?? throwLuck(states[index]!, record))
    lost.set(key, {
      luck: sum.luck + (own ? own.deliveryPins + own.carryPins : 0),
      cost: sum.cost + (ledger?.givenAwayPins ?? 0),
    })
  })
  const lines = ended.balls.map((balls) => tally(ended.setup.scoring, balls))
  return {
    games: lines.map(({ total }) => total),
    score: lines.reduce((sum, { total }) => sum + total, 0),
    strikes: ended.throws.filter(
      ({ spot, standingBefore, standingAfter }) =>
        spot.phase === 'game' && standingBefore === FULL_RACK && standingAfter === 0,
    ).length,
    frames: lines.flatMap(({ frames }, at) =>
      frames.flatMap(({ frameScore }, place) => {
        const of = lost.get(keyOf(at + 1, place + 1))
        if (!of) return []
        const figures = { luck: luck ? of.luck : null, cost: account ? of.cost : null }
        return [{ game: at + 1, frame: place + 1, score: frameScore ?? 0, ...figures }]
      }),
    ),
    choices: account ? tracesOf(ended, account) : null,
  }
}

function tracesOf({ throws }: BlockState, account: Account): ChoiceTrace[] {
  return account.throws.flatMap(({ graded, spot, kind, decision }, index) => {
    if (!graded || kind !== 'first-ball') return []
    const { best } = graded.grade
    const { observation } = throws[index]!
    return [
      {
        game: spot.game,
        frame: spot.frame,
        swing: graded.ledger.patternSwingPins,
        offBest: decision.aim.targetBoard - best.aim.targetBoard,
        miss: observation.arrowsBoard - decision.aim.targetBoard,
        isBest: isSame(decision, best),
      },
    ]
  })
}

const isSame = (a: Decision, b: Decision): boolean =>
  a.ballId === b.ballId &&
  a.release === b.release &&
  a.aim.feetBoard === b.aim.feetBoard &&
  a.aim.targetBoard === b.aim.targetBoard &&
  a.aim.speedStep === b.aim.speedStep
