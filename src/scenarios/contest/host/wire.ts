import { z } from 'zod'
import type {
  BlockState,
  Decision,
  FieldThrowRecord,
  Observation,
  PostedSheet,
  Spot,
  ThrowRecord,
} from '../../../sim/world/block/types.js'
import type { ScenarioData } from '../../files/schema/scenario.js'
import { isPlayerName } from '../../store/player-name.js'

/**
 * What goes between a host and those who play there, version 1: JSON over HTTP. A client never gets a state, a path, an oil or a seed:
 * of each throw it gets what a bowler sees, and only after its choice was kept.
 */
export const WIRE_VERSION = 1

const id = z.string().regex(/^[a-z0-9][a-z0-9-]{0,39}$/)
const half = z.number().multipleOf(0.5).min(0).max(60)

export const joinSchema = z.strictObject({
  version: z.literal(WIRE_VERSION),
  code: z.string().max(40),
  /** The player's own secret, drawn by them: whoever asks to join again with it, for no answer came, gets the same entry. */
  token: z.string().regex(/^[A-Za-z0-9_-]{32}$/),
  player: z.string().refine(isPlayerName),
  hand: z.enum(['right', 'left']).optional(),
  level: z.string().max(20).optional(),
})

export const throwSchema = z.strictObject({
  /** Of the throw in the block, from 0: what was answered is answered again, and nothing is thrown out of turn. */
  number: z.int().min(0).max(2000),
  decision: z.strictObject({
    ballId: id,
    aim: z.strictObject({ feetBoard: half, targetBoard: half, speedStep: z.literal([-1, 0, 1]) }),
    release: z.enum(['strike', 'spare']),
  }),
})
export type AskedThrow = z.output<typeof throwSchema>

/** A throw as its bowler saw it. */
interface SeenThrow {
  readonly spot: Spot
  readonly decision: Decision
  readonly standingBefore: number
  readonly standingAfter: number
  readonly observation: Observation
}

type SeenFieldThrow = Omit<FieldThrowRecord, 'truth' | 'aim'>

/** What follows a throw, as it is seen. */
export interface ThrowAnswer {
  readonly thrown: SeenThrow
  readonly field: readonly SeenFieldThrow[]
  readonly next: { readonly phase: BlockState['phase']; readonly spot: Spot | null; readonly standing: number }
  readonly balls: BlockState['balls']
  readonly events: readonly Exclude<BlockState['events'][number], { readonly type: 'throw' | 'field-throw' }>[]
  /** The link of the chain after it. */
  readonly chain: string
}

/** What a player gets on joining, and again on coming back. */
export interface JoinAnswer {
  readonly version: typeof WIRE_VERSION
  /** The player's own secret: it comes with every further message, and brings them back. */
  readonly token: string
  readonly entry: string
  readonly title: string
  readonly rules: readonly string[]
  readonly lane: string
  /** The scenario without its oil. */
  readonly scenario: Omit<ScenarioData, 'lanes'> & { readonly lanes: readonly string[] }
  readonly posted: readonly (PostedSheet | null)[]
  readonly field: readonly SeenFieldThrow[]
  readonly contest: string
  readonly commitment: string
  readonly chainStart: string
  readonly throws: readonly ThrowAnswer[]
}

export const seenField = ({ truth: _truth, aim: _aim, ...seen }: FieldThrowRecord): SeenFieldThrow => seen

const seenThrow = ({ truth: _truth, ...seen }: ThrowRecord): SeenThrow => seen

/** What is told of the throw that led from one state to the next. */
export function answerOf(before: BlockState, after: BlockState, chain: string): ThrowAnswer {
  const { phase, spot, standing, balls } = after
  return {
    thrown: seenThrow(after.throws.at(-1)!),
    field: after.fieldThrows.slice(before.fieldThrows.length).map(seenField),
    next: { phase, spot, standing },
    balls,
    events: after.events
      .slice(before.events.length)
      .filter((event) => event.type !== 'throw' && event.type !== 'field-throw'),
    chain,
  }
}

export const isSameDecision = (one: Decision, other: Decision): boolean =>
  one.ballId === other.ballId &&
  one.release === other.release &&
  one.aim.feetBoard === other.aim.feetBoard &&
  one.aim.targetBoard === other.aim.targetBoard &&
  one.aim.speedStep === other.aim.speedStep
