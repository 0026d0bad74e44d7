import { basename, join } from 'node:path'
import type { BlockState } from '../../sim/world/block/types.js'
import type { Scenario } from '../files/scenario/scenario.js'
import { replaceFile } from '../files/text/replace-file.js'
import { setAside } from '../files/text/set-aside.js'
import { textAt } from '../files/text/text-at.js'
import { type BlockNotes, noNotes, notesText, readNotes } from './block-notes.js'
import { blockStore, type ResumedBlock } from './block-store.js'
import { dataFolder, debriefsFolder, saidWithRecord } from './data-folder.js'
import type { Keeper, PlayedBlock, ThrownBy } from './keeper.js'
import { keepAccount, readKeptAccount } from './kept-account.js'
import { AVERAGES, COMPARISONS, keepFigures, readFigures } from './kept-figures.js'
import type { OpenBlock } from './open-block.js'
import type { MadeBy } from './origin.js'
import { EMPTY_KIT, kitText, type OwnKit, readKit } from './own-kit.js'
import { PLAYER_VARIABLE } from './player-name.js'
import { ownThrows, readRecord, recordOf } from './record.js'
import { rememberedOf } from './remembered.js'
import { replayKnown, replayRecord } from './replay.js'
import { refuseSealedRecord } from './sealed-lanes.js'

/** What the command line says of where to keep blocks and who plays; what it leaves out is asked of the environment. */
export interface Said {
  readonly dataFolder?: string
  readonly player?: string
}

/**
 * Keeps the screen's blocks in the store that plain play keeps its own in, each found by the state of its block after the last throw
 * that is kept; own balls and bowler in a file of the kit.
 */
export function fileKeeper(environment: Readonly<Record<string, string | undefined>>, said: Said = {}): Keeper {
  const folder = dataFolder(said.dataFolder, environment)
  const player = said.player ?? (environment[PLAYER_VARIABLE] || undefined)
  const store = blockStore(folder)
  const debriefs = debriefsFolder(folder)
  const kitPath = join(folder, 'kit.json')
  const inTurn = queue()
  const inPlay = new Map<BlockState, OpenBlock>()

  const begin = (scenario: Scenario, begun: BlockState, { guest, cameToBe = 'played' }: ThrownBy = {}): OpenBlock =>
    store.begin({
      scenario,
      begun,
      player: guest ?? player,
      cameToBe,
      before: cameToBe === 'drill' ? 'given' : 'player',
    })

  const goOn = ({ states, scenario, open, passedOver }: ResumedBlock): PlayedBlock => {
    inPlay.set(states.at(-1)!, open)
    const played = {
      scenario,
      states,
      notes: notesOf(open.said),
      recordPath: null,
      passedOver,
      ownThrows: open.ownThrows(),
    }
    if (open.contest !== undefined) return { ...played, notes: noNotes('test'), contest: open.contest.title }
    return open.cameToBe === 'short-block' ? { ...played, notes: noNotes('test'), isShort: true } : played
  }

  return {
    tryOut: () => inTurn(store.tryOut),
    async leftBlocks() {
      const { blocks, refused } = await store.left()
      return {
        blocks: blocks.map((left) => ({
          title: left.record.scenario.title,
          throws: left.record.decisions.length,
          takeUp: async () => goOn(await store.takeUp(left, player)),
        })),
        problems: refused.flatMap(({ fault }) => fault.sentences),
      }
    },
    resume: async (from) => goOn(await store.resume(from, player)),
    adopt: (open, states) => goOn({ states, scenario: open.scenario, open, passedOver: [] }),
    keepThrow: (scenario, before, after, by) =>
      inTurn(async () => {
        const open = inPlay.get(before) ?? begin(scenario, before, by)
        inPlay.set(before, open)
        await open.keep(after.throws.at(-1)!)
        inPlay.delete(before)
        inPlay.set(after, open)
      }),
    keepSaid: (block, notes) => inTurn(async () => inPlay.get(block)?.keepSaid(notesText(notes))),
    file: (scenario, block, notes, guest) =>
      inTurn(async () => {
        const open = inPlay.get(block) ?? begin(scenario, block, guest === undefined ? {} : { guest })
        const path = await open.file(block, notesText(notes))
        inPlay.delete(block)
        return path
      }),
    keepNotes: (recordPath, notes) => inTurn(() => replaceFile(saidWithRecord(folder, recordPath), notesText(notes))),
    keepWorked: (scenario, block, worked, own) =>
      inTurn(() => {
        const madeBy = block.throws.map((_, index) => ((own?.[index] ?? true) ? 'player' : 'given') as MadeBy)
        return keepAccount(debriefs, recordOf(scenario, block, { madeBy }), worked)
      }),
    hasPast: store.hasPast,
    listPast: () => store.listPast(player),
    remembered: (past) => rememberedOf(folder, past),
    keptComparison: (scenario, seed) => readFigures(debriefs, COMPARISONS, { scenario, asked: seed }),
    keepComparison: (scenario, seed, comparison) =>
      inTurn(() => keepFigures(debriefs, COMPARISONS, { scenario, asked: seed }, comparison)),
    keptAverage: (scenario, games) => readFigures(debriefs, AVERAGES, { scenario, asked: String(games) }),
    keepAverage: (scenario, games, average) =>
      inTurn(() => keepFigures(debriefs, AVERAGES, { scenario, asked: String(games) }, average)),
    async openPast(path) {
      const record = await readRecord(path)
      refuseSealedRecord(folder, path, record)
      const notes = notesOf(await textAt(saidWithRecord(folder, path)).catch(() => null))
      const worked = await readKeptAccount(debriefs, record)
      const replay = worked ? replayKnown(record, path) : replayRecord(record, path)
      const { player: bowledBy = player } = record
      return {
        ...replay,
        notes,
        recordPath: path,
        ownThrows: ownThrows(record),
        ...(record.origin.cameToBe === 'short-block' ? { isShort: true } : {}),
        ...(bowledBy !== undefined && bowledBy !== player ? { bowledBy } : {}),
        ...(worked ? { worked } : {}),
      }
    },
    findKit: () => kitAt(kitPath),
    keepKit: (kit) =>
      inTurn(async () => {
        const { problem } = await kitAt(kitPath)
        const aside = problem === '' ? null : await setAside(kitPath)
        await replaceFile(kitPath, kitText(kit))
        return aside
      }),
    leave: () =>
      inTurn(async () => {
        await Promise.all([...inPlay.values()].map((open) => open.leave()))
        inPlay.clear()
      }),
  }
}

/** What the player said, as kept; nothing where there is none that this program understands. */
const notesOf = (said: string | null): BlockNotes => (said === null ? null : readNotes(said)) ?? noNotes('block')

async function kitAt(path: string): Promise<{ kit: OwnKit; problem: string }> {
  const unused = 'Your bag and bowler are not used, for'
  try {
    const text = await textAt(path)
    if (text === null) return { kit: EMPTY_KIT, problem: '' }
    const read = readKit(basename(path), text)
    if ('kit' in read) return { kit: read.kit, problem: '' }
    return { kit: EMPTY_KIT, problem: `${unused} ${read.problem}` }
  } catch (fault) {
    const code = (fault as NodeJS.ErrnoException).code ?? String(fault)
    return { kit: EMPTY_KIT, problem: `${unused} ${basename(path)} cannot be read (${code}).` }
  }
}

/** Does one thing after the other, so that an earlier state never lands on a later one; one that fails stops no other. */
function queue(): <Result>(work: () => Promise<Result>) => Promise<Result> {
  let last: Promise<unknown> = Promise.resolve()
  return (work) => {
    const done = last.then(work)
    last = done.catch(() => {})
    return done
  }
}
