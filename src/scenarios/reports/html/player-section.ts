import { basename } from 'node:path'
import { replayKnown } from '../../store/replay.js'
import { counted } from '../../words/words.js'
import type { Estimate } from '../review/estimate.js'
import { choiceWords } from '../review/figures-words.js'
import type { PlayerReport } from '../review/review-report.js'
import { changeWords, drillSentence, placeWords } from '../review/review-words.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import { escaped } from './escaped.js'
import { estimateBar, intervalWords } from './estimate-html.js'
import { findingsList, notesList } from './findings-html.js'
import { laneFigures } from './lane-figures.js'
import { cell, head, rowHead, tableOf, tile, tiles } from './page.js'
import { scoreSheets } from './score-sheet.js'
import { trendChart } from './trend-chart.js'

/** A player of a review: what choices cost, on which skills, the dearest of them, findings, notes, and every block with its lanes. */
export function playerSection(player: PlayerReport, blocks: readonly ReviewedBlock[], number: number): string {
  const most = Math.max(
    2,
    ...blocks.flatMap(({ report }) => report.ledger.frames.map(({ chargedPins }) => chargedPins)),
  )
  return [
    `<section class="player" id="player-${number}">`,
    `<h2>${escaped(player.player)}</h2>`,
    ...summary(player),
    '<div class="pair"><div>',
    '<h3>What it cost, by skill</h3>',
    skillTable(player),
    '</div><div class="dearest">',
    '<h3>Costliest choices</h3>',
    dearestTable(player),
    '</div></div>',
    '<h3>Findings and what to practise</h3>',
    findingsList(player.findings.map((finding) => ({ ...finding, place: placeWords(finding) }))),
    ...(player.suggestedDrill ? [`<p>${escaped(drillSentence(player.suggestedDrill))}</p>`] : []),
    ...notesList(player.notes, 'h3'),
    '<p class="soft printed">Sheets, lanes and whatever there is more of are on the page itself.</p>',
    ...blocks.flatMap((block) => blockPart(block, most)),
    '</section>',
  ].join('\n')
}

function summary(player: PlayerReport): string[] {
  const { givenAway, progress, blocks, choices, costPins, change } = player
  const figure = (what: string, one: Estimate): string => tile(what, one.mean.toFixed(1), intervalWords(one))
  const count = `${counted(blocks.length, 'block')}, ${counted(choices, 'choice')}, ${costPins.toFixed(1)} pins in all`
  return [
    `<p class="soft">${count}; in pins a game${givenAway.total.low === null ? ': one block says little, intervals come with more' : ', with 95 % intervals'}.</p>`,
    tiles([
      figure('Cost', givenAway.total),
      figure('First balls', givenAway.firstBalls),
      figure('Spares', givenAway.spares),
    ]),
    ...(progress
      ? [
          `<p>The last block cost ${progress.lastPerGame.toFixed(1)} pins a game, ${Math.abs(progress.changePins).toFixed(1)} ${progress.changePins <= 0 ? 'less' : 'more'} than those before it.</p>`,
        ]
      : []),
    ...(change ? [`<p>${escaped(changeWords(change))}</p>`] : []),
    ...trendChart(blocks, change?.day ?? null),
  ]
}

function skillTable({ player, skills, unnamed }: PlayerReport): string {
  const told = skills.filter(({ mean }) => mean > 0)
  const quiet = skills.filter(({ mean }) => mean === 0).map(({ skill }) => skill)
  const rest = { skill: 'not named', ...unnamed }
  const most = Math.max(0.5, ...[...told, rest].map(({ mean, high }) => high ?? mean))
  const rows = [...told, ...(unnamed.mean > 0 ? [rest] : [])].map(({ skill, ...estimate }) => [
    rowHead(skill, 'nowrap'),
    `<td class="bar">${estimateBar(estimate, most)}</td>`,
    cell(estimate.mean.toFixed(1), 'n'),
    cell(intervalWords(estimate), 'n soft'),
  ])
  const heads = [head('skill'), head('as a bar'), head('pins a game', 'n'), head('95 %', 'n')]
  return [
    ...(rows.length === 0 ? [] : [tableOf(`Cost by skill, ${player}`, heads, rows)]),
    ...(quiet.length > 0 ? [`<p class="soft">No finding on ${escaped(quiet.join(', '))}.</p>`] : []),
  ].join('')
}

function dearestTable({ player, dearest, blocks }: PlayerReport): string {
  if (dearest.length === 0) return '<p>Every choice was as good as the best.</p>'
  const several = blocks.length > 1
  const dayOf = (path: string): string => blocks.find(({ record }) => record === path)?.day ?? ''
  const heads = [
    head('frame'),
    ...(several ? [head('day'), head('record', 'wide')] : []),
    head('thrown, slide/target'),
    head('best from what had been seen'),
    head('cost', 'n'),
  ]
  const rows = dearest.map(({ record, game, frame, ball, thrown, best, givenAwayPins }) => [
    rowHead(`${game}-${frame}${ball > 1 ? `, ball ${ball}` : ''}`, 'nowrap'),
    ...(several ? [cell(dayOf(record), 'nowrap')] : []),
    ...(several ? [cell(basename(record, '.json'), 'wide')] : []),
    cell(choiceWords(thrown)),
    cell(choiceWords(best)),
    cell(givenAwayPins.toFixed(1), 'n'),
  ])
  return tableOf(`Costliest choices, ${player}`, heads, rows)
}

function blockPart({ path, record, report }: ReviewedBlock, most: number): string[] {
  const replay = replayKnown(record, path)
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
