import { type Command, Option } from 'commander'
import { numberOption, titleOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { jsonFlag } from './shared-options.js'

/** Commands for those who write scenario files. */
export function addScenarioCommands(program: Command, { console, finish }: ProgramParts): void {
  const scenario = program.command('scenario').description('write and check scenario files')
  scenario
    .command('check')
    .description('name every fault of the files, and tell of good ones what they are; ends with 1 if there is any')
    .argument('<file...>', 'scenario files')
    .option('--quick', 'leave out their difficulty')
    .addOption(
      new Option(
        '--fair',
        'play more games in full, one who decides best by what is seen among them; a minute each',
      ).conflicts('quick'),
    )
    .addOption(jsonFlag())
    .action(async (files, options) => {
      const { scenarioCheckCommand } = await import('../scenario-check.js')
      finish(await scenarioCheckCommand(files, options, console))
    })
  scenario
    .command('list')
    .description('the built-in scenarios: oil, class and difficulty')
    .argument('[word...]', 'only those these words are said of, such as long sport; with what they are for')
    .addOption(jsonFlag())
    .action(async (words, options) => {
      const { scenarioListCommand } = await import('../scenario-list.js')
      finish(await scenarioListCommand(words, options, console))
    })
  scenario
    .command('new')
    .description('print a built-in scenario, with comments, as a file to start from')
    .argument('[name]', 'built-in name', 'house-forty')
    .addOption(new Option('--length <feet>', 'oil of this length').argParser(numberOption(32, 48, 'feet')))
    .addOption(new Option('--volume <mL>', 'oil of this volume').argParser(numberOption(18, 32, 'mL')))
    .addOption(
      new Option('--ratio <number>', 'middle over outside, from 1.5 (flat) up').argParser(numberOption(1.5, 12)),
    )
    .option('--bowler <level,hand,style>', 'another bowler, such as 180,left,stroker')
    .addOption(new Option('--title <text>', 'what it is called').argParser(titleOption))
    .option('--own-bowler', "write the bowler's figures out, to be changed one by one")
    .action(async (name, options) => {
      const { scenarioNewCommand } = await import('../scenario-new.js')
      finish(scenarioNewCommand(name, options, console))
    })
  scenario
    .command('schema')
    .description('print the file format as JSON Schema, for editors, with a word on every field')
    .option('--drill', 'of drills')
    .action(async (options) => {
      const { scenarioSchemaCommand } = await import('../scenario-schema.js')
      finish(scenarioSchemaCommand(options, console))
    })
}
