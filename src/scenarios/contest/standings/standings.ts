import type { Entrant } from '../../files/schema/contest-rules.js'
import { type Evidence, evidenceOf } from '../evidence/evidence.js'
import type { OpenedPack } from '../pack/pack.js'
import { checkAcrossEntries } from './across.js'
import { checkAll } from './check-all.js'
import type { CheckedEntry } from './check-entry.js'
import { type Place, placesOf } from './rank.js'

export interface Standings {
  readonly opened: OpenedPack
  readonly places: readonly Place[]
  /** Believed and without a place. */
  readonly unplaced: readonly CheckedEntry[]
  readonly refused: readonly CheckedEntry[]
  /** For the organiser; none where it was not asked for. */
  readonly evidence: readonly Evidence[] | null
  readonly hasEntrants: boolean
}

interface StandingsWanted {
  readonly entrants: readonly Entrant[] | null
  readonly evidence: boolean
  /** Where accounts of priced entries are kept. */
  readonly accounts: string
  readonly jobs?: number | undefined
  readonly reached: (done: number, of: number) => void
}

/** Checks all entries and places those that count. */
export async function standingsOf(
  paths: readonly string[],
  opened: OpenedPack,
  wanted: StandingsWanted,
): Promise<Standings> {
  const { rules } = opened.pack
  const accounts = rules.ranking === 'cost' || wanted.evidence ? wanted.accounts : null
  const single = await checkAll(paths, opened, {
    luck: true,
    accounts,
    kept: wanted.accounts,
    jobs: wanted.jobs,
    reached: wanted.reached,
  })
  const entries = checkAcrossEntries(single, { tries: rules.tries, entrants: wanted.entrants })
  const places = placesOf(entries, rules, wanted.entrants ?? [])
  return {
    opened,
    places,
    unplaced: entries.filter(({ status }) => status === 'out' || status === 'unfinished'),
    refused: entries.filter(({ status }) => status === 'refused'),
    evidence: wanted.evidence ? evidenceOf(places.map(({ entry }) => entry)) : null,
    hasEntrants: wanted.entrants !== null,
  }
}
