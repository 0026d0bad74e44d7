import type { BlockState, ThrowRecord } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { isThere, WriteError, writeUnderFreeName } from '../files/text/atomic-write.js'
import type { FileLayer } from '../files/text/file-layer.js'
import { localTime } from '../files/text/local-time.js'
import { replaceFile } from '../files/text/replace-file.js'
import type { ContestSection } from './contest-section.js'
import { withEntrySignature } from './entry-key.js'
import { createJournal, type Journal, TakenOverError, unlinkIfThere } from './journal-file.js'
import { draftPath, namedBy, saidPath } from './journal-names.js'
import { noteOpening } from './openings.js'
import { type Beginning, type CameToBe, isPlayersOwn, type MadeBy } from './origin.js'
import { type BlockRecord, blockNames, keptDecision, recordOf, recordStem, recordText } from './record.js'
import { JOURNAL_FORMAT, JOURNAL_VERSION, type JournalHead, type KeptDecision } from './record-schema.js'

/** Where a block's files lie, and by what they are kept. */
export interface KeptIn {
  readonly data: string
  readonly journals: string
  readonly records: string
  /** Where what was said of a block lies once it is filed, by its record's path. */
  readonly saidWith: (recordPath: string) => string
  readonly files: FileLayer
  readonly now: () => Date
}

/** A block in play: which one, whose, and as far as it is kept. */
export interface OpenBlock {
  readonly scenario: Scenario
  readonly begun: BlockState
  readonly block: string
  readonly cameToBe: CameToBe
  readonly player: string | undefined
  /** What contest it is an entry of; undefined where it is none. */
  readonly contest: ContestSection | undefined
  /** By the throw's number, of those that are kept. */
  readonly madeBy: readonly MadeBy[]
  /** Of the same throws: whether what it cost is the player's own. */
  ownThrows(): boolean[]
  /** What the player had said of it when it was opened, as text; null where nothing. */
  readonly said: string | null
  /**
   * Puts a throw on the disk: only then may its result be shown. One that could not be kept may be put again.
   *
   * @throws WriteError
   */
  keep(thrown: ThrowRecord, by?: MadeBy): Promise<void>
  /** Keeps what the player says of the block while it is played. @throws WriteError */
  keepSaid(text: string): Promise<void>
  /**
   * Files the block, over or stopped, as a record with what was said of it, and takes its journal away. Where nothing was thrown
   * since the record it goes on from, that one stands.
   *
   * @param vouch adds what a host says of an entry, before the entry's own signature
   * @returns the record's path
   * @throws WriteError; the journal then stays
   */
  file(state: BlockState, said?: string, vouch?: (record: BlockRecord) => BlockRecord): Promise<string>
  /** Leaves the block as it stands for next time. */
  leave(): Promise<void>
  /** Takes away what is kept of it while it is played. */
  discard(): Promise<void>
}

export interface BlockToOpen {
  readonly scenario: Scenario
  readonly begun: BlockState
  readonly block: string
  readonly player: string | undefined
  readonly contest?: ContestSection | undefined
  readonly beginning: Omit<Beginning, 'openedBefore'>
  /** Null where it is only known once the block is begun. */
  readonly openedBefore: number | null
  readonly madeBy: readonly MadeBy[]
  readonly said: string | null
  /** Null where it has none yet: one begins with the first throw. */
  readonly journal: Journal | null
  /** The player's own record that it goes on from; null where there is none. */
  readonly filedAs: string | null
}

/** A journal's first line. */
export function journalHead(
  { scenario, begun, block, player, contest }: Pick<BlockToOpen, 'scenario' | 'begun' | 'block' | 'player' | 'contest'>,
  origin: Beginning,
): JournalHead {
  const format = { format: JOURNAL_FORMAT, version: JOURNAL_VERSION } as const
  const entry = contest === undefined ? {} : { contest }
  return { ...format, block, origin, ...blockNames(scenario, begun.seed, player), ...entry }
}

/** Opens a block on what is kept of it; see OpenBlock. */
export function openBlock(toOpen: BlockToOpen, kept: KeptIn): OpenBlock {
  const { scenario, begun, block, player, contest, said } = toOpen
  const { files } = kept
  const lines: KeptDecision[] = begun.throws.map((thrown, index) =>
    keptDecision(thrown, toOpen.madeBy[index] ?? 'unknown'),
  )
  let { journal, openedBefore } = toOpen

  const { cameToBe, begun: begunAt, copyOf } = toOpen.beginning
  const origin = (): Beginning => ({ cameToBe, begun: begunAt, openedBefore, copyOf })

  const noteBeginning = async (): Promise<void> => {
    if (toOpen.beginning.cameToBe === 'unknown' || openedBefore !== null) return
    openedBefore = await noteOpening(kept.data, blockKey(scenario, begun.seed), files)
  }

  const begin = async (): Promise<Journal> => {
    await noteBeginning()
    const made = await createJournal(kept.journals, journalHead(toOpen, origin()), lines, files)
    if (said !== null) await replaceFile(saidPath(made.at), said).catch(() => {})
    return made
  }

  /** Somebody's clearing up of the folder is no reason to stop; somebody's going on with the block is. */
  const isPlayedElsewhere = async (at: Journal['at']): Promise<boolean> => {
    const names = await files.readdir(at.folder).catch(() => [])
    return names.some((name) => {
      const other = namedBy(name)
      return other?.ending === 'jsonl' && other.name === at.name
    })
  }

  return {
    scenario,
    begun,
    block,
    cameToBe,
    player,
    contest,
    said,
    get madeBy() {
      return lines.map(({ by }) => by)
    },
    ownThrows: () => lines.map(({ by }) => isPlayersOwn(by, toOpen.beginning.cameToBe)),
    async keep(thrown, by = 'player') {
      const line = keptDecision(thrown, by)
      lines.push(line)
      try {
        if (!journal) journal = await begin()
        else {
          try {
            await journal.append(line)
          } catch (fault) {
            if (!(fault instanceof TakenOverError) || (await isPlayedElsewhere(journal.at))) throw fault
            await journal.close()
            journal = await begin()
          }
        }
      } catch (fault) {
        lines.pop()
        throw fault
      }
    },
    async keepSaid(text) {
      if (journal) await replaceFile(saidPath(journal.at), text)
    },
    async file(state, told, vouch = (made) => made) {
      if (!journal && toOpen.filedAs !== null && lines.length === begun.throws.length) return toOpen.filedAs
      const isByPolicy = toOpen.beginning.cameToBe === 'auto'
      const madeBy = state.throws.map((_, index) => lines[index]?.by ?? (isByPolicy ? 'policy' : 'player'))
      if (!journal) await noteBeginning()
      const ended = localTime(kept.now())
      const named = player === undefined ? {} : { player }
      const about = { block, ...named, origin: { ...origin(), ended }, madeBy, contest }
      const record = await withEntrySignature(vouch(recordOf(scenario, state, about)), kept.data)
      const filing = journal
      const saidNow = told ?? (filing ? await textAt(saidPath(filing.at), files) : said)
      if (filing && saidNow !== null) await replaceFile(saidPath(filing.at), saidNow)
      const path = await writeUnderFreeName(
        {
          folder: kept.records,
          stem: recordStem(record),
          text: recordText(record),
          ...(filing ? { draft: draftPath(filing.at) } : {}),
          trying: async (name) => filing?.append({ filing: name }),
        },
        files,
      )
      journal = null
      // It is filed. What will not be done now is done when the journal, which names the record, is next come across.
      try {
        await fileSaid(saidNow, kept.saidWith(path), files)
        await filing?.remove()
      } catch {
        await filing?.close()
      }
      return path
    },
    async leave() {
      await journal?.close()
      journal = null
    },
    async discard() {
      await journal?.remove()
      journal = null
    },
  }
}

/** Puts what was said of a block beside its record, where nothing that was said of another may be left. @throws WriteError */
export async function fileSaid(said: string | null, path: string, files: FileLayer): Promise<void> {
  if (said === null) await unlinkIfThere(path, files)
  else await replaceFile(path, said)
}

const blockKey = (scenario: Scenario, seed: string) => {
  const { scenarioHash } = blockNames(scenario, seed)
  return { scenarioHash, seed }
}

/** What a file holds; null where there is none. */
export async function textAt(path: string, files: FileLayer): Promise<string | null> {
  if (!(await isThere(path, files).catch(() => false))) return null
  try {
    return await files.readFile(path, 'utf8')
  } catch (cause) {
    throw new WriteError(path, cause)
  }
}
