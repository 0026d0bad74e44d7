import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { checkTarget, writePage } from '../files/text/report-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { reviewHtml } from '../reports/html/review-page.js'
import { reviewCsv } from '../reports/review/csv.js'
import { reviewMarkdown } from '../reports/review/markdown.js'
import { reviewReport } from '../reports/review/review-report.js'
import { type ReviewedBlock, reviewBlock } from '../reports/review/reviewed-block.js'
import { standingBlocks } from '../reports/review/standing-blocks.js'
import { addNote } from '../store/coach-notes.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { readRecord } from '../store/record.js'
import { recordsAmong } from '../store/records-among.js'
import { refuseSealedRecord } from '../store/sealed-lanes.js'
import type { FramePlace } from '../words/frame-place.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface ReviewOptions {
  /** A frame, as 7 or 2-7, and the words to be kept at it. */
  readonly note?: string
  readonly at?: FramePlace
  readonly html?: string
  readonly csv?: boolean
  readonly json?: boolean
  readonly data?: string
}

/** A coach's look at the blocks of a player or a group; or a note put to one of them. */
export async function reviewCommand(
  paths: readonly string[],
  options: ReviewOptions,
  console: CommandConsole,
): Promise<number> {
  if (options.note !== undefined || options.at) return noteOn(paths, options, console)
  const data = dataFolder(options.data, console.environment)
  const cache = debriefsFolder(data)
  const blocks: ReviewedBlock[] = []
  const records = await recordsAmong(paths)
  if (options.html !== undefined) await checkTarget(options.html, records)
  for (const path of records) refuseSealedRecord(data, path, await readRecord(path))
  for (const [index, path] of records.entries()) {
    const progress = progressOn(console, `record ${index + 1} of ${records.length}`)
    blocks.push(await reviewBlock(path, cache, progress.reached))
    progress.over()
  }
  const { standing, superseded } = standingBlocks(blocks)
  if (options.html !== undefined) {
    await writePage(options.html, reviewHtml(standing, superseded), records)
    console.tell(`Report written: ${options.html}`)
  } else if (options.json) printText(console, jsonText(reviewReport(standing, superseded)))
  else if (options.csv) for (const line of reviewCsv(standing)) console.print(line)
  else for (const line of reviewMarkdown(reviewReport(standing, superseded))) console.print(line)
  return EXIT.fine
}

async function noteOn(paths: readonly string[], { note, at }: ReviewOptions, console: CommandConsole): Promise<number> {
  const [path] = paths
  if (note === undefined || !at || paths.length !== 1) {
    throw new ScenarioError([`${path}: a note is for one record and needs --at FRAME and --note TEXT.`])
  }
  const { scenario, decisions } = await readRecord(path)
  if (at.game > scenario.games || decisions.length === 0) {
    throw new ScenarioError([`${path}: there is no frame ${at.game}-${at.frame} to put a note at.`])
  }
  console.tell(`Note kept: ${await addNote(path, { ...at, text: note })}`)
  return EXIT.fine
}
