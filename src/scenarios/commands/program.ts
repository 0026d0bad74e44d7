import { Command, Option } from 'commander'
import { VERSION } from '../version.js'
import type { CommandConsole } from './console.js'
import { halfBoardOption, numberOption, seedOption, standingOption, wholeOption } from './options.js'

export interface ScreenOptions {
  readonly scenarioName?: string
  readonly seed?: string
  readonly noMotion?: boolean
  /** Where records are kept, if named on the command line. */
  readonly dataFolder?: string
}

/** What the program needs from outside: streams, the screen, and a place to leave the exit code. */
export interface ProgramParts {
  readonly console: CommandConsole
  readonly openScreen: (options: ScreenOptions) => Promise<number>
  readonly finish: (exitCode: number) => void
}

const FULL_RACK = 1023

const EXAMPLES = `
Examples:
  dryboard                                   open the trainer
  dryboard play house-forty --seed club-7    a block on the built-in house lane
  dryboard play lane.yaml --plain            the same, line by line
  dryboard pattern flat-forty-five           what oil lies on a lane
  dryboard trace house-forty --ball weak-pearl --feet 20 --target 11
  dryboard auto unseen-draw --policy thumb   a block played by rule of thumb
  dryboard debrief RECORD                    what each choice of a block gave away
  dryboard scenario new > lane.yaml          a scenario file to start from

SCENARIO is a file or a built-in name: house-forty, flat-forty-five, short-thirty-five, unseen-draw.`

/** The command line. Nothing heavier than the option table is loaded before a command runs. */
export function buildProgram({ console, openScreen, finish }: ProgramParts): Command {
  const program = new Command('dryboard')
    .description('A trainer for ten-pin bowlers: read the oil, decide, see what the decision was worth.')
    .version(VERSION)
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: (text) => console.print(text.trimEnd()),
      writeErr: (text) => console.tell(text.trimEnd()),
    })
    .addHelpText('after', EXAMPLES)

  const jsonFlag = () => new Option('--json', 'the report as JSON')
  const fixedSeed = () =>
    new Option('--seed <text>', 'seed of the luck and of drawn oil').argParser(seedOption).default('1')
  const dataFolder = () =>
    new Option('--data <folder>', 'where records are kept (else DRYBOARD_DATA, else your data folder)')

  program
    .command('home', { hidden: true })
    .description('open the trainer, or show a short demonstration where there is no terminal')
    .action(async () => {
      if (console.interactive) return finish(await openScreen({}))
      const { demonstrationCommand } = await import('./demonstration.js')
      finish(await demonstrationCommand(console))
    })

  program
    .command('play')
    .description('play a block, on screen or line by line')
    .argument('[scenario]', 'file or built-in name (house-forty if left out)')
    .addOption(
      new Option('--seed <text>', 'seed of the luck and of drawn oil (a fresh one if left out)').argParser(seedOption),
    )
    .option('--plain', 'line by line, for pipes and screen readers')
    .option('--script <file>', 'read the decisions from a file, one a line (implies --plain)')
    .option('--no-motion', 'do not animate')
    .addOption(dataFolder())
    .action(async (scenario, options) => {
      if (console.interactive && !options.plain && !options.script) {
        return finish(
          await openScreen({
            ...(scenario ? { scenarioName: scenario } : {}),
            ...(options.seed ? { seed: options.seed } : {}),
            ...(options.data ? { dataFolder: options.data } : {}),
            noMotion: !options.motion,
          }),
        )
      }
      const { playCommand } = await import('./play.js')
      finish(await playCommand(scenario ?? 'house-forty', options, console))
    })

  program
    .command('auto')
    .description('a block played by a policy, graded')
    .argument('<scenario>', 'file or built-in name')
    .addOption(
      new Option(
        '--policy <name>',
        'known sees the oil; fair decides best by what a player sees; thumb follows the miss; stay never moves; random throws anywhere sensible',
      )
        .choices(['known', 'fair', 'thumb', 'stay', 'random'])
        .makeOptionMandatory(),
    )
    .addOption(fixedSeed())
    .addOption(
      new Option('--blocks <number>', 'how many blocks, each with its own seed')
        .argParser(wholeOption(1, 1000))
        .default(1),
    )
    .option('--save', 'keep a record of each block')
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { autoCommand } = await import('./auto.js')
      finish(await autoCommand(scenario, options, console))
    })

  program
    .command('trace')
    .description('one ball without error: its path, breakpoint, roll and entry')
    .argument('<scenario>', 'file or built-in name')
    .requiredOption('--ball <id>', 'a ball of the bag, by its id or its place')
    .requiredOption('--feet <board>', 'board the slide foot ends on', halfBoardOption(8, 46))
    .requiredOption('--target <board>', 'board at the arrows', halfBoardOption(2, 30))
    .addOption(new Option('--speed <step>', 'speed').choices(['softer', 'usual', 'firmer']).default('usual'))
    .addOption(new Option('--release <kind>', 'release').choices(['strike', 'spare']).default('strike'))
    .addOption(new Option('--lane <number>', 'which lane').argParser(wholeOption(1, 2)).default(1))
    .addOption(
      new Option(
        '--after <throws>',
        "throws of the same ball and line, with the bowler's misses, that wear the lane first",
      )
        .argParser(wholeOption(0, 500))
        .default(0),
    )
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { traceCommand } = await import('./trace.js')
      finish(await traceCommand(scenario, options, console))
    })

  program
    .command('rack')
    .description('what the pins do to one ball thrown again and again')
    .requiredOption('--board <board>', 'board of the ball at the headpin row, from the right', numberOption(-2, 42))
    .requiredOption('--angle <degrees>', 'entry angle, positive from right to left', numberOption(-20, 20, 'degrees'))
    .requiredOption('--speed <mph>', 'speed at the pins', numberOption(5, 30, 'mph'))
    .addOption(new Option('--throws <number>', 'how many throws').argParser(wholeOption(1, 100_000)).default(1000))
    .addOption(
      new Option('--standing <pins>', 'pins standing, such as 3,6,10')
        .argParser(standingOption)
        .default(FULL_RACK, 'all ten'),
    )
    .addOption(
      new Option('--weight <pounds>', "the ball's weight").argParser(numberOption(6, 16, 'pounds')).default(15),
    )
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (options) => {
      const { rackCommand } = await import('./rack.js')
      finish(rackCommand(options, console))
    })

  program
    .command('pattern')
    .description("a lane's oil: volume, length, ratio, class, thickness and a picture")
    .argument('<scenario>', 'file or built-in name')
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { patternCommand } = await import('./pattern.js')
      finish(await patternCommand(scenario, options, console))
    })

  program
    .command('debrief')
    .description('replay a record: what each choice gave away against the oil as it was')
    .argument('<record>', 'a record file')
    .addOption(jsonFlag())
    .action(async (record, options) => {
      const { debriefCommand } = await import('./debrief.js')
      finish(await debriefCommand(record, options, console))
    })

  const scenario = program.command('scenario').description('write and check scenario files')
  scenario
    .command('check')
    .description('name every fault of the files; ends with 1 if there is any')
    .argument('<file...>', 'scenario files')
    .addOption(jsonFlag())
    .action(async (files, options) => {
      const { scenarioCheckCommand } = await import('./scenario.js')
      finish(await scenarioCheckCommand(files, options, console))
    })
  scenario
    .command('new')
    .description('print a built-in scenario as a file to start from')
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

  return program
}
