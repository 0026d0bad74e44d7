import type { z } from 'zod'
import { type BallData, bag } from '../files/schema/ball.js'
import { bowler } from '../files/schema/bowler.js'
import { problemSentences } from '../files/text/problems.js'
import { locateNowhere } from '../files/text/source-text.js'

export type BowlerData = z.output<typeof bowler>

/** The player's own balls and bowler, in the trade's units as scenario files have them. */
export interface OwnKit {
  readonly bag: readonly BallData[]
  readonly bowler: BowlerData | null
}

export const EMPTY_KIT: OwnKit = { bag: [], bowler: null }
/** As many as a scenario's bag may hold. */
export const MOST_BALLS = 8

const FORMAT = 'dryboard-kit'

export function kitText(kit: OwnKit): string {
  return `${JSON.stringify({ format: FORMAT, version: 1, ...kit }, null, 1)}\n`
}

export type KitRead = { readonly kit: OwnKit } | { readonly problem: string }

/** The kit as kept, checked like a scenario's; else one sentence about the first thing wrong with it. */
export function readKit(path: string, text: string): KitRead {
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    return { problem: `${path}: this is not JSON.` }
  }
  const { format, version, bag: balls, bowler: own } = (data ?? {}) as Record<string, unknown>
  if (format !== FORMAT || version !== 1) {
    return { problem: `${path}: format and version are not "${FORMAT}" and 1, the only ones this program knows.` }
  }
  const isBagEmpty = Array.isArray(balls) && balls.length === 0
  const checkedBag = isBagEmpty ? null : bag.safeParse(balls)
  if (checkedBag?.success === false) return problemIn(path, 'bag', balls, checkedBag.error.issues)
  const checkedBowler = own === null ? null : bowler.safeParse(own)
  if (checkedBowler?.success === false) return problemIn(path, 'bowler', own, checkedBowler.error.issues)
  return { kit: { bag: checkedBag?.data ?? [], bowler: checkedBowler?.data ?? null } }
}

function problemIn(path: string, part: string, data: unknown, issues: readonly z.core.$ZodIssue[]): KitRead {
  return {
    problem: problemSentences(locateNowhere(`${path} ${part}`, data), issues)[0] ?? `${path}: ${part} is wrong.`,
  }
}

/** What keeps a ball out of the bag, one sentence a fault: the rules of the sport, and what a file can hold. */
export function ballFaults(ball: BallData, others: readonly BallData[]): string[] {
  return faultsOf(bag.safeParse([...others, ball]), 2)
}

/** What is wrong with a bowler's figures, one sentence a fault. */
export function bowlerFaults(data: BowlerData): string[] {
  return faultsOf(bowler.safeParse(data), 0)
}

function faultsOf(checked: z.ZodSafeParseResult<unknown>, pathParts: number): string[] {
  if (checked.success) return []
  return checked.error.issues.map((issue) => {
    if (issue.code === 'custom' && issue.params?.wholeSentence === true) return issue.message
    const field = issue.path.slice(pathParts > 0 ? 1 : 0).join(' ')
    return `${field === '' ? 'This' : field}: allowed is ${issue.message}.`
  })
}

/** A short name for a ball out of its name, that no other ball of the bag has. */
export function freeBallId(name: string, others: readonly BallData[]): string {
  const stem =
    name
      .toLowerCase()
      .replaceAll(/[^a-z0-9]+/g, '-')
      .replaceAll(/^-+|-+$/g, '')
      .slice(0, 36) || 'ball'
  const isFree = (id: string) => others.every((ball) => ball.id !== id)
  if (isFree(stem)) return stem
  let number = 2
  while (!isFree(`${stem}-${number}`)) number++
  return `${stem}-${number}`
}
