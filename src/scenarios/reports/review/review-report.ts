import { SKILL_OF, SKILLS } from '../../../sim/analysis/debrief/findings/skills.js'
import { rounded } from '../../files/text/json.js'
import { type Estimate, estimateOf } from './estimate.js'
import type { ReviewedBlock } from './reviewed-block.js'
import type { Superseded } from './standing-blocks.js'

const DEAREST = 6

/** A player's or a group's blocks looked at together: pins given away by what could be known, per game. */
export type ReviewReport = ReturnType<typeof reviewReport>
export type PlayerReport = ReviewReport['players'][number]

export function reviewReport(blocks: readonly ReviewedBlock[], superseded: readonly Superseded[] = []) {
  const names = [...new Set(blocks.map(({ player }) => player))]
  return {
    players: names.map((name) =>
      playerReport(
        name,
        blocks.filter(({ player }) => player === name),
      ),
    ),
    superseded,
  }
}

function playerReport(player: string, blocks: readonly ReviewedBlock[]) {
  const perGame = blocks.map(({ report }) => report.givenAway.total / gamesOf(report))
  return {
    player,
    blocks: blocks.map(({ path, record, report }) => ({
      record: path,
      block: record.block,
      program: record.program,
      origin: record.origin,
      ownChoices: report.throws.filter(({ fair, counted }) => fair && counted).length,
      choices: report.throws.filter(({ fair }) => fair).length,
      title: report.title,
      games: report.games,
      finished: report.finished,
      givenAwayPerGame: rounded(report.givenAway.total / gamesOf(report), 2),
    })),
    givenAway: {
      firstBalls: told(blocks.map(({ report }) => report.givenAway.firstBalls / gamesOf(report))),
      spares: told(blocks.map(({ report }) => report.givenAway.spares / gamesOf(report))),
      total: told(perGame),
    },
    skills: SKILLS.map((skill) => ({
      skill,
      ...told(blocks.map(({ report }) => pinsOnSkill(report, skill) / gamesOf(report))),
    })).sort((a, b) => b.mean - a.mean),
    dearest: blocks
      .flatMap(dearThrows)
      .sort((a, b) => b.givenAwayPins - a.givenAwayPins)
      .slice(0, DEAREST),
    progress: progressOf(perGame),
    findings: blocks.flatMap(({ path, report }) =>
      report.tags.map(({ kind, game, frames, pins, words, practise }) => ({
        record: path,
        kind,
        game,
        frames,
        pins,
        words,
        practise,
      })),
    ),
    notes: blocks.flatMap(({ path, notes }) => notes.map((note) => ({ record: path, ...note }))),
    cautions: blocks[0]?.report.cautions ?? [],
  }
}

/** A block left in its first game counts as the part of a game it is. */
function gamesOf({ ledger }: ReviewedBlock['report']): number {
  return Math.max(1, ledger.frames.length) / 10
}

function pinsOnSkill({ tags }: ReviewedBlock['report'], skill: (typeof SKILLS)[number]): number {
  return tags.reduce((sum, { kind, pins }) => sum + (SKILL_OF[kind] === skill ? pins : 0), 0)
}

function dearThrows({ path, report }: ReviewedBlock) {
  return report.throws.flatMap(({ fair, counted, game, frame, ball, kind, decision }) =>
    fair && counted && fair.givenAwayPins > 0
      ? [
          {
            record: path,
            game,
            frame,
            ball,
            kind,
            givenAwayPins: rounded(fair.givenAwayPins, 2),
            thrown: decision,
            best: fair.best,
          },
        ]
      : [],
  )
}

/** The last block against those before it; null for a first one. */
function progressOf(perGame: readonly number[]) {
  if (perGame.length < 2) return null
  const before = estimateOf(perGame.slice(0, -1))
  const last = perGame[perGame.length - 1]
  return { lastPerGame: rounded(last, 2), before: roundedEstimate(before), changePins: rounded(last - before.mean, 2) }
}

const told = (values: readonly number[]) => roundedEstimate(estimateOf(values))

/** Nobody gives away less than nothing, whatever a few blocks' interval says. */
function roundedEstimate({ mean, low, high, blocks }: Estimate): Estimate {
  return {
    mean: rounded(mean, 2),
    low: low === null ? null : rounded(Math.max(0, low), 2),
    high: high === null ? null : rounded(high, 2),
    blocks,
  }
}
