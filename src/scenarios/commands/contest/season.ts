import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { type Season, seasonContest, seasonOf } from '../../contest/standings/season.js'
import { seasonPage } from '../../contest/standings/season-page.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { jsonText } from '../../files/text/json.js'
import { readTextFile } from '../../files/text/read-text-file.js'
import { writePage } from '../../files/text/report-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { momentWords } from '../../words/contest-words.js'
import { type CommandConsole, printText } from '../console/console.js'

/** Adds up the contests of a folder. */
export async function seasonCommand(
  folder: string,
  options: { readonly html?: string; readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const names = await readdir(folder).catch(() => null)
  if (names === null) throw new ScenarioError([`${folder}: this folder cannot be read.`], true)
  const paths = names
    .filter((name) => name.endsWith('.json') && !name.startsWith('.'))
    .sort()
    .map((name) => join(folder, name))
  if (paths.length === 0) throw new ScenarioError([`${folder}: no standings lie in this folder.`], true)
  const contests = []
  for (const path of paths) contests.push(seasonContest(path, await readTextFile(path)))
  const season = seasonOf(contests)
  if (options.html !== undefined) {
    await writePage(options.html, seasonPage(season), paths)
    console.tell(`Page written: ${options.html}`)
  } else if (options.json) printText(console, jsonText(season))
  else for (const line of seasonLines(season)) console.print(line)
  return EXIT.fine
}

function seasonLines({ contests, rows }: Season): string[] {
  const table = [
    ['place', 'player', 'points', 'contests', 'pins', ...contests.map((_, index) => `${index + 1}`)],
    ...rows.map(({ place, player, points, contests: count, score, each }) => [
      String(place),
      player,
      points.toFixed(1),
      String(count),
      String(score),
      ...each.map((one) => (one === null ? '' : one.toFixed(1))),
    ]),
  ]
  const widths = table[0]!.map((_, column) => Math.max(...table.map((row) => row[column]!.length)))
  return [
    ...contests.map(
      ({ title, deadline, entrants }, index) =>
        `${index + 1} ${title}, over at ${momentWords(deadline)}, ${entrants} with a place`,
    ),
    '',
    ...table.map((row) =>
      row
        .map((cell, column) => (column === 1 ? cell.padEnd(widths[column]!) : cell.padStart(widths[column]!)))
        .join('  '),
    ),
    '',
    'A place earns a point for everybody behind it and one for being there; a shared place shares them. Equal points go by pins.',
  ]
}
