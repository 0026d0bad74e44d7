import { blockTotal } from '../../sim/world/block/advance.js'
import { EXIT } from '../files/text/exit-codes.js'
import { jsonText } from '../files/text/json.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { visibleLine } from '../files/text/visible-text.js'
import { readRecord } from '../store/record.js'
import { replayRecord } from '../store/replay.js'
import { type CommandConsole, printText } from './console/console.js'

interface Verified {
  readonly record: string
  readonly same: boolean
  readonly words: string
  readonly total: number | null
}

/** Replays records: each comes out the same to the pin, or is told where it does not. */
export async function verifyCommand(
  paths: readonly string[],
  options: { readonly json?: boolean },
  console: CommandConsole,
): Promise<number> {
  const verified: Verified[] = []
  for (const path of paths) {
    const one = await verifyOne(path)
    verified.push(one)
    if (!options.json) printText(console, one.words)
  }
  if (options.json) printText(console, jsonText({ verified }))
  return verified.every(({ same }) => same) ? EXIT.fine : EXIT.checkFailed
}

async function verifyOne(path: string): Promise<Verified> {
  try {
    const record = await readRecord(path)
    const { states } = replayRecord(record, path)
    const ended = states[states.length - 1]
    const total = blockTotal(ended)
    const score = ended.balls.length === 0 ? 'nothing scored' : `${ended.spot ? 'so far' : 'total'} ${total}`
    const words = visibleLine(`${path}: the same, ${ended.throws.length} throws, ${score}`)
    return { record: path, same: true, words, total }
  } catch (fault) {
    if (!(fault instanceof ScenarioError) || fault.missing) throw fault
    return { record: path, same: false, words: fault.sentences.map(visibleLine).join('\n'), total: null }
  }
}
