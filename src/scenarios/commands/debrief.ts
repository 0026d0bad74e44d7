import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { checkTarget, writePage } from '../files/text/report-file.js'
import { debriefLines } from '../reports/debrief/debrief-lines.js'
import { debriefReport } from '../reports/debrief/debrief-report.js'
import { frameLines } from '../reports/debrief/frame-lines.js'
import { originWords } from '../reports/debrief/origin-words.js'
import { workedDebrief } from '../reports/debrief/worked-debrief.js'
import { debriefHtml } from '../reports/html/debrief-page.js'
import { frameHtml } from '../reports/html/frame-page.js'
import { isBlockOver } from '../store/block-over.js'
import { type Note, readNotes } from '../store/coach-notes.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { keptBlock } from '../store/kept-block.js'
import { type BlockRecord, readRecord } from '../store/record.js'
import { EarlierModelError } from '../store/replay.js'
import { refuseSealedRecord } from '../store/sealed-lanes.js'
import type { FramePlace } from '../words/frame-place.js'
import { keptBlockLines } from '../words/kept-block-lines.js'
import { wrapped } from '../words/wrapped.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface DebriefCommandOptions {
  readonly quick?: boolean
  readonly data?: string
  readonly json?: boolean
  readonly html?: string
  /** Only this frame, in words. */
  readonly at?: FramePlace
}

/** Replays a record and prices every choice in it. */
export async function debriefCommand(
  path: string,
  options: DebriefCommandOptions,
  console: CommandConsole,
): Promise<number> {
  if (options.html !== undefined) await checkTarget(options.html, [path])
  const record = await readRecord(path)
  const data = dataFolder(options.data, console.environment)
  refuseSealedRecord(data, path, record)
  const notes = await readNotes(path)
  const progress = progressOn(console, 'pricing choices')
  const worked = await workedDebrief(record, {
    path,
    folder: debriefsFolder(data),
    reached: progress.reached,
    ...(options.quick ? { quick: true } : {}),
  }).catch((fault: unknown) => {
    if (fault instanceof EarlierModelError && !options.json && options.html === undefined) return null
    throw fault
  })
  progress.over()
  if (worked === null) return printKept(record, path, console)
  const { replay, debrief } = worked
  if (options.json) {
    const { block, program, player = null, origin } = record
    const madeBy = record.decisions.map(({ by }) => by)
    const report = { ...debriefReport(record, debrief), block, program, player, origin, madeBy }
    printText(console, jsonText(report))
    return EXIT.fine
  }
  if (options.html !== undefined) {
    const debriefed = { path, record, replay, debrief, notes }
    const page = options.at ? frameHtml(debriefed, options.at) : debriefHtml(debriefed)
    await writePage(options.html, page, [path])
    console.tell(`Debrief written: ${options.html}`)
    return EXIT.fine
  }
  console.print(
    `${replay.scenario.title} (${record.name}), seed ${record.seed}${isBlockOver(record.origin.cameToBe, debrief.ended) ? '' : ', unfinished'}`,
  )
  for (const line of wrapped(`${originWords(record)}.`)) console.print(line)
  const lines = options.at ? frameLines(debrief, options.at, path) : debriefLines(debrief)
  for (const line of [...lines, ...noteLines(notes, options.at)]) console.print(line)
  return EXIT.fine
}

/** What a record of an earlier model still tells. */
function printKept(record: BlockRecord, path: string, console: CommandConsole): number {
  const { scenario, throws, balls } = keptBlock(record, path)
  console.print(`${scenario.title} (${record.name}), seed ${record.seed}`)
  for (const line of wrapped(`${originWords(record)}.`)) console.print(line)
  const { scoring, bag } = scenario.setup
  for (const line of keptBlockLines({ scoring, bag, throws, balls })) console.print(line)
  return EXIT.fine
}

/** What the coach wrote, to the whole block or to one frame of it. */
function noteLines(notes: readonly Note[], at: FramePlace | undefined): string[] {
  const told = notes.filter(({ game, frame }) => !at || (at.game === game && at.frame === frame))
  if (told.length === 0) return []
  return [
    '',
    "The coach's notes",
    ...told.flatMap(({ game, frame, text }) => wrapped(text, `- ${game}-${frame}: `, '  ')),
  ]
}
