import type { Reading } from '../reading/reading.js'
import { moveSize } from './move-size.js'
import { sharedOut } from './shared-out.js'
import { skippedProbe } from './skipped-probe.js'
import { spareChoice } from './spare.js'
import type { Claim, PricedClaim, Tag } from './tag.js'
import type { Family, TagContext } from './tag-context.js'
import { timing } from './timing.js'
import { wrongBall } from './wrong-ball.js'
import { wrongLine } from './wrong-line.js'
import { wrongSpeed } from './wrong-speed.js'

export const MOST_TAGS_PER_GAME = 3
/** What costs no more, all its throws together, is not worth a finding. */
export const LEAST_TAG_PINS = 0.3

/** Families that say why a choice was made, and those that say what was wrong with it. */
const WHYS: readonly Family[] = [timing, moveSize]
const WHATS: readonly Family[] = [wrongBall, wrongLine, wrongSpeed, skippedProbe, spareChoice]

export interface Findings {
  /** The few worth telling: the dearest first, at most three a game. */
  readonly tags: readonly Tag[]
  /** What of the charge is too small or too unsure to be told. */
  readonly untoldPins: number
}

/** Shares the whole charge of a block out to findings: those told and the rest add up to it to rounding. */
export function findingsOf(context: TagContext): Findings {
  const charged = context.readings.filter(({ verdict }) => verdict.givenAwayPins > 0)
  const told: Tag[] = []
  const all = allFindings(context)
  const inGame = (game: number): number => told.filter((tag) => tag.game === game).length
  for (const tag of all) if (tag.pins > LEAST_TAG_PINS && inGame(tag.game) < MOST_TAGS_PER_GAME) told.push(tag)
  const sum = (pins: readonly number[]): number => pins.reduce((total, one) => total + one, 0)
  const chargedPins = sum(charged.map(({ verdict }) => verdict.givenAwayPins))
  return { tags: told, untoldPins: chargedPins - sum(told.map(({ pins }) => pins)) }
}

/** Every finding that stands, dearest first. */
export function allFindings(context: TagContext): Tag[] {
  const whys = WHYS.map((family) => ({ family, claims: family.claims(context) }))
  const whats = WHATS.map((family) => ({ family, claims: family.claims(context) }))
  const about = (reading: Reading) => (claim: Claim) => claim.reading === reading
  const priced = context.readings
    .filter(({ stands, shares }) => stands && shares !== null)
    .flatMap((reading) =>
      sharedOut(
        reading.shares ?? {},
        whys.flatMap(({ claims }) => claims.filter(about(reading))),
        whats.flatMap(({ claims }) => claims.filter(about(reading))),
      ),
    )
  const familyOf = (claim: Claim): Family => {
    const found = [...whys, ...whats].find(({ claims }) => claims.includes(claim))
    if (!found) throw new RangeError('A claim belongs to no family.')
    return found.family
  }
  return grouped(priced)
    .map((group) => tagOf(group, familyOf(group[0].claim)))
    .sort((a, b) => b.pins - a.pins || a.throws[0] - b.throws[0])
}

function grouped(priced: readonly PricedClaim[]): PricedClaim[][] {
  const groups = new Map<string, PricedClaim[]>()
  for (const one of priced) {
    const { reading, group } = one.claim
    const key = `${reading.spot.game} ${group}`
    groups.set(key, [...(groups.get(key) ?? []), one])
  }
  return [...groups.values()]
}

function tagOf(group: readonly PricedClaim[], family: Family): Tag {
  const told = [...group].sort((a, b) => a.claim.reading.index - b.claim.reading.index)
  const pins = told.reduce((sum, one) => sum + one.pins, 0)
  const dearest = told.reduce((most, one) => (one.pins > most.pins ? one : most))
  return {
    kind: dearest.claim.kind,
    throws: told.map(({ claim }) => claim.reading.index),
    game: told[0].claim.reading.spot.game,
    frames: [...new Set(told.map(({ claim }) => claim.reading.spot.frame))],
    pins,
    ...family.tell({ told, dearest, pins }),
  }
}
