import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { BlockState } from '../../sim/world/block/types.js'
import type { DrillPosition } from '../drills/load-drill.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { historyLines } from '../plain/history-lines.js'
import { openingLines } from '../plain/opening-lines.js'
import { playLines } from '../plain/play-lines.js'
import { sharedLines } from '../plain/shared-lines.js'
import { drillNamed } from '../practice/library-drill.js'
import { type BlockStore, blockStore } from '../store/block-store.js'
import { dataFolder, debriefsFolder, withDataFolder } from '../store/data-folder.js'
import { keepAccount } from '../store/kept-account.js'
import { nameIfReadable } from '../store/player-name.js'
import { recordOf } from '../store/record.js'
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
  const drill = await drillNamed(path)
  const count = drill.positions.length
  if (options.check) {
    console.print(`${path}: fine, ${count} position${count === 1 ? '' : 's'}`)
    return EXIT.fine
  }
  const data = dataFolder(options.data, console.environment)
  const player = await nameIfReadable(options.player, withDataFolder(console.environment, options.data), console.tell)
  const store = blockStore(data)
  await store.tryOut()
  console.print(drill.title)
  const play = { player, store, data, console, typed: console.lines()[Symbol.asyncIterator]() }
  const costs: number[] = []
  let toldScenario = ''
  for (const [index, position] of drill.positions.entries()) {
    console.print('')
    console.print(`Position ${index + 1} of ${count}`)
    const isNew = position.scenario.name !== toldScenario
    toldScenario = position.scenario.name
    const { ended, kept, grades } = await playPosition(position, isNew, play)
    costs.push(...grades.flatMap((grade) => (grade ? [grade.givenAwayPins] : [])))
    const thrown = ended.throws.length - position.state.throws.length
    const isAnswered = thrown >= position.throws || !ended.spot
    if (isAnswered) for (const line of wrapped(position.lookFor, 'Look for: ')) console.print(line)
    if (kept !== null) console.tell(`Record kept: ${kept}`)
    if (!isAnswered) break
  }
  for (const line of totalLines(costs)) console.print(line)
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

/** What all choices of the drill came to; nothing where none was priced. */
function totalLines(costs: readonly number[]): string[] {
  if (costs.length === 0) return []
  const pins = costs.reduce((sum, cost) => sum + cost, 0)
  const good = costs.filter((cost) => cost === 0).length
  const choices = costs.length === 1 ? '1 choice' : `${costs.length} choices`
  return ['', `${choices}, ${good} as good as the best: cost ${pins.toFixed(1)} pins in all.`]
}

interface DrillPlay {
  readonly player: string | undefined
  readonly store: BlockStore
  readonly data: string
  readonly console: CommandConsole
  readonly typed: AsyncIterator<string>
}

type Grade = PricedFairGrade | null | undefined

/** What was thrown before is given; each answer is on the disk before its result is told. */
async function playPosition(
  { scenario, state, throws }: DrillPosition,
  isNewScenario: boolean,
  { player, store, data, console, typed }: DrillPlay,
): Promise<{ readonly ended: BlockState; readonly kept: string | null; readonly grades: readonly Grade[] }> {
  if (isNewScenario) for (const line of openingLines(scenario, state.seed)) console.print(line)
  else console.print(`${scenario.title}, as before; seed ${state.seed}`)
  for (const line of historyLines(state)) console.print(line)
  const last = state.throws.length + throws
  const open = store.begin({ scenario, begun: state, player, cameToBe: 'drill' })
  const grades: Grade[] = []
  try {
    const ended = await playLines(state, {
      lines: sharedLines(typed),
      say: console.print,
      object: console.print,
      keep: open.keep,
      notKept: (fault) => notThrown(fault, console),
      grade: true,
      graded: (grade) => grades.push(grade),
      enough: ({ throws: thrown }) => thrown.length >= last,
    })
    if (ended.throws.length === state.throws.length) return { ended, kept: null, grades }
    const kept = await open.file(ended)
    const record = recordOf(scenario, ended, { madeBy: open.madeBy })
    const all = [...state.throws.map(() => undefined), ...grades]
    await keepAccount(debriefsFolder(data), record, { grades: all, account: null })
    return { ended, kept, grades }
  } finally {
    await open.leave()
  }
}
