import { randomBytes } from 'node:crypto'
import type { BlockState } from '../../sim/world/block/types.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { openingLines } from '../plain/opening-lines.js'
import { playLines } from '../plain/play-lines.js'
import { dataFolder, recordsFolder } from '../store/data-folder.js'
import { playerName } from '../store/player-name.js'
import { recordOf, writeRecord } from '../store/record.js'
import { type BlockKeeping, freshBlock, offerOf, resumedBlock } from '../store/take-up.js'
import type { CommandConsole } from './console/console.js'

export interface PlayOptions {
  readonly seed?: string
  readonly script?: string
  /** Ids or places of the balls taken along, with commas between. */
  readonly take?: string
  readonly data?: string
  readonly player?: string
  /** Whether each choice is priced before it is thrown. */
  readonly grade: boolean
  /** True for what was left last time, or a record's path. */
  readonly resume?: string | true
}

const DEFAULT_SCENARIO = 'house-forty'

/** A block line by line; each throw is on the disk before its result is told, and however it ends a record is kept. */
export async function playCommand(
  name: string | undefined,
  options: PlayOptions,
  console: CommandConsole,
): Promise<number> {
  const data = dataFolder(options.data, console.environment)
  const player = await playerName(options.player, console.environment)
  const script = options.script === undefined ? null : await scriptLines(options.script)
  const block =
    options.resume === undefined
      ? await freshBlock(name ?? DEFAULT_SCENARIO, options.seed ?? freshSeed(), data, player, options.take?.split(','))
      : await resumedBlock(options.resume, data, player)
  if (options.resume === undefined) for (const sentence of await offerOf(data)) console.tell(sentence)
  for (const line of openingLines(block.scenario, block.begun.seed)) console.print(line)
  if (block.begun.throws.length > 0) console.print(`It goes on after ${block.begun.throws.length} throws.`)
  if (block.begun.spot) console.print('Type ? for what you can say.')
  try {
    await keepRecord(block, await playOn(block, script, options, console), data, console)
  } finally {
    await block.leave()
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

async function playOn(
  { begun, keep }: BlockKeeping,
  script: readonly string[] | null,
  options: PlayOptions,
  console: CommandConsole,
): Promise<BlockState> {
  if (!begun.spot) return begun
  let at = 0
  return playLines(begun, {
    lines: script ? counted(script, (number) => (at = number)) : console.lines(),
    say: console.print,
    object: (sentence) => {
      if (options.script !== undefined) throw new ScenarioError([`${options.script}:${at}: ${sentence}`])
      console.print(sentence)
    },
    keep,
    grade: options.grade,
  })
}

async function keepRecord(
  { scenario, player, done }: BlockKeeping,
  state: BlockState,
  data: string,
  console: CommandConsole,
): Promise<void> {
  if (state.spot) console.print('The block stops here, unfinished.')
  if (state.throws.length === 0) return
  const path = await writeRecord(recordOf(scenario, state, player), recordsFolder(data))
  await done(path)
  console.tell(`Record kept: ${path}`)
  if (state.spot) console.tell(`To go on with it: dryboard play --resume ${path}`)
}

/** A seed nobody has seen, short enough to read out. */
function freshSeed(): string {
  return randomBytes(5).toString('hex')
}

async function scriptLines(path: string): Promise<string[]> {
  const lines = (await readTextFile(path)).split(/\r?\n/)
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines
}

async function* counted(lines: readonly string[], reached: (number: number) => void): AsyncIterable<string> {
  for (const [index, line] of lines.entries()) {
    reached(index + 1)
    yield line
  }
}
