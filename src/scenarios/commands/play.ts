import { randomBytes } from 'node:crypto'
import { type Account, accountSteps } from '../../sim/analysis/debrief/account.js'
import { type Settling, settling } from '../../sim/analysis/debrief/settling.js'
import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { withBallsTaken } from '../files/scenario/take-balls.js'
import type { WriteError } from '../files/text/atomic-write.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { openingLines } from '../plain/opening-lines.js'
import { playLines } from '../plain/play-lines.js'
import { whileWaiting } from '../plain/while-waiting.js'
import { isBlockOver } from '../store/block-over.js'
import { type BlockStore, blockStore } from '../store/block-store.js'
import { dataFolder, debriefsFolder, withDataFolder } from '../store/data-folder.js'
import { keepAccount } from '../store/kept-account.js'
import type { OpenBlock } from '../store/open-block.js'
import { nameIfReadable } from '../store/player-name.js'
import { recordOf } from '../store/record.js'
import { refuseSealedLane } from '../store/sealed-lanes.js'
import { HELD_BACK_WORDS } from '../words/contest-words.js'
import type { CommandConsole } from './console/console.js'
import { type BlockBefore, blockBefore, compare, type Lanes, lanesOf } from './play-lanes.js'

export interface PlayOptions {
  readonly seed?: string
  readonly script?: string
  /** Ids or places of the balls taken along, with commas between. */
  readonly take?: string
  readonly data?: string
  readonly player?: string
  /** Whether each choice is priced before it is thrown. */
  readonly grade: boolean
  /** The lane of the day in place of a scenario and a seed. */
  readonly today?: boolean
  /** The path of a record whose lane and luck are bowled again, against it. */
  readonly against?: string
  /** Whether to say afterwards what others score on the same luck. */
  readonly compare?: boolean
  /** True for what was left last time, the name of a block that was left, or a record's path. */
  readonly resume?: string | true
}

/** Undefined where nobody asked, null where a throw is not priced. */
type Grade = PricedFairGrade | null | undefined

const MOST_UNSETTLED = 2
/** A block line by line; each throw is on the disk before its result is told, and however it ends a record is kept. */
export async function playCommand(
  name: string | undefined,
  options: PlayOptions,
  console: CommandConsole,
): Promise<number> {
  const data = dataFolder(options.data, console.environment)
  const store = blockStore(data)
  const player = await nameIfReadable(options.player, withDataFolder(console.environment, options.data), console.tell)
  const script = options.script === undefined ? null : await scriptLines(options.script)
  const rival = options.against === undefined ? null : await blockBefore(options.against, data)
  const block =
    options.resume === undefined
      ? await newBlock(await lanesOf(name, options, rival, console), options, player, { store, data })
      : await resumedBlock(options.resume, player, store, console)
  try {
    // Nobody should play a block for nothing.
    await store.tryOut()
    if (options.resume === undefined) for (const sentence of await offerOf(store)) console.tell(sentence)
    const isEntry = block.contest !== undefined
    for (const line of openingLines(block.scenario, isEntry ? null : block.begun.seed)) console.print(line)
    if (isEntry) console.print(HELD_BACK_WORDS)
    if (block.begun.throws.length > 0) console.print(`It goes on after ${block.begun.throws.length} throws.`)
    if (block.begun.spot) console.print('Type ? for what you can say.')
    const grades: Grade[] = block.begun.throws.map(() => undefined)
    const behind = console.interactive && options.grade && !isEntry ? settling(block.begun) : null
    const state = await playOn(block, { script, options, grades, behind, rival }, console)
    if (isEntry && state.spot)
      console.print('The entry stops here, unfinished; it goes on where it stands, and says so.')
    else await fileBlock(block, { state, grades, behind, data }, console)
    if (options.compare && !isEntry && !console.stoppedBy()) await compare(block.scenario, state, data, console)
  } finally {
    await block.leave()
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

async function newBlock(
  { scenario: lanes, seed: settled }: Lanes,
  { take, seed }: PlayOptions,
  player: string | undefined,
  { store, data }: { readonly store: BlockStore; readonly data: string },
): Promise<OpenBlock> {
  refuseSealedLane(data, lanes)
  const scenario = withBallsTaken(lanes, take?.split(','))
  const begun = beginScenario(scenario, settled ?? seed ?? scenario.data.seed ?? freshSeed())
  return store.begin({ scenario, begun, player, cameToBe: 'played' })
}

async function resumedBlock(
  from: string | true,
  player: string | undefined,
  store: BlockStore,
  console: CommandConsole,
): Promise<OpenBlock> {
  const { open, passedOver } = await store.resume(from, player)
  for (const sentence of passedOver) console.tell(sentence)
  return open
}

/** What can be gone on with, one sentence a block; nothing where nothing was left. Files that cannot be read are named and left. */
async function offerOf(store: BlockStore): Promise<string[]> {
  const { blocks, refused } = await store.left()
  return [
    ...blocks.map(
      ({ name, record }, place) =>
        `${place === 0 ? 'A block' : 'An earlier one'} on ${record.name} was left after ${record.decisions.length} throws. To go on with it: dryboard play --resume${place === 0 ? '' : ` ${name}`}`,
    ),
    ...refused.flatMap(({ fault }) => fault.sentences),
  ]
}

export interface PlayingOn {
  readonly script: readonly string[] | null
  readonly options: PlayOptions
  /** By the throw's number; filled as it goes. */
  readonly grades: Grade[]
  /** Works the account out while the player thinks; null where nobody thinks, or nothing is priced. */
  readonly behind: Settling | null
  readonly rival: BlockBefore | null
  /** What is typed; the console's own lines where left out. */
  readonly lines?: AsyncIterable<string>
}

/** Plays an open block line by line until it is over or left; what a test does not tell is worked out all the same. */
export async function playOn(
  { begun, keep, contest, cameToBe }: OpenBlock,
  { script, options, grades, behind, rival, lines }: PlayingOn,
  console: CommandConsole,
): Promise<BlockState> {
  if (isBlockOver(cameToBe, begun)) return begun
  const typed = () => lines ?? console.lines()
  let at = 0
  return playLines(begun, {
    lines: script ? counted(script, (number) => (at = number)) : behind ? whileWaiting(typed(), behind.step) : typed(),
    say: console.print,
    object: (sentence) => {
      if (options.script !== undefined) throw new ScenarioError([`${options.script}:${at}: ${sentence}`])
      console.print(sentence)
    },
    keep,
    notKept: (fault) => notThrown(fault, console),
    grade: contest === undefined && options.grade && (cameToBe === 'short-block' ? 'quietly' : true),
    enough: (state) => isBlockOver(cameToBe, state),
    graded: (grade) => grades.push(grade),
    thrown: (before, after) => behind?.thrown(before, after, grades.at(-1)),
    ...(rival ? { rival: rival.block } : {}),
  })
}

export interface PlayedOn {
  readonly state: BlockState
  readonly grades: readonly Grade[]
  readonly behind: Settling | null
  readonly data: string
}

/** Files an open block as far as it was played, with what was worked out of it, and says where. */
export async function fileBlock(
  open: OpenBlock,
  { state, grades, behind, data }: PlayedOn,
  console: CommandConsole,
): Promise<void> {
  const isOver = isBlockOver(open.cameToBe, state)
  if (!isOver) console.print('The block stops here, unfinished.')
  if (state.throws.length === 0) return
  const path = await open.file(state).catch((fault: unknown) => {
    console.tell('What was thrown is kept all the same. To go on once it can be filed: dryboard play --resume')
    throw fault
  })
  const record = recordOf(open.scenario, state, { madeBy: open.madeBy })
  if (grades.some((grade) => grade))
    await keepAccount(debriefsFolder(data), record, { grades, account: settledAccount(state, grades, behind) })
  console.tell(`Record kept: ${path}`)
  if (!isOver) console.tell(`To go on with it: dryboard play --resume ${path}`)
}

/** The whole account where only the last throw or two are missing from it; else it can wait until somebody asks. */
function settledAccount(state: BlockState, grades: readonly Grade[], behind: Settling | null): Account | null {
  const soFar = behind?.soFar()
  if (!soFar || state.throws.length - soFar.throws.length > MOST_UNSETTLED) return null
  const steps = accountSteps(state, { grades }, soFar)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

/** Whoever sits at the keys can make room and throw again; a script cannot. */
export function notThrown(fault: WriteError, { interactive, print }: CommandConsole): void {
  if (!interactive) throw fault
  print(`Not kept, so not thrown: ${fault.reason}. Throw again once that is mended.`)
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
