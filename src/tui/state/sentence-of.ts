import { WriteError } from '../../scenarios/files/text/atomic-write.js'
import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'

/** What went wrong, in one sentence. */
export function sentenceOf(fault: unknown): string {
  if (fault instanceof ScenarioError) return fault.sentences[0] ?? fault.message
  // Where it was to be written is the program's own affair, and too long for a line of the screen.
  if (fault instanceof WriteError) return `${fault.reason}.`
  return fault instanceof Error ? fault.message.split('\n')[0]! : String(fault)
}
