import { WriteError } from '../../files/text/atomic-write.js'
import { EXIT } from '../../files/text/exit-codes.js'
import { ScenarioError } from '../../files/text/scenario-error.js'

/** What to say about a command that failed, and what to end with; never a stack trace. */
export function faultReport(fault: unknown): { readonly sentences: readonly string[]; readonly exitCode: number } {
  if (fault instanceof ScenarioError) {
    return { sentences: fault.sentences, exitCode: fault.missing ? EXIT.missingFile : EXIT.badData }
  }
  if (fault instanceof WriteError) return { sentences: [fault.message], exitCode: EXIT.cannotWrite }
  const reason = fault instanceof Error ? fault.message : String(fault)
  return {
    sentences: [`dryboard: something went wrong on our side: ${reason.split('\n')[0]}`],
    exitCode: EXIT.ourFault,
  }
}
