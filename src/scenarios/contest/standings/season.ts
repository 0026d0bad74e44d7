import { z } from 'zod'
import { rounded } from '../../files/text/json.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { STANDINGS_FORMAT } from './standings-report.js'

const standingsSchema = z.object({
  format: z.literal(STANDINGS_FORMAT),
  version: z.literal(1),
  title: z.string().max(80),
  contest: z.string().max(24),
  deadline: z.string().max(40),
  places: z
    .array(
      z.object({
        place: z.int().min(1),
        player: z.string().max(60),
        figure: z.number(),
        score: z.number(),
      }),
    )
    .max(2000),
})
type SeasonContest = z.output<typeof standingsSchema>

/** Standings as `contest standings --json` told them. @throws ScenarioError */
export function seasonContest(path: string, text: string): SeasonContest {
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    throw new ScenarioError([`${path}: this is not JSON; a season is made of what contest standings --json told.`])
  }
  const checked = standingsSchema.safeParse(data)
  if (checked.success) return checked.data
  throw new ScenarioError([`${path}: this is not what contest standings --json told of a contest.`])
}

interface SeasonRow {
  readonly place: number
  readonly player: string
  readonly points: number
  readonly contests: number
  readonly score: number
  /** Points by contest, in the order of their deadlines; null where the player was not in it. */
  readonly each: readonly (number | null)[]
}

export interface Season {
  readonly contests: readonly { readonly title: string; readonly deadline: string; readonly entrants: number }[]
  readonly rows: readonly SeasonRow[]
}

/**
 * Adds contests up: a place earns a point for everybody behind it and one for being there, and those who share a place share the
 * points of the places they take up. Ties in points go by pins felled.
 *
 * @throws ScenarioError where one contest is there twice
 */
export function seasonOf(all: readonly SeasonContest[]): Season {
  const ordered = [...all].sort((one, other) => Date.parse(one.deadline) - Date.parse(other.deadline))
  const twice = ordered.find(({ contest }, index) => ordered.findIndex((other) => other.contest === contest) < index)
  if (twice) throw new ScenarioError([`${twice.title}: this contest is there twice; leave one of the two out.`])
  const names = new Map<string, string>()
  const keyOf = (player: string): string => player.trim().toLowerCase()
  for (const { places } of ordered)
    for (const { player } of places) names.set(keyOf(player), names.get(keyOf(player)) ?? player)
  const rows = [...names].map(([key, player]) => {
    const own = ordered.map(({ places }) => places.find((one) => keyOf(one.player) === key) ?? null)
    const each = own.map((one, index) => (one ? pointsOf(ordered[index]!.places, one.place) : null))
    const points = rounded(
      each.reduce<number>((sum, one) => sum + (one ?? 0), 0),
      2,
    )
    const score = own.reduce((sum, one) => sum + (one?.score ?? 0), 0)
    return { player, points, contests: own.filter(Boolean).length, score, each }
  })
  const sorted = rows.sort(
    (one, other) => other.points - one.points || other.score - one.score || (one.player < other.player ? -1 : 1),
  )
  return {
    contests: ordered.map(({ title, deadline, places }) => ({ title, deadline, entrants: places.length })),
    rows: sorted.map((row) => ({
      place: 1 + sorted.findIndex(({ points, score }) => points === row.points && score === row.score),
      ...row,
    })),
  }
}

function pointsOf(places: SeasonContest['places'], place: number): number {
  const sharing = places.filter((one) => one.place === place).length
  const best = places.length - place + 1
  return best - (sharing - 1) / 2
}
