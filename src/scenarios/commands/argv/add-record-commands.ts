import { Argument, type Command, Option } from 'commander'
import { frameOption, noteOption, playerOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { dataFolder, jsonFlag } from './shared-options.js'

/** Commands that look back on blocks that were kept. */
export function addRecordCommands(program: Command, { console, finish }: ProgramParts): void {
  program
    .command('player')
    .description('the name your records carry; with a name, keep it for those to come')
    .addArgument(new Argument('[name]', 'your name').argParser(playerOption))
    .action(async (name, _options) => {
      const { playerCommand } = await import('../player.js')
      finish(await playerCommand(name, console))
    })

  program
    .command('debrief')
    .description('replay a record: what each choice cost, where the rest went, and the oil')
    .argument('<record>', 'a record file')
    .option('--quick', 'leave out the other choices')
    .addOption(new Option('--at <frame>', 'only this frame, in full: such as 7 or 2-7').argParser(frameOption))
    .addOption(new Option('--html <file>', 'as a page with pictures of the lanes').conflicts(['at', 'json']))
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (record, options) => {
      const { debriefCommand } = await import('../debrief.js')
      finish(await debriefCommand(record, options, console))
    })

  program
    .command('verify')
    .description('replay records and say whether they come out the same; ends with 1 if one does not')
    .argument('<record...>', 'record files')
    .addOption(jsonFlag())
    .action(async (records, options) => {
      const { verifyCommand } = await import('../verify.js')
      finish(await verifyCommand(records, options, console))
    })

  program
    .command('review')
    .description(
      "a player's or a group's blocks looked at together; or a note put to one of them. Players are told apart by the name in the record, else by folder",
    )
    .argument('<record...>', 'record files, oldest first; or folders of them')
    .addOption(new Option('--at <frame>', 'the frame a note is for, such as 7 or 2-7').argParser(frameOption))
    .addOption(new Option('--note <text>', 'a note to be kept beside the record').argParser(noteOption))
    .option('--html <file>', 'the report as a page with pictures of the lanes')
    .option('--markdown', 'the report as Markdown, which it is in any case')
    .option('--csv', 'every priced throw on a line, for a spreadsheet')
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (records, options) => {
      const { reviewCommand } = await import('../review.js')
      finish(await reviewCommand(records, options, console))
    })
}
