import type { Remembered, SkillHistory } from '../../../scenarios/store/remembered.js'
import { textRow } from '../../draw/text-row.js'
import type { Theme } from '../../draw/theme.js'

const NAME_COLUMNS = 19
const MOST_SKILLS = 5
const FIGURE_COLUMNS = 6

/** What the blocks before come to: cost a game by skill over the latest ten, lanes met, and how good the calls were. */
export function memoryRows(remembered: Remembered, rows: number, theme: Theme): string[] {
  const { costs, skills, unpriced, lanesMet, lanesOfAll, calls } = remembered
  const below = [
    textRow(theme, ['Lanes met'.padEnd(NAME_COLUMNS), 'faint'], `${lanesMet} of ${lanesOfAll}`),
    ...(calls ? [textRow(theme, ['Calls right'.padEnd(NAME_COLUMNS), 'faint'], callWords(calls))] : []),
    ...(unpriced > 0 ? [textRow(theme, [unpricedWords(unpriced), 'faint'])] : []),
  ]
  if (costs.length === 0) return below
  const last = costs.length === 1 ? 'The last block' : `The last ${costs.length} blocks`
  const highest = Math.max(...costs, 1)
  const row = (name: string, values: readonly number[], figure: number, isSum: boolean) =>
    textRow(
      theme,
      [name.padEnd(NAME_COLUMNS), isSum ? 'strong' : 'plain'],
      [sparkline(values, highest, theme), 'loss'],
      [figure.toFixed(1).padStart(FIGURE_COLUMNS), isSum ? 'strong' : 'plain'],
    )
  const room = Math.min(MOST_SKILLS, Math.max(0, rows - below.length - 2))
  return [
    textRow(theme, [`${last}: cost in pins a game`, 'faint']),
    row('all choices', costs, mean(costs), true),
    ...skills
      .slice(0, room)
      .map(({ skill, costs: own, mean: average }: SkillHistory) => row(skill, own, average, false)),
    ...below,
  ]
}

/** One column a block; every row of a table goes by the same highest figure, so that rows can be compared. */
function sparkline(values: readonly number[], highest: number, { glyphs }: Theme): string {
  const steps = glyphs.bar.length - 1
  return values
    .map((value) => (value <= 0 ? glyphs.dot : glyphs.bar[Math.max(1, Math.round((value / highest) * steps))]))
    .join('')
    .padEnd(10)
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

function callWords({ count, right, claimed }: NonNullable<Remembered['calls']>): string {
  return `${right} of ${count}; you said ${claimed.toFixed(claimed < 10 ? 1 : 0)}`
}

const unpricedWords = (count: number): string =>
  count === 1 ? '1 block is priced once you look back at it' : `${count} blocks are priced once you look back`
