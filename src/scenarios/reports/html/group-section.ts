import { groupChangeWords, POOLED_WORDS, toldSkills } from '../review/group-markdown.js'
import type { GroupReport } from '../review/group-report.js'
import type { PlayerReport } from '../review/player-report.js'
import { drillSentence } from '../review/review-words.js'
import { escaped } from './escaped.js'
import { estimateBar, intervalWords } from './estimate-html.js'
import { cell, head, rowHead, tableOf, tile, tiles } from './page.js'

/** The group at a glance: sums over all, then one table a scenario, for only there can players be compared. */
export function groupSection(group: GroupReport, players: readonly PlayerReport[]): string {
  return [
    '<section class="group">',
    '<h2>The group</h2>',
    tiles([
      tile('Players', String(group.players)),
      tile('Blocks', String(group.blocks)),
      tile('Choices', String(group.choices)),
      tile('Cost', group.costPerGame.toFixed(1), 'pins a game'),
    ]),
    ...(group.change
      ? [`<p>Change, over the players with blocks before and after: ${escaped(groupChangeWords(group.change))}.</p>`]
      : []),
    ...(group.suggestedDrill ? [`<p>${escaped(drillSentence(group.suggestedDrill))}</p>`] : []),
    '<h3>By skill, all blocks together</h3>',
    skillTable(group),
    ...group.scenarios.flatMap((scenario) => scenarioTable(scenario, players)),
    '</section>',
  ].join('\n')
}

function skillTable({ skills, unnamed }: GroupReport): string {
  const rows = skills
    .filter(({ pins }) => pins > 0)
    .map(({ skill, pins, mean, players }) => [
      rowHead(skill),
      cell(pins.toFixed(1), 'n'),
      cell(mean.toFixed(1), 'n'),
      cell(String(players), 'n'),
    ])
  return tableOf(
    'Cost by skill, the group',
    [head('skill'), head('pins in all', 'n'), head('pins a game', 'n'), head('players', 'n')],
    [
      ...rows,
      [
        rowHead('not named, in pieces too small or too unsure'),
        cell(unnamed.pins.toFixed(1), 'n'),
        cell(unnamed.mean.toFixed(1), 'n'),
        cell('–', 'n'),
      ],
    ],
  )
}

function scenarioTable(
  { title, scenario, players: here }: GroupReport['scenarios'][number],
  players: readonly PlayerReport[],
): string[] {
  const most = Math.max(1, ...here.map(({ cost }) => cost.high ?? cost.mean))
  const told = toldSkills(here)
  const number = (name: string): number => players.findIndex(({ player }) => player === name) + 1
  const rows = here.map(({ player, blocks, choices, cost, skills, unnamed }) => [
    `<th scope="row" class="who"><a href="#player-${number(player)}">${escaped(player)}</a></th>`,
    cell(String(blocks), 'n'),
    cell(String(choices), 'n wide'),
    `<td class="bar"><strong>${cost.mean.toFixed(1)}</strong> <span class="soft">${intervalWords({ ...cost, blocks })}</span>${estimateBar({ ...cost, blocks }, most)}</td>`,
    ...told.map((skill) => cell((skills.find((one) => one.skill === skill)?.mean ?? 0).toFixed(1), 'n wide')),
    cell(unnamed.mean.toFixed(1), 'n wide'),
  ])
  const heads = [
    head('player'),
    head('blocks', 'n'),
    head('choices', 'n wide'),
    head('cost, pins a game'),
    ...told.map((skill) => head(skill, 'n wide')),
    head('not named', 'n wide'),
  ]
  return [
    `<h3>On ${escaped(title)} <small class="soft">${escaped(scenario)}</small></h3>`,
    tableOf(`Players on ${title}`, heads, rows),
    ...(here.length > 1 ? [`<p class="soft">${escaped(POOLED_WORDS)}</p>`] : []),
  ]
}
