import { calibrationLine } from '../../words/practice-session-words.js'
import { shortBlockWords, unpricedLines } from '../progress/progress-lines.js'
import type { ProgressReport } from '../progress/progress-report.js'
import { range } from '../review/figures-words.js'
import { escaped } from './escaped.js'
import { estimateBar, intervalWords } from './estimate-html.js'
import { cell, head, htmlPage, rowHead, tableOf, tile, tiles } from './page.js'
import { stretchChart } from './stretch-chart.js'

/** Somebody's progress as a page that needs nothing else. */
export function progressHtml(report: ProgressReport, player: string | undefined): string {
  const { blocks, choices, unpriced, cost, first, last, drills } = report
  const title = player === undefined ? 'Progress' : `Progress of ${player}`
  const when = first === null ? '' : first === last ? `, ${first}` : `, ${first} to ${last}`
  return htmlPage(title, [
    `<h1>${escaped(title)}</h1>`,
    `<p class="soft">${blocks} block${blocks === 1 ? '' : 's'}, ${choices} choice${choices === 1 ? '' : 's'}${when}. Costs are pins a game against the best from what had been seen, with 95 % intervals.</p>`,
    ...unpricedLines(unpriced).map((line) => `<p>${escaped(line)}</p>`),
    tiles([
      tile('Cost', cost.mean.toFixed(1), intervalWords(cost)),
      tile('Blocks', String(blocks)),
      ...(drills.positions > 0
        ? [
            tile(
              'Drill positions',
              String(drills.positions),
              `${drills.asGoodAsTheBest} of ${drills.choices} as good as the best`,
            ),
          ]
        : []),
    ]),
    ...stretchChart(report.stretches),
    '<h2>By skill over time</h2>',
    stretchTable(report),
    '<h2>By skill in all</h2>',
    skillTable(report),
    ...calibrationPart(report),
    ...shortBlockPart(report),
    '<h2>Lanes met</h2>',
    laneTable(report),
    ...practicePart(report),
  ])
}

function stretchTable({ stretches, skills, cost }: ProgressReport): string {
  const told = skills.filter(({ mean }) => mean > 0)
  const heads = [head('skill'), ...stretches.map(({ name }) => head(name, 'n')), head('in all', 'n')]
  const row = (name: string, cells: readonly string[]): string[] => [
    rowHead(name),
    ...cells.map((text) => cell(text, 'n')),
  ]
  return tableOf('Cost by skill over time', heads, [
    row('blocks', [...stretches.map((one) => String(one.blocks)), String(cost.blocks)]),
    row('all', [...stretches.map((one) => range(one.cost)), range(cost)]),
    ...told.map(({ skill, ...whole }) =>
      row(skill, [
        ...stretches.map((one) => range(one.skills.find((own) => own.skill === skill) ?? whole)),
        range(whole),
      ]),
    ),
  ])
}

function skillTable({ skills }: ProgressReport): string {
  const told = skills.filter(({ mean }) => mean > 0)
  if (told.length === 0) return '<p>Nothing that cost enough to name.</p>'
  const most = Math.max(0.5, ...told.map(({ mean, high }) => high ?? mean))
  const rows = told.map(({ skill, ...estimate }) => [
    rowHead(skill, 'nowrap'),
    `<td class="bar">${estimateBar(estimate, most)}</td>`,
    cell(estimate.mean.toFixed(1), 'n'),
    cell(intervalWords(estimate), 'n soft'),
  ])
  return tableOf('Cost by skill', [head('skill'), head('as a bar'), head('pins a game', 'n'), head('95 %', 'n')], rows)
}

function calibrationPart({ calibration }: ProgressReport): string[] {
  if (!calibration) return []
  const { count, right, claimed, brier, byConfidence } = calibration
  const rows = byConfidence.map((one) => [
    rowHead(`${Math.round(one.sureShare * 100)} %`),
    cell(String(one.count), 'n'),
    cell(String(one.right), 'n'),
    cell(`${Math.round((100 * one.right) / one.count)} %`, 'n'),
  ])
  return [
    '<h2>Calls</h2>',
    `<p>${right} of ${count} calls came right; you were sure of ${claimed.toFixed(1)}. Brier score ${brier.toFixed(3)}: 0 is perfect, 0.25 a coin toss.</p>`,
    tableOf('Calls by how sure', [head('sure'), head('calls', 'n'), head('came right', 'n'), head('share', 'n')], rows),
  ]
}

function shortBlockPart({ shortBlocks }: ProgressReport): string[] {
  if (shortBlocks.blocks === 0) return []
  return ['<h2>Carried over</h2>', `<p>${escaped(shortBlockWords(shortBlocks))}</p>`]
}

function laneTable({ lanes }: ProgressReport): string {
  const rows = lanes.map(({ title, blocks, bestGame, cost }) => [
    rowHead(title),
    cell(String(blocks), 'n'),
    cell(bestGame === null ? '–' : String(bestGame), 'n'),
    cell(range(cost), 'n'),
  ])
  return tableOf(
    'Lanes met',
    [head('lane'), head('blocks', 'n'), head('best game', 'n'), head('cost a game', 'n')],
    rows,
  )
}

function practicePart({ practice }: ProgressReport): string[] {
  if (!practice || practice.skills.length === 0) return []
  const sure = calibrationLine(practice.calibration)
  const rows = practice.skills.map(({ skill, answers, ...estimate }) => [
    rowHead(skill),
    cell(String(answers), 'n'),
    cell(range(estimate), 'n'),
  ])
  return [
    '<h2>Practice</h2>',
    tableOf('Practice', [head('skill'), head('answers', 'n'), head('pins a game', 'n')], rows),
    ...(sure === '' ? [] : [`<p>${escaped(sure)}</p>`]),
  ]
}
