import { randomBytes } from 'node:crypto'
import type { PricedFairGrade } from '../../sim/analysis/grade/grade-types.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { withBallsTaken } from '../files/scenario/take-balls.js'
import type { WriteError } from '../files/text/atomic-write.js'
import { EXIT, SIGNAL_EXIT } from '../files/text/exit-codes.js'
import { readTextFile } from '../files/text/read-text-file.js'
import { ScenarioError } from '../files/text/scenario-error.js'
import { loadScenario } from '../library/load.js'
import { openingLines } from '../plain/opening-lines.js'
import { playLines } from '../plain/play-lines.js'
import { sameLuckLines, workedComparison } from '../plain/same-luck-lines.js'
import { type BlockStore, blockStore } from '../store/block-store.js'
import { dataFolder, debriefsFolder } from '../store/data-folder.js'
import { keepAccount } from '../store/kept-account.js'
import { COMPARISONS, keepFigures, readFigures } from '../store/kept-figures.js'
import type { OpenBlock } from '../store/open-block.js'
import { nameIfReadable } from '../store/player-name.js'
import { recordOf } from '../store/record.js'
import { laneOfToday } from '../store/today.js'
import { LANE_OF_THE_DAY_ABOUT } from '../words/same-luck-words.js'
import type { CommandConsole } from './console/console.js'
import { progressOn } from './console/progress.js'
import { type BlockBefore, blockBefore } from './play-against.js'

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

const DEFAULT_SCENARIO = 'house-forty'

/** A block line by line; each throw is on the disk before its result is told, and however it ends a record is kept. */
export async function playCommand(
  name: string | undefined,
  options: PlayOptions,
  console: CommandConsole,
): Promise<number> {
  const data = dataFolder(options.data, console.environment)
  const store = blockStore(data)
  const player = await nameIfReadable(options.player, console.environment, console.tell)
  const script = options.script === undefined ? null : await scriptLines(options.script)
  const rival = options.against === undefined ? null : await blockBefore(options.against)
  const block =
    options.resume === undefined
      ? await newBlock(await lanesOf(name, options, rival, console), options, player, store)
      : await resumedBlock(options.resume, player, store, console)
  try {
    // Nobody should play a block for nothing.
    await store.tryOut()
    if (options.resume === undefined) for (const sentence of await offerOf(store)) console.tell(sentence)
    for (const line of openingLines(block.scenario, block.begun.seed)) console.print(line)
    if (block.begun.throws.length > 0) console.print(`It goes on after ${block.begun.throws.length} throws.`)
    if (block.begun.spot) console.print('Type ? for what you can say.')
    const grades: Grade[] = block.begun.throws.map(() => undefined)
    const state = await playOn(block, script, options, console, (grade) => grades.push(grade), rival)
    await fileBlock(block, { state, grades, data }, console)
    if (options.compare && !console.stoppedBy()) await compare(block.scenario, state, data, console)
  } finally {
    await block.leave()
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

/** Lanes and, where they are settled with them, the seed. */
interface Lanes {
  readonly scenario: Scenario
  readonly seed?: string
}

async function lanesOf(
  name: string | undefined,
  { today }: PlayOptions,
  rival: BlockBefore | null,
  console: CommandConsole,
): Promise<Lanes> {
  if (rival) {
    console.print('Against a block bowled before: each of its throws is said once you have made yours.')
    return { scenario: rival.scenario, seed: rival.block.seed }
  }
  if (!today) return { scenario: await loadScenario(name ?? DEFAULT_SCENARIO) }
  const { date, scenarioName, seed } = laneOfToday()
  console.print(`Lane of the day ${date}. ${LANE_OF_THE_DAY_ABOUT}`)
  return { scenario: await loadScenario(scenarioName), seed }
}

/** Says what others score on the block's luck, as kept or worked out now. */
async function compare(scenario: Scenario, state: BlockState, data: string, console: CommandConsole): Promise<void> {
  const folder = debriefsFolder(data)
  const of = { scenario, asked: state.seed }
  let comparison = await readFigures(folder, COMPARISONS, of)
  if (!comparison) {
    const progress = progressOn(console, 'bowling the block by rule of thumb and by both bests, percent')
    comparison = workedComparison(beginScenario(scenario, state.seed), (percent) => progress.reached(percent, 100))
    progress.over()
    await keepFigures(folder, COMPARISONS, of, comparison)
  }
  for (const line of sameLuckLines(state, comparison)) console.print(line)
}

async function newBlock(
  { scenario: lanes, seed: settled }: Lanes,
  { take, seed }: PlayOptions,
  player: string | undefined,
  store: BlockStore,
): Promise<OpenBlock> {
  const scenario = withBallsTaken(lanes, take?.split(','))
  const begun = beginScenario(scenario, settled ?? seed ?? freshSeed())
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

async function playOn(
  { begun, keep }: OpenBlock,
  script: readonly string[] | null,
  options: PlayOptions,
  console: CommandConsole,
  graded: (grade: Grade) => void,
  rival: BlockBefore | null,
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
    notKept: (fault) => notThrown(fault, console),
    grade: options.grade,
    graded,
    ...(rival ? { rival: rival.block } : {}),
  })
}

interface PlayedOn {
  readonly state: BlockState
  readonly grades: readonly Grade[]
  readonly data: string
}

async function fileBlock(open: OpenBlock, { state, grades, data }: PlayedOn, console: CommandConsole): Promise<void> {
  if (state.spot) console.print('The block stops here, unfinished.')
  if (state.throws.length === 0) return
  const path = await open.file(state).catch((fault: unknown) => {
    console.tell('What was thrown is kept all the same. To go on once it can be filed: dryboard play --resume')
    throw fault
  })
  const record = recordOf(open.scenario, state, { madeBy: open.madeBy })
  if (grades.some((grade) => grade)) await keepAccount(debriefsFolder(data), record, { grades, account: null })
  console.tell(`Record kept: ${path}`)
  if (state.spot) console.tell(`To go on with it: dryboard play --resume ${path}`)
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
