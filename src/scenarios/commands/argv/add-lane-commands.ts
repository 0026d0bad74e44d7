import { type Command, Option } from 'commander'
import { halfBoardOption, numberOption, standingOption, wholeOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { fixedSeed, jsonFlag, SCENARIO_WORDS } from './shared-options.js'

const FULL_RACK = 1023

/** Commands that look at a lane, a ball or a bag without playing a block. */
export function addLaneCommands(program: Command, { console, finish }: ProgramParts): void {
  const whichLane = () => new Option('--lane <number>', 'which lane').argParser(wholeOption(1, 2)).default(1)

  program
    .command('trace')
    .description('one ball without error: its path, breakpoint, roll and entry')
    .argument('<scenario>', SCENARIO_WORDS)
    .requiredOption('--ball <id>', 'a ball of the bag, by its id or its place')
    .requiredOption('--feet <board>', 'board the slide foot ends on', halfBoardOption(8, 46))
    .requiredOption('--target <board>', 'board at the arrows', halfBoardOption(2, 30))
    .addOption(new Option('--speed <step>', 'speed').choices(['softer', 'usual', 'firmer']).default('usual'))
    .addOption(new Option('--release <kind>', 'release').choices(['strike', 'spare']).default('strike'))
    .addOption(whichLane())
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
      const { traceCommand } = await import('../trace.js')
      finish(await traceCommand(scenario, options, console))
    })

  program
    .command('room')
    .description('what every line is worth, and how far one can miss it')
    .argument('<scenario>', SCENARIO_WORDS)
    .option('--ball <id>', 'a ball of the bag, by its id or its place (the best one if left out)')
    .addOption(whichLane())
    .addOption(
      new Option('--after <throws>', "throws of the bowler's best lines that wear the lane first")
        .argParser(wholeOption(0, 200))
        .default(0),
    )
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { roomCommand } = await import('../room.js')
      finish(await roomCommand(scenario, options, console))
    })

  program
    .command('bag')
    .description('what the bag would lose without each ball, with two balls only, or with another surface')
    .argument('<scenario...>', `${SCENARIO_WORDS}; the first one's bag and bowler go to all of them`)
    .addOption(
      new Option('--after <throws>', 'the lanes count half as oiled and half after so many throws on the best lines')
        .argParser(wholeOption(0, 200))
        .default(30),
    )
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (scenarios, options) => {
      const { bagCommand } = await import('../bag.js')
      finish(await bagCommand(scenarios, options, console))
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
    .addOption(fixedSeed().default('1'))
    .addOption(jsonFlag())
    .action(async (options) => {
      const { rackCommand } = await import('../rack.js')
      finish(rackCommand(options, console))
    })

  program
    .command('pattern')
    .description("a lane's oil: volume, length, ratio, class, thickness and a picture")
    .argument('<scenario>', SCENARIO_WORDS)
    .addOption(fixedSeed())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { patternCommand } = await import('../pattern.js')
      finish(await patternCommand(scenario, options, console))
    })
}
