import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'

/** What went wrong, in one sentence. */
export function sentenceOf(fault: unknown): string {
  if (fault instanceof ScenarioError) return fault.sentences[0] ?? fault.message
  return fault instanceof Error ? fault.message.split('\n')[0]! : String(fault)
}
