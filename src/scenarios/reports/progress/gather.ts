import type { CalledThrow } from '../../../sim/analysis/debrief/calls.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { textAt } from '../../files/text/text-at.js'
import { practiceSummary } from '../../practice/practice-summary.js'
import { type BlockNotes, readNotes } from '../../store/block-notes.js'
import { debriefsFolder, saidOfRecord } from '../../store/data-folder.js'
import { readKeptAccount } from '../../store/kept-account.js'
import { inOrderOfPlay } from '../review/period.js'
import { nameKey } from '../review/player-names.js'
import { type Begun, pricedBlocks } from '../review/price-in-threads.js'
import { blockIfPriced, blockWithoutNotes, type ReviewedBlock } from '../review/reviewed-block.js'
import { standingBlocks } from '../review/standing-blocks.js'
import type { ProgressSources } from './progress-report.js'

interface Gathering {
  readonly data: string
  /** Whose progress it is; blocks that carry another name are left out. Everybody's where nobody has said. */
  readonly player: string | undefined
  /** Prices what is not priced yet, which takes its time; what is not is left out and counted where this is left out. */
  readonly pricing?: Begun
}

interface Gathered extends ProgressSources {
  /** Why files were left out, one sentence each. */
  readonly faults: readonly string[]
}

const PERCENT = 100

/** Reads records and what is kept of them for somebody's progress; files that cannot be read are told of and left out. */
export async function gatherProgress(paths: readonly string[], gathering: Gathering): Promise<Gathered> {
  const { data, player, pricing } = gathering
  const cache = debriefsFolder(data)
  const blocks: ReviewedBlock[] = []
  const faults: string[] = []
  let unpriced = 0
  const priced = pricing ? await pricedBlocks(paths, cache, pricing) : null
  for (const [place, path] of paths.entries()) {
    try {
      const block =
        priced?.get(path) ?? (await blockAt(path, cache, pricing?.(`record ${place + 1} of ${paths.length}`)))
      if (block === null) unpriced++
      else if (isOf(block, player)) blocks.push(block)
    } catch (fault) {
      if (!(fault instanceof ScenarioError)) throw fault
      faults.push(...fault.sentences)
    }
    await turn()
  }
  const { standing } = standingBlocks(inOrderOfPlay(blocks))
  const calls = (await Promise.all(standing.map((block) => callsOf(block, cache)))).flat()
  const practice = await practiceSummary(data, player).catch((fault: unknown) => {
    if (!(fault instanceof ScenarioError)) throw fault
    faults.push(...fault.sentences)
    return null
  })
  return { blocks: standing, calls, unpriced, practice, faults }
}

async function blockAt(
  path: string,
  cache: string,
  progress: ReturnType<Begun> | undefined,
): Promise<ReviewedBlock | null> {
  if (!progress) return blockIfPriced(path, cache)
  try {
    return await blockWithoutNotes(path, cache, progress.reached)
  } finally {
    progress.over()
  }
}

/** Lets whatever waits be done between two records. */
const turn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve))

function isOf({ record }: ReviewedBlock, player: string | undefined): boolean {
  if (record.origin.cameToBe === 'auto') return false
  return player === undefined || record.player === undefined || nameKey(record.player) === nameKey(player)
}

/** The reactions called in a block and what came of them; none where the block's account is not kept. */
async function callsOf({ path, record }: ReviewedBlock, cache: string): Promise<CalledThrow[]> {
  const notes = await notesOf(path)
  if (!notes?.calls.some((call) => call !== null)) return []
  const account = (await readKeptAccount(cache, record))?.account
  if (!account) return []
  return account.throws.flatMap(({ observation, contactChances }, index) => {
    const call = notes.calls[index]
    if (!call || !contactChances) return []
    const sureShare = call.confidencePercent / PERCENT
    return [{ called: call.contact, sureShare, came: observation.contact, chances: contactChances }]
  })
}

async function notesOf(path: string): Promise<BlockNotes | null> {
  const said = saidOfRecord(path)
  const text = said === null ? null : await textAt(said).catch(() => null)
  return text === null ? null : readNotes(text)
}
