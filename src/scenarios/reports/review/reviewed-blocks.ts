import { readTextFile } from '../../files/text/read-text-file.js'
import { ScenarioError } from '../../files/text/scenario-error.js'
import { readNotes } from '../../store/coach-notes.js'
import { RECORD_FORMAT } from '../../store/record-schema.js'
import { type Begun, pricedBlocks } from './price-in-threads.js'
import type { FaultyFile } from './review-report.js'
import { blockWithoutNotes, type ReviewedBlock } from './reviewed-block.js'

interface ReviewedFiles {
  readonly blocks: readonly ReviewedBlock[]
  readonly faults: readonly FaultyFile[]
}

/**
 * Reads and debriefs records; one that is faulty, tampered with or does not come out the same is told of and the rest goes on. Files
 * of the program's own that are no records are passed over.
 *
 * @param begun told of a piece of work before it is begun; returns who is told how far that is
 * @throws ScenarioError where there is no block at all to look at
 */
export async function reviewedBlocks(paths: readonly string[], cache: string, begun: Begun): Promise<ReviewedFiles> {
  const blocks: ReviewedBlock[] = []
  const faults: FaultyFile[] = []
  const thrown: ScenarioError[] = []
  const faulty = (file: string, fault: unknown): void => {
    if (!(fault instanceof ScenarioError)) throw fault
    thrown.push(fault)
    faults.push({ file, reasons: fault.sentences })
  }
  const priced = await pricedBlocks(paths, cache, begun)
  for (const [place, path] of paths.entries()) {
    const { reached, over } = begun(`record ${place + 1} of ${paths.length}`)
    try {
      const block = priced.get(path) ?? (await blockWithoutNotes(path, cache, reached))
      const notes = await readNotes(path).catch((fault: unknown) => {
        faulty(path, fault)
        return []
      })
      blocks.push({ ...block, notes })
    } catch (fault) {
      if (!(await isOtherFileOfOurs(path))) faulty(path, fault)
    } finally {
      over()
    }
  }
  if (blocks.length === 0 && thrown.length > 0) {
    const sentences = thrown.flatMap((fault) => fault.sentences)
    throw new ScenarioError(
      sentences,
      thrown.every(({ missing }) => missing),
    )
  }
  return { blocks, faults }
}

const FORMAT = /^\s*\{\s*"format"\s*:\s*"(dryboard-[a-z-]+)"/

async function isOtherFileOfOurs(path: string): Promise<boolean> {
  const text = await readTextFile(path).catch(() => '')
  const format = FORMAT.exec(text)?.[1]
  return format !== undefined && format !== RECORD_FORMAT
}
