import { basename } from 'node:path'
import { CAME_TO_BE_WORDS } from '../debrief/origin-words.js'
import type { Estimate } from './estimate.js'
import type { PlayerReport, ReviewReport } from './review-report.js'

/** The review as Markdown, which is also what is printed. */
export function reviewMarkdown({ players, superseded }: ReviewReport): string[] {
  return [...players.flatMap(playerLines), ...supersededLines(superseded)]
}

function playerLines(player: PlayerReport): string[] {
  const { givenAway, progress } = player
  return [
    `# ${player.player}`,
    '',
    `Cost of the choices, pins a game: ${range(givenAway.total)}; first balls ${range(givenAway.firstBalls)}, spares ${range(givenAway.spares)}.`,
    ...(givenAway.total.low === null ? ['One block says little; intervals come with more of them.'] : []),
    ...(progress
      ? [
          `Last block ${progress.lastPerGame.toFixed(1)} pins a game, ${progress.changePins <= 0 ? 'less' : 'more'} than before by ${Math.abs(progress.changePins).toFixed(1)} (before: ${range(progress.before)}).`,
        ]
      : []),
    '',
    '| block | games | cost a game |',
    '| --- | --- | --- |',
    ...player.blocks.map(
      (block) =>
        `| ${cell(block.title)} (${cell(basename(block.record))})${block.finished ? '' : ', unfinished'}${originWords(block)} | ${block.games.join(' ')} | ${block.givenAwayPerGame.toFixed(1)} |`,
    ),
    '',
    '## By skill, pins a game in findings',
    '',
    ...player.skills.filter(({ mean }) => mean > 0).map(({ skill, ...estimate }) => `- ${skill}: ${range(estimate)}`),
    ...quietSkills(player),
    '',
    '## Costliest choices',
    '',
    ...(player.dearest.length === 0 ? ['Every choice was as good as the best.'] : []),
    ...player.dearest.map(
      ({ game, frame, ball, givenAwayPins, thrown, best }) =>
        `- ${game}-${frame}.${ball}: ${givenAwayPins.toFixed(1)} pins; thrown ${choiceWords(thrown)}, best ${choiceWords(best)}`,
    ),
    '',
    '## Findings and what to practise',
    '',
    ...(player.findings.length === 0 ? ['Nothing that cost enough to name.'] : []),
    ...player.findings.map(({ words, practise }) => `- ${words} ${practise}`),
    ...(player.notes.length > 0
      ? ['', '## Notes', '', ...player.notes.map(({ game, frame, text }) => `- ${game}-${frame}: ${text}`)]
      : []),
    '',
    ...player.cautions,
    '',
  ]
}

function quietSkills({ skills }: PlayerReport): string[] {
  const quiet = skills.filter(({ mean }) => mean === 0).map(({ skill }) => skill)
  return quiet.length === 0 ? [] : [`- no finding on: ${quiet.join(', ')}`]
}

/** Records left out, each with the one that stands for it. */
function supersededLines(superseded: ReviewReport['superseded']): string[] {
  if (superseded.length === 0) return []
  return [
    '# Counted once',
    '',
    ...superseded.map(({ record, by }) => `- ${cell(record)}: the same block as ${cell(by)}, which has all of it`),
    '',
  ]
}

/** How a block came to be, where that is not simply that it was played; and how much of it is the player's own. */
function originWords({ origin, ownChoices, choices }: PlayerReport['blocks'][number]): string {
  const told = origin.cameToBe === 'played' ? [] : [CAME_TO_BE_WORDS[origin.cameToBe]]
  const own = ownChoices === choices ? [] : [`${ownChoices} of ${choices} choices are the player's own`]
  return [...told, ...own].map((words) => `, ${words}`).join('')
}

export function choiceWords({ ball, feet, target, speed, release }: PlayerReport['dearest'][number]['thrown']): string {
  return `${ball} ${feet}/${target}${speed === 'usual' ? '' : ` ${speed}`}${release === 'spare' ? ' spare' : ''}`
}

function range({ mean, low, high }: Estimate): string {
  return low === null || high === null
    ? mean.toFixed(1)
    : `${mean.toFixed(1)} (${low.toFixed(1)} to ${high.toFixed(1)})`
}

const cell = (text: string): string => text.replaceAll('|', '/')
