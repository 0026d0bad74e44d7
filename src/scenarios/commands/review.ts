import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { checkTarget, writePage } from '../files/text/report-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { reviewHtml } from '../reports/html/review-page.js'
import { anonymousBlocks, withoutFiles } from '../reports/review/anonymous.js'
import { reviewCsv } from '../reports/review/csv.js'
import { reviewMarkdown } from '../reports/review/markdown.js'
import { inOrderOfPlay, type Period, withinPeriod } from '../reports/review/period.js'
import { aliasesFrom, namedAlike } from '../reports/review/player-names.js'
import { type ReviewAbout, reviewReport } from '../reports/review/review-report.js'
import type { ReviewedBlock } from '../reports/review/reviewed-block.js'
import { reviewedBlocks } from '../reports/review/reviewed-blocks.js'
import { standingBlocks } from '../reports/review/standing-blocks.js'
import { addNote } from '../store/coach-notes.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { readRecord } from '../store/record.js'
import { recordsAmong } from '../store/records-among.js'
import { refuseSealedRecord } from '../store/sealed-lanes.js'
import type { FramePlace } from '../words/frame-place.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface ReviewOptions extends Period {
  /** A frame, as 7 or 2-7, and the words to be kept at it. */
  readonly note?: string
  readonly at?: FramePlace
  readonly html?: string
  readonly csv?: boolean
  readonly json?: boolean
  readonly data?: string
  /** Names that stand for others, each as ALIAS=NAME. */
  readonly alias?: readonly string[]
  /** Whether names are left out. */
  readonly anonymous?: boolean
}

/** A coach's look at the blocks of a player or a group; or a note put to one of them. Ends with 1 where a file had to be left out. */
export async function reviewCommand(
  paths: readonly string[],
  options: ReviewOptions,
  console: CommandConsole,
): Promise<number> {
  if (options.note !== undefined || options.at) return noteOn(paths, options, console)
  const data = dataFolder(options.data, console.environment)
  const cache = debriefsFolder(data)
  const aliases = aliasesFrom(options.alias ?? [])
  const records = await recordsAmong(paths)
  if (options.html !== undefined) await checkTarget(options.html, records)
  for (const path of records) {
    // What cannot be read is told of with the faults.
    const record = await readRecord(path).catch(() => null)
    if (record) refuseSealedRecord(data, path, record)
  }
  const { blocks: read, faults } = await reviewedBlocks(records, cache, (work) => progressOn(console, work))
  const ordered = inOrderOfPlay(read)
  const names = namedAlike(
    ordered.map(({ player }) => player),
    aliases,
  )
  const { standing, superseded } = standingBlocks(ordered.map((block, at) => ({ ...block, player: names[at]! })))
  const { within, leftOut } = withinPeriod(standing, options)
  const period = periodOf(options)
  const all = { period, superseded, leftOut, faults }
  await report(
    options.anonymous ? anonymousBlocks(within) : within,
    options.anonymous ? { period, ...withoutFiles(all) } : all,
    { ...options, records },
    console,
  )
  for (const { reasons } of faults) for (const reason of reasons) console.tell(reason)
  return faults.length > 0 ? EXIT.checkFailed : EXIT.fine
}

async function report(
  blocks: readonly ReviewedBlock[],
  about: ReviewAbout,
  { html, json, csv, records }: Pick<ReviewOptions, 'html' | 'json' | 'csv'> & { readonly records: readonly string[] },
  console: CommandConsole,
): Promise<void> {
  if (html !== undefined) {
    await writePage(html, reviewHtml(blocks, about), records)
    console.tell(`Report written: ${html}`)
  } else if (json) printText(console, jsonText(reviewReport(blocks, about)))
  else if (csv) for (const line of reviewCsv(blocks)) console.print(line)
  else for (const line of reviewMarkdown(reviewReport(blocks, about))) console.print(line)
}

function periodOf({ since, until, compare }: Period): Period {
  return {
    ...(since === undefined ? {} : { since }),
    ...(until === undefined ? {} : { until }),
    ...(compare === undefined ? {} : { compare }),
  }
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
