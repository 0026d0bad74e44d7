import { drillReport, drillReportLines } from '../drills/drill-report.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { drillNamed } from '../practice/library-drill.js'
import { inOrderOfPlay } from '../reports/review/period.js'
import { aliasesFrom, namedAlike } from '../reports/review/player-names.js'
import { reviewedBlocks } from '../reports/review/reviewed-blocks.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { recordsAmong } from '../store/records-among.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface DrillResultsOptions {
  readonly json?: boolean
  readonly data?: string
  readonly alias?: readonly string[]
}

/** What players answered to a drill, worked out from their records; ends with 1 where a file had to be left out. */
export async function drillResultsCommand(
  file: string,
  paths: readonly string[],
  options: DrillResultsOptions,
  console: CommandConsole,
): Promise<number> {
  const drill = await drillNamed(file)
  const records = await recordsAmong(paths)
  const cache = debriefsFolder(dataFolder(options.data, console.environment))
  const { blocks, faults } = await reviewedBlocks(records, cache, (work) => progressOn(console, work))
  const ordered = inOrderOfPlay(blocks)
  const names = namedAlike(
    ordered.map(({ player }) => player),
    aliasesFrom(options.alias ?? []),
  )
  const report = drillReport(
    drill,
    ordered.map((block, at) => ({ ...block, player: names[at]! })),
  )
  if (options.json) printText(console, jsonText({ ...report, faults }))
  else for (const line of drillReportLines(report)) console.print(line)
  for (const { reasons } of faults) for (const reason of reasons) console.tell(reason)
  return faults.length > 0 ? EXIT.checkFailed : EXIT.fine
}
