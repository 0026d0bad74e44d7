import type { BlockState } from '../../sim/world/block/types.js'
import { type DrillPosition, LOOK_FOR_TO_WRITE, loadDrill } from '../drills/load-drill.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { openingLines } from '../plain/opening-lines.js'
import { answerLines, playLines } from '../plain/play-lines.js'
import { dataFolder, recordsFolder } from '../store/data-folder.js'
import { playerName } from '../store/player-name.js'
import { fileStem, recordOf, writeRecord } from '../store/record.js'
import { wrapped } from '../words/wrapped.js'
import type { CommandConsole } from './console/console.js'

export interface DrillOptions {
  /** Only says whether the drill can be played. */
  readonly check?: boolean
  readonly data?: string
  readonly player?: string
}

/** The positions of a drill one after the other, line by line: what was seen, a decision, its grade, the result and what to look for. */
export async function drillCommand(path: string, options: DrillOptions, console: CommandConsole): Promise<number> {
  const drill = await loadDrill(path)
  const count = drill.positions.length
  if (options.check) {
    console.print(`${path}: fine, ${count} position${count === 1 ? '' : 's'}`)
    drill.positions.forEach(({ lookFor }, index) => {
      if (lookFor.endsWith(LOOK_FOR_TO_WRITE)) console.print(`  position ${index + 1}: lookFor is yet to be written`)
    })
    return EXIT.fine
  }
  const player = await playerName(options.player, console.environment)
  console.print(drill.title)
  const typed = console.lines()[Symbol.asyncIterator]()
  for (const [index, position] of drill.positions.entries()) {
    console.print('')
    console.print(`Position ${index + 1} of ${count}`)
    const ended = await playPosition(position, typed, console)
    const thrown = ended.throws.length - position.state.throws.length
    if (thrown < position.throws && ended.spot) break
    for (const line of wrapped(position.lookFor, 'Look for: ')) console.print(line)
    const record = recordOf(position.scenario, ended, player)
    const kept = await writeRecord(record, recordsFolder(dataFolder(options.data, console.environment)))
    console.tell(`Record of ${fileStem(record)} kept: ${kept}`)
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

async function playPosition(
  { scenario, state, throws }: DrillPosition,
  typed: AsyncIterator<string>,
  console: CommandConsole,
): Promise<BlockState> {
  for (const line of openingLines(scenario, state.seed)) console.print(line)
  for (const line of answerLines(state, 'seen')) console.print(line)
  const last = state.throws.length + throws
  return playLines(state, {
    lines: shared(typed),
    say: console.print,
    object: console.print,
    keep: async () => {},
    grade: true,
    enough: ({ throws: thrown }) => thrown.length >= last,
  })
}

/** Lines of a common source: who stops reading leaves the rest for who comes next. */
async function* shared(typed: AsyncIterator<string>): AsyncIterable<string> {
  for (;;) {
    const { done, value } = await typed.next()
    if (done) return
    yield value
  }
}
