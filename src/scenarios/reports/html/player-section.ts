import { basename } from 'node:path'
import { replayRecord } from '../../store/replay.js'
import type { Estimate } from '../review/estimate.js'
import { choiceWords } from '../review/markdown.js'
import type { PlayerReport } from '../review/review-report.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import { escaped } from './escaped.js'
import { estimateBar, intervalWords } from './estimate-html.js'
import { findingsList, notesList } from './findings-html.js'
import { laneFigures } from './lane-figures.js'
import { cell, head, tableOf, tile, tiles } from './page.js'
import { scoreSheets } from './score-sheet.js'

/** A player of a review: what the choices cost, on which skills, the dearest choices, findings, notes, and every block with its lanes. */
export function playerSection(player: PlayerReport, blocks: readonly ReviewedBlock[], number: number): string {
  const most = Math.max(
    2,
    ...blocks.flatMap(({ report }) => report.ledger.frames.map(({ chargedPins }) => chargedPins)),
  )
  return [
    `<section class="player" id="player-${number}">`,
    `<h2>${escaped(player.player)}</h2>`,
    ...summary(player),
    '<h3>Cost by skill</h3>',
    skillTable(player),
    '<h3>Costliest choices</h3>',
    dearestTable(player),
    '<h3>Findings and what to practise</h3>',
    findingsList(player.findings),
    ...notesList(player.notes),
    ...blocks.flatMap((block) => blockPart(block, most)),
    '</section>',
  ].join('\n')
}

function summary({ givenAway, progress, blocks }: PlayerReport): string[] {
  const figure = (what: string, one: Estimate): string => tile(what, one.mean.toFixed(1), intervalWords(one))
  const count = `${blocks.length} block${blocks.length === 1 ? '' : 's'}`
  return [
    `<p class="soft">Cost of the choices, in pins a game; ${count}${givenAway.total.low === null ? ': one says little, intervals come with more' : ', 95 % intervals'}.</p>`,
    tiles([
      figure('In all', givenAway.total),
      figure('First balls', givenAway.firstBalls),
      figure('Spares', givenAway.spares),
    ]),
    ...(progress
      ? [
          `<p>The choices of the last block cost ${progress.lastPerGame.toFixed(1)} pins a game, ${Math.abs(progress.changePins).toFixed(1)} ${progress.changePins <= 0 ? 'less' : 'more'} than those before it.</p>`,
        ]
      : []),
  ]
}

function skillTable({ skills }: PlayerReport): string {
  const told = skills.filter(({ mean }) => mean > 0)
  const quiet = skills.filter(({ mean }) => mean === 0).map(({ skill }) => skill)
  const most = Math.max(0.5, ...told.map(({ mean, high }) => high ?? mean))
  const rows = told.map(({ skill, ...estimate }) => [
    cell(skill, 'nowrap'),
    `<td style="width:60%">${estimateBar(estimate, most)}</td>`,
    cell(estimate.mean.toFixed(1), 'n'),
    cell(intervalWords(estimate), 'n soft'),
  ])
  const table =
    rows.length === 0 ? [] : [tableOf([head('skill'), head(''), head('pins a game', 'n'), head('95 %', 'n')], rows)]
  return [
    ...table,
    ...(quiet.length > 0 ? [`<p class="soft">No finding on ${escaped(quiet.join(', '))}.</p>`] : []),
  ].join('')
}

function dearestTable({ dearest, blocks }: PlayerReport): string {
  if (dearest.length === 0) return '<p>Every choice was as good as the best.</p>'
  const several = blocks.length > 1
  const heads = [
    head('frame'),
    ...(several ? [head('record', 'wide')] : []),
    head('thrown, slide/target'),
    head('best from what you had seen'),
    head('pins', 'n'),
  ]
  const rows = dearest.map(({ record, game, frame, ball, thrown, best, givenAwayPins }) => [
    cell(`${game}-${frame}${ball > 1 ? `, ball ${ball}` : ''}`, 'nowrap'),
    ...(several ? [cell(basename(record, '.json'), 'wide')] : []),
    cell(choiceWords(thrown)),
    cell(choiceWords(best)),
    cell(givenAwayPins.toFixed(1), 'n'),
  ])
  return tableOf(heads, rows)
}

function blockPart({ path, record, report }: ReviewedBlock, most: number): string[] {
  const replay = replayRecord(record, path)
  const ended = replay.states[replay.states.length - 1]
  return [
    '<div class="block">',
    `<h3>${escaped(record.scenario.title)}${report.finished ? '' : ', unfinished'}</h3>`,
    `<p class="soft">${escaped(basename(path))}, seed ${escaped(record.seed)}; bowled for ${escaped(replay.scenario.setup.bowler.name)}</p>`,
    ...scoreSheets(ended, report, most),
    laneFigures(replay),
    '</div>',
  ]
}
