import { ScenarioError } from '../../files/text/scenario-error.js'
import { answerTasks } from '../../threads/answer-tasks.js'
import type { RecordToPrice } from './price-in-threads.js'
import { blockWithoutNotes } from './reviewed-block.js'

answerTasks<RecordToPrice, null>(async ({ path, cache }, reached) => {
  try {
    await blockWithoutNotes(path, cache, (done, of) => reached(done / of))
  } catch (fault) {
    // Told by whoever reads the file for the report.
    if (!(fault instanceof ScenarioError)) throw fault
  }
  return null
})
