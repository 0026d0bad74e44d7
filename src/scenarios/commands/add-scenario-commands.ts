import type { Command } from 'commander'
import type { ProgramParts } from './program-parts.js'
import { jsonFlag } from './shared-options.js'

/** Commands for those who write scenario files. */
export function addScenarioCommands(program: Command, { console, finish }: ProgramParts): void {
  const scenario = program.command('scenario').description('write and check scenario files')
  scenario
    .command('check')
    .description('name every fault of the files, and tell of good ones what they are; ends with 1 if there is any')
    .argument('<file...>', 'scenario files')
    .option('--quick', 'leave out how hard they are')
    .addOption(jsonFlag())
    .action(async (files, options) => {
      const { scenarioCheckCommand } = await import('./scenario.js')
      finish(await scenarioCheckCommand(files, options, console))
    })
  scenario
    .command('list')
    .description('the built-in scenarios: oil, class and how hard they are')
    .addOption(jsonFlag())
    .action(async (options) => {
      const { scenarioListCommand } = await import('./scenario-list.js')
      finish(await scenarioListCommand(options, console))
    })
  scenario
    .command('new')
    .description('print a built-in scenario, with comments, as a file to start from')
    .argument('[name]', 'built-in name', 'house-forty')
    .action(async (name) => {
      const { scenarioNewCommand } = await import('./scenario.js')
      finish(scenarioNewCommand(name, console))
    })
  scenario
    .command('schema')
    .description('print the file format as JSON Schema, for editors')
    .action(async () => {
      const { scenarioSchemaCommand } = await import('./scenario.js')
      finish(scenarioSchemaCommand(console))
    })
}
