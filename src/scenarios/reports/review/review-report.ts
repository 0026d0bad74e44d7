import { groupReport } from './group-report.js'
import type { LeftOut, Period } from './period.js'
import { playerReport } from './player-report.js'
import type { ReviewedBlock } from './reviewed-block.js'
import type { Superseded } from './standing-blocks.js'

export type { PlayerReport } from './player-report.js'

/** A file among those asked for that could not be read, replayed or believed, and why. */
export interface FaultyFile {
  readonly file: string
  readonly reasons: readonly string[]
}

/** What a review tells of beside the blocks. */
export interface ReviewAbout {
  readonly period?: Period
  readonly superseded?: readonly Superseded[]
  readonly leftOut?: readonly LeftOut[]
  readonly faults?: readonly FaultyFile[]
}

/** A player's or a group's blocks looked at together: what choices cost against the best from what had been seen, per game. */
export type ReviewReport = ReturnType<typeof reviewReport>

/** @param blocks each counted once, in order of play, one spelling to a player */
export function reviewReport(blocks: readonly ReviewedBlock[], about: ReviewAbout = {}) {
  const { period = {}, superseded = [], leftOut = [], faults = [] } = about
  const names = [...new Set(blocks.map(({ player }) => player))]
  const players = names.map((name) =>
    playerReport(
      name,
      blocks.filter(({ player }) => player === name),
      period,
    ),
  )
  return { period, group: groupReport(players, blocks), players, superseded, leftOut, faults }
}
