import { debriefOf } from '../debrief.js'
import { debriefText } from '../debrief-report.js'
import { debriefLines } from '../plain/debrief-lines.js'
import { readRecord } from '../record.js'
import { replayRecord } from '../replay.js'
import type { CommandConsole } from './console.js'
import { EXIT } from './exit-codes.js'
import { progressOn } from './progress.js'

export interface DebriefCommandOptions {
  readonly quick?: boolean
  readonly json?: boolean
}

/** Replays a record and prices every choice in it. */
export async function debriefCommand(
  path: string,
  options: DebriefCommandOptions,
  console: CommandConsole,
): Promise<number> {
  const record = await readRecord(path)
  const replay = replayRecord(record, path)
  const progress = progressOn(console, 'pricing choices')
  const debrief = debriefOf(replay, { alternatives: !options.quick, reached: progress.reached })
  progress.over()
  if (options.json) {
    console.print(debriefText(record, debrief))
    return EXIT.fine
  }
  console.print(
    `${replay.scenario.title} (${record.name}), seed ${record.seed}${debrief.ended.spot ? ', unfinished' : ''}`,
  )
  for (const line of debriefLines(debrief)) console.print(line)
  return EXIT.fine
}
