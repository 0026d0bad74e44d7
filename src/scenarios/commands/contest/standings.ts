import { basename } from 'node:path'
import { openPack, readPack } from '../../contest/pack/pack.js'
import { readEntrants } from '../../contest/pack/rules-file.js'
import { standingsOf } from '../../contest/standings/standings.js'
import { standingsPage } from '../../contest/standings/standings-page.js'
import { standingsReport } from '../../contest/standings/standings-report.js'
import { standingsCsv, standingsLines, standingsMarkdown } from '../../contest/standings/standings-text.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { jsonText } from '../../files/text/json.js'
import { checkTarget, writePage } from '../../files/text/report-file.js'
import { dataFolder, debriefsFolder } from '../../store/data-folder.js'
import { recordsAmong } from '../../store/records-among.js'
import { type CommandConsole, printText } from '../console/console.js'
import { progressOn } from '../console/progress.js'
import { neededPassphrase } from './passphrase-from.js'

export interface StandingsOptions {
  readonly pack: string
  readonly passphrase?: string
  readonly entrants?: string
  readonly evidence?: boolean
  readonly html?: string
  readonly markdown?: boolean
  readonly csv?: boolean
  readonly json?: boolean
  readonly jobs?: number
  readonly data?: string
}

/** Checks every entry of a folder and tells who stands where. */
export async function standingsCommand(
  folder: string,
  options: StandingsOptions,
  console: CommandConsole,
): Promise<number> {
  const pack = await readPack(options.pack)
  const passphrase = await neededPassphrase(options.pack, options.passphrase, console)
  const opened = openPack(options.pack, pack, passphrase)
  const entrants = options.entrants === undefined ? null : await readEntrants(options.entrants)
  const isContestFile = (path: string): boolean => /\.(pack|unsealing|standings)\.json$/.test(basename(path))
  const paths = (await recordsAmong([folder])).filter((path) => !isContestFile(path))
  if (options.html !== undefined) await checkTarget(options.html, [...paths, options.pack])
  const progress = progressOn(console, 'checking entries')
  const standings = await standingsOf(paths, opened, {
    entrants,
    evidence: options.evidence ?? false,
    accounts: debriefsFolder(dataFolder(options.data, console.environment)),
    jobs: options.jobs,
    reached: progress.reached,
  })
  progress.over()
  const report = standingsReport(standings)
  if (options.html !== undefined) {
    await writePage(options.html, standingsPage(report), [...paths, options.pack])
    console.tell(`Page written: ${options.html}`)
  } else if (options.json) printText(console, jsonText(report))
  else {
    const lines = options.csv
      ? standingsCsv(report)
      : options.markdown
        ? standingsMarkdown(report)
        : standingsLines(report)
    for (const line of lines) console.print(line)
  }
  return standings.refused.length === 0 ? EXIT.fine : EXIT.checkFailed
}
