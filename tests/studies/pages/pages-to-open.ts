import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Board, boardLine } from '../../../src/scenarios/contest/host/board.js'
import { boardPage } from '../../../src/scenarios/contest/host/board-page.js'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { type BlockRecord, readRecord, recordText } from '../../../src/scenarios/store/record.js'
import { runCommand } from '../../cli/in-process.js'
import { keptPath, oneBallLane, playedRecord } from '../../cli/played-record.js'

/** A page of the program, ready to be opened. */
export interface PageToOpen {
  readonly name: string
  readonly path: string
  /** Players who are to have a sheet each in print; 0 where that is not asked of the page. */
  readonly sheetsOfTheirOwn: number
}

/** A name as long as a name may be. */
const LONG_NAME = 'Wilhelmina Oudekerk-Vanderstraeten of the Quillmoor Mondays'
const PLAYERS = ['Ansa', 'Brono', 'Cile', LONG_NAME, 'Ewo']
const PASSPHRASE = 'one two'
/** Throws of the first block: some off the line, then back to it. */
const FULL_GAME = Array.from({ length: 24 }, (_, at) =>
  at % 7 === 4 ? 'feet 24 target 15' : at % 7 === 5 ? 'feet 30 target 17.5' : '',
)
const HALF_GAME = ['', 'feet 24 target 12', '', 'feet 39 target 30', '', '', 'feet 20 target 10', '', '']

/**
 * Plays blocks and a contest and has every kind of page made of them that the program writes: by a player alone and by a group,
 * a whole game on a full bag and two lanes left in the middle, notes, spoiled files, entries refused.
 *
 * @param folder where all of it is put
 */
export async function pagesToOpen(folder: string, said: (words: string) => void): Promise<PageToOpen[]> {
  const data = join(folder, 'data')
  const inbox = join(folder, 'inbox')
  const pages = join(folder, 'pages')
  for (const made of [inbox, pages]) mkdirSync(made, { recursive: true })
  const run = async (argv: readonly string[], typed: readonly string[] = []): Promise<void> => {
    said(argv.slice(0, 2).join(' '))
    const { exitCode, err } = await runCommand(argv, { typed, environment: { DRYBOARD_DATA: data } })
    if (exitCode > 1) throw new Error(`${argv.join(' ')}: ended with ${exitCode}: ${err}`)
  }
  const whole = await playedRecord(['house-forty', '--seed', 'pages', '--player', 'Ansa', '--data', data], FULL_GAME)
  const half = await playedRecord(['unseen-draw', '--seed', 'pages', '--player', 'Ansa', '--data', data], HALF_GAME)
  const page = (name: string): string => join(pages, `${name}.html`)

  await run(['review', whole, '--at', '4', '--note', 'Where did it turn?\nLook at the arrows.'])
  await run(['debrief', whole, '--html', page('debrief')])
  await run(['debrief', half, '--html', page('debrief-two-lanes')])
  await run(['debrief', whole, '--at', '4', '--html', page('frame')])
  await fillInbox(inbox, { whole, half })
  await run(['review', join(inbox, 'Ansa'), '--compare', '2026-03-05', '--html', page('review-player')])
  await run(['review', inbox, '--html', page('review-group')])
  await run(['progress', join(inbox, 'Ansa'), '--player', 'Ansa', '--html', page('progress')])
  await contestPages({ folder, run, page })
  const [of, alone] = [(name: string) => ({ name, path: page(name) }), { sheetsOfTheirOwn: 0 }]
  return [
    ...['debrief', 'debrief-two-lanes', 'frame', 'review-player'].map((name) => ({ ...of(name), ...alone })),
    { ...of('review-group'), sheetsOfTheirOwn: PLAYERS.length },
    ...['progress', 'standings', 'season', 'board'].map((name) => ({ ...of(name), ...alone })),
  ]
}

/** Copies of two blocks as blocks of their own, of five players on several days, and two files that are none. */
async function fillInbox(inbox: string, { whole, half }: { whole: string; half: string }): Promise<void> {
  const [long, short] = [await readRecord(whole), await readRecord(half)]
  for (const [place, player] of PLAYERS.entries()) {
    const own = join(inbox, player.slice(0, 4))
    mkdirSync(own)
    for (const [at, day] of [1, 9, 16].entries()) {
      const from = at === 2 ? short : long
      const throws = at === 2 || (place + at) % 2 === 0 ? from.decisions.length : 8
      if (at === 2 && place > 1) continue
      const begun = `2026-03-${String(day).padStart(2, '0')}T19:00:00+01:00`
      const copy: BlockRecord = {
        ...from,
        block: `${place}${at}`.padEnd(24, 'b'),
        player,
        origin: { ...from.origin, begun, ended: begun },
        decisions: from.decisions.slice(0, throws),
      }
      const path = join(own, `${player.toLowerCase().replaceAll(' ', '-')}-2026-03-${day}-${from.scenario.title}.json`)
      writeFileSync(path, recordText(copy))
      if (place === 0 && at === 0) copyFileSync(`${whole.slice(0, -5)}.notes.json`, `${path.slice(0, -5)}.notes.json`)
    }
  }
  writeFileSync(join(inbox, 'spoiled.json'), '{ "format": "dryboard-record", ')
  writeFileSync(join(inbox, 'stranger.json'), '{}')
}

interface Making {
  readonly folder: string
  readonly run: (argv: readonly string[], typed?: readonly string[]) => Promise<void>
  readonly page: (name: string) => string
}

const entrantOf = (name: string, place: number) => ({ name, average: 160 + 15 * place })

/** Standings with places, an entry without one and a file refused; a season of it; the board on the wall. */
async function contestPages({ folder, run, page }: Making): Promise<void> {
  const entries = join(folder, 'entries')
  const season = join(folder, 'season')
  for (const made of [entries, season]) mkdirSync(made)
  oneBallLane(folder)
  const rules = join(folder, 'rules.yaml')
  const text = readFileSync('scenarios-demo/contest-autumn.yaml', 'utf8')
  writeFileSync(rules, text.replace('scenario: house-forty', 'scenario: one-ball.yaml'))
  const pack = join(folder, 'autumn.pack.json')
  await run(['contest', 'seal', rules, '--out', pack, '--passphrase', PASSPHRASE])
  const entrants = join(folder, 'entrants.json')
  writeFileSync(entrants, JSON.stringify({ version: 1, entrants: PLAYERS.slice(0, 4).map(entrantOf) }))
  const words = ['--pack', pack, '--passphrase', PASSPHRASE, '--entrants', entrants]
  for (const [place, player] of PLAYERS.entries()) {
    const typed = Array.from({ length: 40 }, (_, at) => (at === place ? 'feet 28 target 12' : ''))
    const { err } = await runCommand(
      ['contest', 'play', pack, '--passphrase', PASSPHRASE, '--player', player, '--data', join(folder, `own-${place}`)],
      { typed },
    )
    copyFileSync(keptPath({ err }), join(entries, `${place}.json`))
  }
  writeFileSync(join(entries, 'stranger.json'), '{}')
  await run(['contest', 'standings', entries, ...words, '--html', page('standings')])
  const { out } = await runCommand(['contest', 'standings', entries, ...words, '--json'])
  writeFileSync(join(season, 'autumn.json'), out)
  writeFileSync(
    join(season, 'winter.json'),
    JSON.stringify({ ...JSON.parse(out), contest: 'e'.repeat(24), title: 'Winter evening' }),
  )
  await run(['contest', 'season', season, '--html', page('season')])
  const begun = beginScenario(await loadScenario(join(folder, 'one-ball.yaml')), 'pages')
  const board: Board = {
    title: 'Autumn evening',
    lane: 'Lane 3 of the club at Quillmoor',
    deadline: '2026-11-20T22:00:00+01:00',
    lines: PLAYERS.map((player) => boardLine(player, begun)),
  }
  writeFileSync(page('board'), boardPage(board))
}
