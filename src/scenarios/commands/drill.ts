import type { BlockState } from '../../sim/world/block/types.js'
import { type DrillPosition, LOOK_FOR_TO_WRITE, loadDrill } from '../drills/load-drill.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { openingLines } from '../plain/opening-lines.js'
import { answerLines, playLines } from '../plain/play-lines.js'
import { LIBRARY_PREFIX, libraryDrill } from '../practice/library-drill.js'
import { type BlockStore, blockStore } from '../store/block-store.js'
import { dataFolder } from '../store/data-folder.js'
import { nameIfReadable } from '../store/player-name.js'
import { fileStem } from '../store/record.js'
import { wrapped } from '../words/wrapped.js'
import type { CommandConsole } from './console/console.js'
import { notThrown } from './play.js'

export interface DrillOptions {
  /** Only says whether the drill can be played. */
  readonly check?: boolean
  readonly data?: string
  readonly player?: string
}

/** The positions of a drill one after the other, line by line: what was seen, a decision, its grade, the result and what to look for. */
export async function drillCommand(path: string, options: DrillOptions, console: CommandConsole): Promise<number> {
  const drill = path.startsWith(LIBRARY_PREFIX) ? await libraryDrill(path) : await loadDrill(path)
  const count = drill.positions.length
  if (options.check) {
    console.print(`${path}: fine, ${count} position${count === 1 ? '' : 's'}`)
    drill.positions.forEach(({ lookFor }, index) => {
      if (lookFor.endsWith(LOOK_FOR_TO_WRITE)) console.print(`  position ${index + 1}: lookFor is yet to be written`)
    })
    return EXIT.fine
  }
  const player = await nameIfReadable(options.player, console.environment, console.tell)
  const store = blockStore(dataFolder(options.data, console.environment))
  await store.tryOut()
  console.print(drill.title)
  const typed = console.lines()[Symbol.asyncIterator]()
  for (const [index, position] of drill.positions.entries()) {
    console.print('')
    console.print(`Position ${index + 1} of ${count}`)
    const { ended, kept } = await playPosition(position, player, store, typed, console)
    const thrown = ended.throws.length - position.state.throws.length
    const isAnswered = thrown >= position.throws || !ended.spot
    if (isAnswered) for (const line of wrapped(position.lookFor, 'Look for: ')) console.print(line)
    if (kept !== null) {
      const stem = fileStem({ name: position.scenario.name, seed: ended.seed })
      console.tell(`Record of ${stem} kept: ${kept}`)
    }
    if (!isAnswered) break
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

/** What was thrown before is given; each answer is on the disk before its result is told. */
async function playPosition(
  { scenario, state, throws }: DrillPosition,
  player: string | undefined,
  store: BlockStore,
  typed: AsyncIterator<string>,
  console: CommandConsole,
): Promise<{ readonly ended: BlockState; readonly kept: string | null }> {
  for (const line of openingLines(scenario, state.seed)) console.print(line)
  for (const line of answerLines(state, 'seen')) console.print(line)
  const last = state.throws.length + throws
  const open = store.begin({ scenario, begun: state, player, cameToBe: 'drill' })
  try {
    const ended = await playLines(state, {
      lines: shared(typed),
      say: console.print,
      object: console.print,
      keep: open.keep,
      notKept: (fault) => notThrown(fault, console),
      grade: true,
      enough: ({ throws: thrown }) => thrown.length >= last,
    })
    return { ended, kept: ended.throws.length > state.throws.length ? await open.file(ended) : null }
  } finally {
    await open.leave()
  }
}

/** Lines of a common source: who stops reading leaves the rest for who comes next. */
async function* shared(typed: AsyncIterator<string>): AsyncIterable<string> {
  for (;;) {
    const { done, value } = await typed.next()
    if (done) return
    yield value
  }
}
