import { calibrationLine } from '../../words/practice-session-words.js'
import { counted } from '../../words/words.js'
import { range } from '../review/figures-words.js'
import type { ProgressReport } from './progress-report.js'

/** Somebody's progress as Markdown, which is also what is printed. */
export function progressLines(report: ProgressReport): string[] {
  const { blocks, choices, unpriced, cost, first, last } = report
  if (blocks === 0)
    return ['No block here has a choice with a price yet.', ...unpricedLines(unpriced), ...practiceLines(report)]
  const when = first === null ? '' : first === last ? `, ${first}` : `, ${first} to ${last}`
  return [
    '# Progress',
    '',
    `${counted(blocks, 'block')}, ${counted(choices, 'choice')}${when}. Cost, pins a game: ${range(cost)}.`,
    ...unpricedLines(unpriced),
    '',
    '## By skill over time, pins a game',
    '',
    ...stretchTable(report),
    '',
    ...calibrationLines(report),
    ...drillLines(report),
    ...shortBlockLines(report),
    '## Lanes met',
    '',
    '| lane | blocks | best game | cost a game |',
    '| --- | --- | --- | --- |',
    ...report.lanes.map(
      (lane) =>
        `| ${lane.title.replaceAll('|', '/')} | ${lane.blocks} | ${lane.bestGame ?? '–'} | ${range(lane.cost)} |`,
    ),
    ...practiceLines(report),
  ]
}

export function unpricedLines(unpriced: number): string[] {
  if (unpriced === 0) return []
  return [`${counted(unpriced, 'block')} not priced yet and so not in it; dryboard progress prices them.`]
}

/** A row a skill that ever cost anything, a column a stretch of time, and the whole last. */
function stretchTable({ stretches, skills, cost }: ProgressReport): string[] {
  const told = skills.filter(({ mean }) => mean > 0)
  const row = (name: string, cells: readonly string[]): string => `| ${[name, ...cells].join(' | ')} |`
  return [
    row('skill', [...stretches.map(({ name }) => name), 'in all']),
    row(
      '---',
      [...stretches, 0].map(() => '---'),
    ),
    row('blocks', [...stretches.map((one) => String(one.blocks)), String(cost.blocks)]),
    row('all', [...stretches.map((one) => range(one.cost)), range(cost)]),
    ...told.map(({ skill, ...whole }) =>
      row(skill, [
        ...stretches.map((one) => range(one.skills.find((own) => own.skill === skill) ?? whole)),
        range(whole),
      ]),
    ),
  ]
}

function calibrationLines({ calibration }: ProgressReport): string[] {
  if (!calibration) return []
  const { count: calls, right, claimed, brier, byConfidence } = calibration
  return [
    '## Calls',
    '',
    `${right} of ${counted(calls, 'call')} came right; you were sure of ${claimed.toFixed(1)}. Brier score ${brier.toFixed(3)}: 0 is perfect, 0.25 a coin toss.`,
    '',
    '| sure | calls | came right |',
    '| --- | --- | --- |',
    ...byConfidence.map(
      (one) =>
        `| ${Math.round(one.sureShare * 100)} % | ${one.count} | ${one.right} (${Math.round((100 * one.right) / one.count)} %) |`,
    ),
    '',
  ]
}

function drillLines({ drills }: ProgressReport): string[] {
  if (drills.positions === 0) return []
  const { positions, choices, asGoodAsTheBest, costPins } = drills
  return [
    '## Drills',
    '',
    `${counted(positions, 'position')}, ${counted(choices, 'choice')}: ${asGoodAsTheBest} as good as the best, cost ${costPins.toFixed(1)} pins in all.`,
    '',
  ]
}

function shortBlockLines({ shortBlocks }: ProgressReport): string[] {
  if (shortBlocks.blocks === 0) return []
  return ['## Carried over', '', shortBlockWords(shortBlocks), '']
}

/** What the short blocks after practice cost, all together and the latest one by one. */
export function shortBlockWords({ blocks, choices, cost, each }: ProgressReport['shortBlocks']): string {
  const latest = each.slice(-MOST_SHORT_BLOCKS).map(({ day, perGame }) => `${day ?? 'unknown'} ${perGame.toFixed(1)}`)
  return `${counted(blocks, 'short block')} after practice, ${counted(choices, 'choice')} without grades, pins a game: ${range(cost)}. One by one: ${latest.join(', ')}.`
}

/** The latest so many are told one by one. */
const MOST_SHORT_BLOCKS = 8

function practiceLines({ practice }: ProgressReport): string[] {
  if (!practice || practice.skills.length === 0) return []
  const sure = calibrationLine(practice.calibration)
  return [
    '',
    '## Practice',
    '',
    ...practice.skills.map(
      ({ skill, answers, ...estimate }) => `- ${skill}: ${range(estimate)}, ${counted(answers, 'answer')}`,
    ),
    ...(sure === '' ? [] : ['', sure]),
  ]
}
