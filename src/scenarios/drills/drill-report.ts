import { rounded } from '../files/text/json.js'
import { choiceWords } from '../reports/review/figures-words.js'
import { spotWords } from '../words/words.js'
import { type AnsweredBlock, answersTo, type DrillAnswer } from './drill-answers.js'
import type { Drill, DrillPosition } from './load-drill.js'

/** What came of a drill: asked, answered, best from what had been seen, cost and how sure, by position and by player. */
type DrillReport = ReturnType<typeof drillReport>

export function drillReport(drill: Drill, blocks: readonly AnsweredBlock[]) {
  const answers = answersTo(drill, blocks)
  const players = [...new Set(answers.flat().map(({ player }) => player))]
  return {
    title: drill.title,
    positions: drill.positions.map((position, place) => ({
      position: place + 1,
      asked: askedWords(position),
      scenario: position.scenario.name,
      seed: position.state.seed,
      lookFor: position.lookFor,
      answers: answers[place]!,
    })),
    players: players.map((player) => playerSum(player, answers)),
  }
}

/** Where a position stands, in words. */
export function askedWords({ scenario, state }: DrillPosition): string {
  const { spot, setup } = state
  return `${scenario.title}: ${spot ? spotWords(spot, setup.lanes[spot.lane]!.name) : 'the block is over'}`
}

/** The first answers of one player, which are those that count. */
function playerSum(player: string, answers: readonly (readonly DrillAnswer[])[]) {
  const first = answers.map((all) => all.find((one) => one.player === player && one.attempt === 1))
  const throws = first.flatMap((answer) => answer?.throws ?? [])
  const costs = throws.flatMap(({ costPins }) => (costPins === null ? [] : [costPins]))
  return {
    player,
    answered: first.filter((answer) => answer !== undefined).length,
    choices: costs.length,
    asGoodAsTheBest: costs.filter((pins) => pins === 0).length,
    costPins: rounded(
      costs.reduce((sum, pins) => sum + pins, 0),
      2,
    ),
  }
}

/** The report as Markdown, which is also what is printed. */
export function drillReportLines({ title, positions, players }: DrillReport): string[] {
  return [
    `# ${title}`,
    '',
    '| player | answered | choices | as good as the best | cost in all |',
    '| --- | --- | --- | --- | --- |',
    ...players.map(
      ({ player, answered, choices, asGoodAsTheBest, costPins }) =>
        `| ${player.replaceAll('|', '/')} | ${answered} of ${positions.length} | ${choices} | ${asGoodAsTheBest} | ${costPins.toFixed(1)} |`,
    ),
    ...(players.length === 0 ? ['', 'None of these records answers it.'] : []),
    '',
    ...positions.flatMap(positionLines),
    'Costs are pins against the best from what had been seen; within ± nothing can be told apart. First tries count.',
  ]
}

function positionLines({ position, asked, lookFor, answers }: DrillReport['positions'][number]): string[] {
  return [
    `## ${position}. ${asked}`,
    '',
    `Look for: ${lookFor}`,
    '',
    ...(answers.length === 0
      ? ['Nobody has answered it.']
      : [
          '| player | answered | best from what had been seen | cost | left |',
          '| --- | --- | --- | --- | --- |',
          ...answers.flatMap(answerRows),
        ]),
    '',
  ]
}

function answerRows({ player, attempt, throws }: DrillAnswer): string[] {
  return throws.map(({ answered, best, costPins, marginPins, left }, index) => {
    const who = `${player.replaceAll('|', '/')}${attempt > 1 ? `, try ${attempt}` : ''}${index > 0 ? `, throw ${index + 1}` : ''}`
    const pins = left.length === 0 ? 'all down' : left.join('-')
    return `| ${who} | ${choiceWords(answered)} | ${best ? choiceWords(best) : '–'} | ${costWords(costPins, marginPins)} | ${pins} |`
  })
}

/** A cost with what cannot be told from it. */
export function costWords(costPins: number | null, marginPins: number | null): string {
  if (costPins === null) return 'practice, costs nothing'
  if (costPins === 0) return 'good as the best'
  return `${costPins.toFixed(1)} ± ${(marginPins ?? 0).toFixed(1)}`
}
