import { basename } from 'node:path'
import { CAME_TO_BE_WORDS } from '../debrief/origin-words.js'
import { cell, choiceWords, range } from './figures-words.js'
import { groupLines } from './group-markdown.js'
import type { PlayerReport, ReviewReport } from './review-report.js'
import { changeWords, drillSentence, periodWords, placeWords } from './review-words.js'

/** The review as Markdown, which is also what is printed. */
export function reviewMarkdown({ period, group, players, superseded, leftOut, faults }: ReviewReport): string[] {
  return [
    ...(periodWords(period) === '' ? [] : [`${periodWords(period)}`, '']),
    ...(group ? groupLines(group) : []),
    ...players.flatMap(playerLines),
    ...listed(
      'Counted once',
      superseded.map(({ record, by }) => `${record}: the same block as ${by}, which has all of it`),
    ),
    ...listed(
      'Not in this period',
      leftOut.map(({ record, why }) => `${record}: ${why}`),
    ),
    ...listed(
      'Files that are not counted',
      faults.map(({ file, reasons }) => `${file}: ${reasons.join(' ')}`),
    ),
  ]
}

function playerLines(player: PlayerReport): string[] {
  return [
    `# ${player.player}`,
    '',
    ...(player.choices === 0 ? ['No choice of the player’s own with a price.', ''] : summaryLines(player)),
    '| day | block | games | choices | cost a game | |',
    '| --- | --- | --- | --- | --- | --- |',
    ...blockRows(player),
    '',
    ...(player.choices === 0 ? [] : costLines(player)),
    ...(player.notes.length > 0
      ? ['## Notes', '', ...player.notes.map(({ game, frame, text }) => `- ${game}-${frame}: ${text}`), '']
      : []),
    ...player.cautions,
    '',
  ]
}

function summaryLines(player: PlayerReport): string[] {
  const { givenAway, choices, costPins } = player
  return [
    `${choices} choice${choices === 1 ? '' : 's'}, cost ${costPins.toFixed(1)} pins in all. Pins a game: ${range(givenAway.total)}; first balls ${range(givenAway.firstBalls)}, spares ${range(givenAway.spares)}.`,
    ...(givenAway.total.low === null ? ['One block says little; intervals come with more of them.'] : []),
    ...progressLines(player),
    ...(player.change ? [changeWords(player.change)] : []),
    '',
  ]
}

function costLines(player: PlayerReport): string[] {
  return [
    '## By skill, pins a game in findings',
    '',
    ...player.skills.filter(({ mean }) => mean > 0).map(({ skill, ...estimate }) => `- ${skill}: ${range(estimate)}`),
    ...(player.unnamed.mean > 0 ? [`- not named, in pieces too small or too unsure: ${range(player.unnamed)}`] : []),
    ...quietSkills(player),
    '',
    '## Costliest choices',
    '',
    ...(player.dearest.length === 0 ? ['Every choice was as good as the best.'] : []),
    ...player.dearest.map(
      ({ record, game, frame, ball, givenAwayPins, thrown, best }) =>
        `- ${basename(record, '.json')}, ${game}-${frame}.${ball}: cost ${givenAwayPins.toFixed(1)} pins; thrown ${choiceWords(thrown)}, best ${choiceWords(best)}`,
    ),
    '',
    '## Findings and what to practise',
    '',
    ...(player.findings.length === 0 ? ['Nothing that cost enough to name.'] : []),
    ...player.findings.map(
      (finding) => `${finding.number}. ${placeWords(finding)}: ${finding.words} ${finding.practise}`,
    ),
    ...(player.suggestedDrill ? ['', drillSentence(player.suggestedDrill)] : []),
    '',
  ]
}

function progressLines({ progress }: PlayerReport): string[] {
  if (!progress) return []
  const { lastPerGame, changePins, before } = progress
  return [
    `Last block ${lastPerGame.toFixed(1)} pins a game, ${changePins <= 0 ? 'less' : 'more'} than before by ${Math.abs(changePins).toFixed(1)} (before: ${range(before)}).`,
  ]
}

const LONGEST_BAR = 20

/** Blocks in order of play, each with its cost as a bar: read down, it is the trend. */
function blockRows({ blocks }: PlayerReport): string[] {
  const most = Math.max(1, ...blocks.map(({ givenAwayPerGame }) => givenAwayPerGame))
  return blocks.map((block) => {
    const bar = '#'.repeat(Math.round((LONGEST_BAR * block.givenAwayPerGame) / most))
    return `| ${block.day ?? 'unknown'} | ${cell(block.title)} (${cell(basename(block.record))})${block.finished ? '' : ', unfinished'}${originWords(block)} | ${block.games.join(' ')} | ${block.ownChoices} | ${block.givenAwayPerGame.toFixed(1)} | ${bar} |`
  })
}

function quietSkills({ skills }: PlayerReport): string[] {
  const quiet = skills.filter(({ mean }) => mean === 0).map(({ skill }) => skill)
  return quiet.length === 0 ? [] : [`- no finding on: ${quiet.join(', ')}`]
}

/** Files under a heading, each with why it is there; nothing where there are none. */
function listed(heading: string, items: readonly string[]): string[] {
  return items.length === 0 ? [] : [`# ${heading}`, '', ...items.map((item) => `- ${cell(item)}`), '']
}

/** How a block came to be, where that is not simply that it was played; and how much of it is the player's own. */
function originWords({ origin, ownChoices, choices }: PlayerReport['blocks'][number]): string {
  const told = origin.cameToBe === 'played' ? [] : [CAME_TO_BE_WORDS[origin.cameToBe]]
  const own = ownChoices === choices ? [] : [`${ownChoices} of ${choices} choices are the player's own`]
  return [...told, ...own].map((words) => `, ${words}`).join('')
}
