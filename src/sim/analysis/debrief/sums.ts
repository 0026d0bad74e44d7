import { addLedgers, type LedgerTerms } from './ledger/ledger.js'
import type { ThrowAccount } from './throw-account.js'

/** Ledgers of several throws added up, and what of it was charged. */
export interface LedgerSum {
  readonly ledger: LedgerTerms
  /** Given away less what was too close to call, throw by throw; never more than the ledger's own first term. */
  readonly chargedPins: number
}

export interface FrameSum extends LedgerSum {
  readonly game: number
  readonly frame: number
}

export interface GameSum extends LedgerSum {
  readonly game: number
}

/** Sums over everything that counts; practice is left out. */
export interface AccountSums {
  readonly frames: readonly FrameSum[]
  readonly games: readonly GameSum[]
  readonly block: LedgerSum
  readonly firstBalls: LedgerSum
  readonly spares: LedgerSum
}

export function sumsOf(throws: readonly ThrowAccount[]): AccountSums {
  const counted = throws.filter(({ graded }) => graded !== null)
  const games = [...new Set(counted.map(({ spot }) => spot.game))]
  return {
    frames: games.flatMap((game) => {
      const inGame = counted.filter(({ spot }) => spot.game === game)
      return [...new Set(inGame.map(({ spot }) => spot.frame))].map((frame) => ({
        game,
        frame,
        ...sum(inGame.filter(({ spot }) => spot.frame === frame)),
      }))
    }),
    games: games.map((game) => ({ game, ...sum(counted.filter(({ spot }) => spot.game === game)) })),
    block: sum(counted),
    firstBalls: sum(counted.filter(({ kind }) => kind === 'first-ball')),
    spares: sum(counted.filter(({ kind }) => kind === 'spare')),
  }
}

function sum(throws: readonly ThrowAccount[]): LedgerSum {
  return {
    ledger: addLedgers(throws.flatMap(({ graded }) => (graded ? [graded.ledger] : []))),
    chargedPins: throws.reduce((pins, { graded }) => pins + (graded?.grade.givenAwayPins ?? 0), 0),
  }
}
