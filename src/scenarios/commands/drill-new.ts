import { LOOK_FOR_TO_WRITE } from '../drills/load-drill.js'
import { type DrillPart, type DrillWords, dearestOf, drillText, framesOf, startOf } from '../drills/make-drill.js'
import { EXIT } from '../files/text/exit-codes.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { readSourceText } from '../files/text/source-text.js'
import { builtInScenario } from '../library/library.js'
import { loadScenario } from '../library/load.js'
import { reviewBlock } from '../reports/review/reviewed-block.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { recordFromText } from '../store/record.js'
import { RECORD_FORMAT } from '../store/record-schema.js'
import { replayRecord } from '../store/replay.js'
import { refuseSealedRecord } from '../store/sealed-lanes.js'
import type { FramePlace } from '../words/frame-place.js'
import { type CommandConsole, printText } from './console/console.js'
import { progressOn } from './console/progress.js'
import { seedOf } from './seed.js'

export interface DrillNewOptions {
  readonly at?: readonly FramePlace[]
  readonly seed?: string
  readonly throws: number
  readonly title?: string
  /** What to look for, where the coach says it at once. */
  readonly lookFor?: string
  readonly data?: string
}

/** A drill made of moments of records and of starts of scenarios, printed as a file that needs no other. */
export async function drillNewCommand(
  sources: readonly string[],
  options: DrillNewOptions,
  console: CommandConsole,
): Promise<number> {
  const parts: DrillPart[] = []
  for (const source of sources) parts.push(await partFrom(source, options, console))
  printText(console, drillText(options.title ?? 'A drill', parts))
  const isUnwritten = parts.some(({ positions }) =>
    positions.some(({ lookFor }) => lookFor.includes(LOOK_FOR_TO_WRITE)),
  )
  if (isUnwritten) {
    console.tell(
      `Write in the file what to look for, where it says "${LOOK_FOR_TO_WRITE}"; until then it cannot be played.`,
    )
  }
  return EXIT.fine
}

async function partFrom(source: string, options: DrillNewOptions, console: CommandConsole): Promise<DrillPart> {
  const words: DrillWords = {
    throws: options.throws,
    ...(options.lookFor === undefined ? {} : { lookFor: options.lookFor }),
  }
  const isBuiltIn = builtInScenario(source) !== undefined
  if (isBuiltIn || !(await isRecord(source))) {
    if (options.at) throw new ScenarioError([`${source}: this is a scenario; --at takes moments of a record.`])
    const scenario = await loadScenario(source)
    return startOf(scenario, isBuiltIn, seedOf(options.seed, scenario), words)
  }
  const read = recordFromText(source, await readTextFile(source))
  const data = dataFolder(options.data, console.environment)
  refuseSealedRecord(data, source, read)
  if (options.at) return framesOf({ record: read, replay: replayRecord(read, source), path: source }, options.at, words)
  const progress = progressOn(console, 'pricing choices')
  const cache = debriefsFolder(data)
  const { record, report } = await reviewBlock(source, cache, progress.reached)
  progress.over()
  return dearestOf({ record, replay: replayRecord(record, source), path: source }, report, words)
}

async function isRecord(path: string): Promise<boolean> {
  if (!path.endsWith('.json')) return false
  const { data } = readSourceText(path, await readTextFile(path))
  return (data as { readonly format?: unknown } | null)?.format === RECORD_FORMAT
}
