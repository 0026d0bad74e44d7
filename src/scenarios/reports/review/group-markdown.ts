import { cell, range } from './figures-words.js'
import type { GroupReport } from './group-report.js'
import { differenceWords, drillSentence } from './review-words.js'

/** What is told under each scenario's table. */
export const POOLED_WORDS =
  'Cost is drawn towards the players together by how few blocks there are, with 95 % intervals; where they overlap, the order says nothing.'

/** The group as Markdown: sums over all, then one table a scenario, for only there can players be compared. */
export function groupLines(group: GroupReport): string[] {
  return [
    '# The group',
    '',
    `${group.players} players, ${group.blocks} blocks, ${group.choices} choices: cost ${group.costPins.toFixed(1)} pins in all, ${group.costPerGame.toFixed(1)} a game.`,
    ...(group.change
      ? [`Change, over the players with blocks before and after: ${groupChangeWords(group.change)}.`]
      : []),
    '',
    '## By skill, all blocks together',
    '',
    '| skill | pins in all | pins a game | players |',
    '| --- | --- | --- | --- |',
    ...group.skills
      .filter(({ pins }) => pins > 0)
      .map(({ skill, pins, mean, players }) => `| ${skill} | ${pins.toFixed(1)} | ${mean.toFixed(1)} | ${players} |`),
    `| not named, in pieces too small or too unsure | ${group.unnamed.pins.toFixed(1)} | ${group.unnamed.mean.toFixed(1)} | |`,
    ...(group.suggestedDrill ? ['', drillSentence(group.suggestedDrill)] : []),
    '',
    ...group.scenarios.flatMap(scenarioLines),
  ]
}

export function groupChangeWords({ players, pins, low, high }: NonNullable<GroupReport['change']>): string {
  if (pins === null) return 'there is none'
  return `${differenceWords({ pins, low, high })}, ${players} players`
}

function scenarioLines({ title, scenario, players }: GroupReport['scenarios'][number]): string[] {
  const told = toldSkills(players)
  return [
    `## On ${title} (${scenario})`,
    '',
    `| player | blocks | choices | scores | own mean | cost a game | ${[...told, 'not named'].join(' | ')} |`,
    `| ${Array.from({ length: 7 + told.length }, () => '---').join(' | ')} |`,
    ...players.map(({ player, blocks, choices, games, own, cost, skills, unnamed }) => {
      const bySkill = told.map((skill) => (skills.find((one) => one.skill === skill)?.mean ?? 0).toFixed(1))
      return `| ${cell(player)} | ${blocks} | ${choices} | ${games.join(' ')} | ${own.toFixed(1)} | ${range(cost)} | ${[...bySkill, unnamed.mean.toFixed(1)].join(' | ')} |`
    }),
    '',
    ...(players.length > 1 ? [POOLED_WORDS, ''] : []),
  ]
}

/** The skills that anybody lost pins on here. */
export function toldSkills(players: GroupReport['scenarios'][number]['players']): string[] {
  const skills = players[0]?.skills.map(({ skill }) => skill) ?? []
  return skills.filter((skill) => players.some((one) => one.skills.some((own) => own.skill === skill && own.mean > 0)))
}
