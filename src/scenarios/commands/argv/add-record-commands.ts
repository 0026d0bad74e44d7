import { Argument, type Command, Option } from 'commander'
import { aliasOption, dayOption } from './day-options.js'
import { frameOption, noteOption, playerOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { dataFolder, jsonFlag } from './shared-options.js'

/** Commands that look back on blocks that were kept. */
export function addRecordCommands(program: Command, { console, finish }: ProgramParts): void {
  program
    .command('player')
    .description('the name your records carry; with a name, keep it for those to come')
    .addArgument(new Argument('[name]', 'your name').argParser(playerOption))
    .addOption(dataFolder())
    .action(async (name, options) => {
      const { playerCommand } = await import('../player.js')
      finish(await playerCommand(name, options, console))
    })

  program
    .command('debrief')
    .description('replay a record: what each choice cost, where the rest went, and the oil')
    .argument('<record>', 'a record file')
    .option('--quick', 'leave out the other choices')
    .addOption(new Option('--at <frame>', 'only this frame, in full: such as 7 or 2-7').argParser(frameOption))
    .addOption(
      new Option('--html <file>', 'as a page with pictures of the lanes; with --at of that frame alone').conflicts(
        'json',
      ),
    )
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (record, options) => {
      const { debriefCommand } = await import('../debrief.js')
      finish(await debriefCommand(record, options, console))
    })

  program
    .command('progress')
    .description('what your choices cost over time, by skill; how your calls held, drills done and lanes met')
    .argument('[record...]', 'record files, or folders of them (those of this machine if left out)')
    .addOption(
      new Option('--player <name>', 'whose (else DRYBOARD_PLAYER, else what dryboard player keeps)').argParser(
        playerOption,
      ),
    )
    .option('--quick', 'leave out blocks that are not priced yet')
    .addOption(new Option('--html <file>', 'as a page').conflicts('json'))
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (records, options) => {
      const { progressCommand } = await import('../progress.js')
      finish(await progressCommand(records, options, console))
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
    .argument('<record...>', 'record files, or folders of them with all that lies in those')
    .addOption(new Option('--since <day>', 'only blocks from this day on, such as 2026-03-01').argParser(dayOption))
    .addOption(new Option('--until <day>', 'only blocks up to this day').argParser(dayOption))
    .addOption(new Option('--compare <day>', 'blocks from this day on against those before').argParser(dayOption))
    .addOption(
      new Option(
        '--alias <alias=name>',
        'another spelling of a player, such as Anny=Ansa; may be said again',
      ).argParser(aliasOption),
    )
    .option('--anonymous', 'letters for names, numbers for files, and no notes')
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
