import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { checkTarget, writePage } from '../files/text/report-file.js'
import { progressHtml } from '../reports/html/progress-page.js'
import { gatherProgress } from '../reports/progress/gather.js'
import { ownRecords } from '../reports/progress/own-progress.js'
import { progressLines } from '../reports/progress/progress-lines.js'
import { progressReport } from '../reports/progress/progress-report.js'
import { dataFolder, withDataFolder } from '../store/data-folder.js'
import { nameIfReadable } from '../store/player-name.js'
import { recordsAmong } from '../store/records-among.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface ProgressOptions {
  readonly player?: string
  readonly data?: string
  readonly html?: string
  readonly json?: boolean
  /** Leaves out what is not priced yet. */
  readonly quick?: boolean
}

/** What choices cost over time, by skill; from the records of this machine or from those named. Ends with 1 where a file had to be left out. */
export async function progressCommand(
  paths: readonly string[],
  options: ProgressOptions,
  console: CommandConsole,
): Promise<number> {
  const data = dataFolder(options.data, console.environment)
  const player = await nameIfReadable(options.player, withDataFolder(console.environment, options.data), console.tell)
  const records = await (paths.length > 0 ? recordsAmong(paths) : ownRecords(data))
  if (options.html !== undefined) await checkTarget(options.html, records)
  const pricing = (work: string) => progressOn(console, work)
  const gathered = await gatherProgress(records, { data, player, ...(options.quick ? {} : { pricing }) })
  const report = progressReport(gathered)
  if (options.html !== undefined) {
    await writePage(options.html, progressHtml(report, player), records)
    console.tell(`Report written: ${options.html}`)
  } else if (options.json) printText(console, jsonText({ player: player ?? null, ...report }))
  else for (const line of progressLines(report)) console.print(line)
  for (const fault of gathered.faults) console.tell(fault)
  return gathered.faults.length > 0 ? EXIT.checkFailed : EXIT.fine
}
