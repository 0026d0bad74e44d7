import { rounded } from '../../files/text/json.js'
import { RANKING_HEADS, TIE_WORDS, WHY_THEY_DIFFER } from '../../words/contest-words.js'
import type { Standings } from './standings.js'

export const STANDINGS_FORMAT = 'dryboard-contest-standings'

const basenameOf = (path: string): string => path.split(/[\\/]/).at(-1) ?? path

/** Standings as data: rounded, in a fixed order and without a clock, so that equal entries give equal bytes. */
export function standingsReport({ opened, places, unplaced, refused, evidence, hasEntrants }: Standings) {
  const { pack, digest } = opened
  const pins = (value: number | null): number | null => (value === null ? null : rounded(value, 2))
  return {
    format: STANDINGS_FORMAT,
    version: 1,
    title: pack.rules.title,
    contest: pack.contest,
    pack: digest,
    lane: pack.lane,
    deadline: pack.rules.deadline,
    ranking: pack.rules.ranking,
    rankingWords: RANKING_HEADS[pack.rules.ranking],
    why: `${WHY_THEY_DIFFER[pack.rules.ranking]}${pack.rules.handicap ? ' The handicap is in the figure that places go by.' : ''}`,
    codesChecked: hasEntrants,
    places: places.map(({ entry, place, shared, aheadBy, figure, handicap, withoutLuck, cost }) => ({
      place,
      shared,
      aheadBy: aheadBy === null ? null : TIE_WORDS[aheadBy],
      player: entry.player,
      code: entry.code,
      figure: rounded(figure, 2),
      score: entry.figures.score,
      handicap,
      games: entry.figures.games,
      strikes: entry.figures.strikes,
      withoutLuck: pins(withoutLuck),
      cost: pins(cost),
      frames: entry.figures.frames.map(({ luck, cost: paid, ...frame }) => ({
        ...frame,
        luck: pins(luck),
        cost: pins(paid),
      })),
      marks: entry.marks,
      begun: entry.begun,
      ended: entry.ended,
      record: entry.digest,
      file: basenameOf(entry.file),
    })),
    unplaced: unplaced.map(({ file, player, status, reasons, marks }) => ({
      file: basenameOf(file),
      player,
      status,
      reasons,
      marks,
    })),
    refused: refused.map(({ file, player, reasons }) => ({ file: basenameOf(file), player, reasons })),
    ...(evidence === null
      ? {}
      : {
          evidence: evidence.map(({ player, file, choices, tests }) => ({
            player,
            file: basenameOf(file),
            choices,
            tests: tests.map(({ name, figure, p }) => ({ name, figure: rounded(figure, 3), p: rounded(p, 4) })),
          })),
        }),
  }
}
export type StandingsReport = ReturnType<typeof standingsReport>
export type PlaceRow = StandingsReport['places'][number]

export const placeText = ({ place, shared }: Pick<PlaceRow, 'place' | 'shared'>): string =>
  `${place}${shared ? '=' : ''}`
export const figureText = (report: Pick<StandingsReport, 'ranking'>, { figure }: Pick<PlaceRow, 'figure'>): string =>
  figure.toFixed(report.ranking === 'score' ? 0 : 1)
