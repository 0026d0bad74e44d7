import type { Command } from 'commander'
import type { ProgramParts } from './program.js'
import { jsonFlag } from './shared-options.js'

/** Commands that look back on blocks that were kept. */
export function addRecordCommands(program: Command, { console, finish }: ProgramParts): void {
  program
    .command('debrief')
    .description('replay a record: what each choice gave away by what could be known, and where the rest went')
    .argument('<record>', 'a record file')
    .option('--quick', 'leave out the road not taken')
    .addOption(jsonFlag())
    .action(async (record, options) => {
      const { debriefCommand } = await import('./debrief.js')
      finish(await debriefCommand(record, options, console))
    })

  program
    .command('verify')
    .description('replay records and say whether they come out the same; ends with 1 if one does not')
    .argument('<record...>', 'record files')
    .addOption(jsonFlag())
    .action(async (records, options) => {
      const { verifyCommand } = await import('./verify.js')
      finish(await verifyCommand(records, options, console))
    })
}
