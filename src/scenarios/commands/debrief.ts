import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { checkTarget, writePage } from '../files/text/report-file.js'
import { originWords } from '../plain/origin-words.js'
import { debriefOf } from '../reports/debrief/debrief.js'
import { debriefLines } from '../reports/debrief/debrief-lines.js'
import { debriefReport } from '../reports/debrief/debrief-report.js'
import { frameLines } from '../reports/debrief/frame-lines.js'
import { debriefHtml } from '../reports/html/debrief-page.js'
import { type Note, readNotes } from '../store/coach-notes.js'
import { ownThrows, readRecord } from '../store/record.js'
import { replayRecord } from '../store/replay.js'
import type { FramePlace } from '../words/frame-place.js'
import { wrapped } from '../words/wrapped.js'
import type { CommandConsole } from './console/console.js'
import { progressOn } from './console/progress.js'

export interface DebriefCommandOptions {
  readonly quick?: boolean
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
  const replay = replayRecord(record, path)
  const notes = await readNotes(path)
  const progress = progressOn(console, 'pricing choices')
  const debrief = debriefOf(replay, {
    alternatives: !options.quick,
    own: ownThrows(record),
    reached: progress.reached,
  })
  progress.over()
  if (options.json) {
    const { block, program, player = null, origin } = record
    const madeBy = record.decisions.map(({ by }) => by)
    console.print(jsonText({ ...debriefReport(record, debrief), block, program, player, origin, madeBy }))
    return EXIT.fine
  }
  if (options.html !== undefined) {
    await writePage(options.html, debriefHtml({ path, record, replay, debrief, notes }), [path])
    console.tell(`Debrief written: ${options.html}`)
    return EXIT.fine
  }
  console.print(
    `${replay.scenario.title} (${record.name}), seed ${record.seed}${debrief.ended.spot ? ', unfinished' : ''}`,
  )
  for (const line of wrapped(`${originWords(record)}.`)) console.print(line)
  const lines = options.at ? frameLines(debrief, options.at, path) : debriefLines(debrief)
  for (const line of [...lines, ...noteLines(notes, options.at)]) console.print(line)
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
