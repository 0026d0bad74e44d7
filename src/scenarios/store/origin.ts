import { z } from 'zod'
import { oneOf, table, wholeFrom } from '../files/schema/fields.js'
import { LOCAL_TIME } from '../files/text/local-time.js'

/** How a block came to be, a short block being the one that practice ends with; unknown where it comes from a file that did not say. */
const WAYS = ['played', 'drill', 'short-block', 'contest', 'auto', 'unknown'] as const
export type CameToBe = (typeof WAYS)[number]

/**
 * Who made a decision: the player; a drill or a copied block, that gave it to the player as it was; a policy. Unknown where it comes
 * from a file that did not say.
 */
export const MAKERS = ['player', 'given', 'policy', 'unknown'] as const
export type MadeBy = (typeof MAKERS)[number]

const BLOCK_ID = /^[0-9a-f]{24}$/

/** A block's own number: 24 hexadecimal digits drawn once, at its beginning, outside the simulator; null where it has none. */
export const blockId = () =>
  z
    .string({ error: () => ID_WORDS })
    .regex(BLOCK_ID, ID_WORDS)
    .nullable()
const ID_WORDS = '24 hexadecimal digits, or null'

const TIME_WORDS = 'a local time with the offset of its zone, such as "2026-03-08T19:04:11+01:00", or null'
const time = () =>
  z
    .string({ error: () => TIME_WORDS })
    .regex(LOCAL_TIME, TIME_WORDS)
    .nullable()

const beginningFields = {
  cameToBe: oneOf(...WAYS),
  begun: time(),
  /** Blocks of the same scenario and seed that were begun in this data folder before. */
  openedBefore: wholeFrom(0, 1_000_000_000).nullable(),
  /** The block this one was gone on from by somebody else; its decisions are `given` here. */
  copyOf: blockId(),
}

/** Where a block comes from, as told when it begins. */
export const beginningSchema = table(beginningFields, "a block's beginning")
export type Beginning = z.output<typeof beginningSchema>

export const originSchema = table({ ...beginningFields, ended: time() }, "a block's origin")
export type Origin = z.output<typeof originSchema>

export const UNKNOWN_ORIGIN: Origin = {
  cameToBe: 'unknown',
  begun: null,
  openedBefore: null,
  copyOf: null,
  ended: null,
}

/**
 * Whether what a decision cost is the player's own. What nobody told is taken for theirs, as it always was; in a block that a
 * policy played, the policy is the player.
 */
export const isPlayersOwn = (by: MadeBy, cameToBe: CameToBe): boolean =>
  by === 'player' || by === 'unknown' || (by === 'policy' && cameToBe === 'auto')
