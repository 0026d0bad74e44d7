import { recordsFolder } from '../../store/data-folder.js'
import { hasPastBlocks } from '../../store/past-blocks.js'
import { recordsAmong } from '../../store/records-among.js'
import { gatherProgress } from './gather.js'
import { type ProgressReport, progressReport } from './progress-report.js'

/** The records of a data folder; none where there are none. @throws ScenarioError */
export async function ownRecords(data: string): Promise<string[]> {
  const folder = recordsFolder(data)
  return (await hasPastBlocks(folder)) ? recordsAmong([folder]) : []
}

/** Somebody's progress by what is priced already; nothing is priced for it. @throws ScenarioError */
export async function ownProgress(data: string, player: string | undefined): Promise<ProgressReport> {
  return progressReport(await gatherProgress(await ownRecords(data), { data, player }))
}
