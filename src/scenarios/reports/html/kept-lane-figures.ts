import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { replaceFile } from '../../files/text/replace-file.js'
import { debriefName } from '../../store/debrief-name.js'
import { replayRecord } from '../../store/replay.js'
import { sealedText, unsealed } from '../../store/sealed-text.js'
import type { ReviewedBlock } from '../review/reviewed-block.js'
import { laneFigures } from './lane-figures.js'
import { LANE_FIGURES_REVISION } from './lane-figures-revision.js'

const FORMAT = 'dryboard-lanes'
const VERSION = 1

/**
 * Pictures of the lanes of blocks, as a page has them. For each a block is played again, pins and all, which for a whole group takes far
 * longer than all the rest of a page; so each is kept in `folder` under what it comes from, how it is drawn among it.
 *
 * @param reached told of each block
 * @throws ScenarioError where a record does not come out the same
 */
export async function keptLaneFigures(
  blocks: readonly Pick<ReviewedBlock, 'path' | 'record'>[],
  folder: string,
  reached: (done: number, of: number) => void,
): Promise<readonly string[]> {
  const all: string[] = []
  for (const { path, record } of blocks) {
    const kept = join(folder, `${debriefName(record)}.${LANE_FIGURES_REVISION}.lanes.json`)
    all.push((await readKept(kept)) ?? (await drawn({ path, record }, kept)))
    reached(all.length, blocks.length)
  }
  return all
}

async function readKept(path: string): Promise<string | null> {
  try {
    const text = unsealed(FORMAT, VERSION, await readFile(path, 'utf8'))
    return text === null ? null : (JSON.parse(text) as string)
  } catch {
    return null
  }
}

async function drawn({ path, record }: Pick<ReviewedBlock, 'path' | 'record'>, kept: string): Promise<string> {
  const figures = laneFigures(replayRecord(record, path))
  // It can be drawn again; that there is no room for it is no reason to stop.
  await replaceFile(kept, sealedText(FORMAT, VERSION, JSON.stringify(figures))).catch(() => {})
  return figures
}
