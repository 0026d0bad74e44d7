import { mkdir, open, rename, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { dataFolder, recordsFolder } from '../scenarios/data-folder.js'
import { readRecord, recordOf, writeRecord } from '../scenarios/record.js'
import { replayRecord } from '../scenarios/replay.js'
import type { Scenario } from '../scenarios/scenario.js'
import { ScenarioError } from '../scenarios/scenario-error.js'
import type { BlockState } from '../sim/block/types.js'
import type { KeptBlock } from './services.js'

export interface Keeper {
  find(): Promise<KeptBlock | null>
  keep(scenario: Scenario, block: BlockState, finished: boolean): Promise<void>
}

/**
 * Keeps the unfinished block in one file, replaced whole after each throw, and files finished blocks among the records.
 * A kept block that cannot be read is left where it is and not offered.
 */
export function fileKeeper(environment: Readonly<Record<string, string | undefined>>): Keeper {
  const folder = dataFolder(undefined, environment)
  const records = recordsFolder(folder)
  const unfinished = join(folder, 'unfinished.json')
  let queue: Promise<void> = Promise.resolve()
  return {
    async find() {
      try {
        const record = await readRecord(unfinished)
        return {
          title: record.scenario.title,
          throws: record.decisions.length,
          takeUp: () => replayRecord(record, unfinished),
        }
      } catch (fault) {
        if (fault instanceof ScenarioError) return null
        throw fault
      }
    },
    keep(scenario, block, finished) {
      // One after the other, so that an earlier state never lands on a later one; a failed one does not stop the next.
      const kept = queue.then(async () => {
        const record = recordOf(scenario, block)
        if (finished) {
          await writeRecord(record, records)
          await rm(unfinished, { force: true })
        } else await replaceFile(unfinished, `${JSON.stringify(record)}\n`)
      })
      queue = kept.catch(() => {})
      return kept
    },
  }
}

async function replaceFile(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true })
  const draft = `${path}.${process.pid}.part`
  const file = await open(draft, 'w', 0o600)
  try {
    await file.writeFile(text)
    await file.sync()
  } finally {
    await file.close()
  }
  await rename(draft, path)
}
