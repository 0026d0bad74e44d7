import { type Command, Option } from 'commander'
import { aliasOption } from './day-options.js'
import { framesOption, noteOption, playerOption, seedOption, titleOption, wholeOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { dataFolder, fixedSeed, jsonFlag, playedBy, SCENARIO_WORDS } from './shared-options.js'

/** Commands that play blocks. */
export function addBlockCommands(program: Command, { console, openScreen, finish }: ProgramParts): void {
  program
    .command('home', { hidden: true })
    .description('open the trainer, or show a short demonstration where there is no terminal')
    .action(async () => {
      if (console.interactive) return finish(await openScreen({}))
      const { demonstrationCommand } = await import('../demonstration.js')
      finish(await demonstrationCommand(console))
    })

  program
    .command('play')
    .description('play a block, on screen or line by line')
    .argument('[scenario]', `${SCENARIO_WORDS} (house-forty if left out)`)
    .addOption(
      new Option('--seed <text>', 'seed of the luck and of drawn oil (a fresh one if left out)').argParser(seedOption),
    )
    .option('--plain', 'line by line, for pipes and screen readers')
    .option('--script <file>', 'read the decisions from a file, one a line (implies --plain)')
    .option('--no-grade', 'plain: do not price each choice before it is thrown (quicker; a debrief prices them all)')
    .option('--resume [record]', 'go on with an unfinished record, or with what was left last time')
    .option('--take <balls>', 'plain: the balls to take along where the scenario leaves a choice, such as 1,4,5')
    .addOption(
      new Option(
        '--today',
        'the lane of the day: lane and seed from the date and the version of the lane rules, the same for everyone',
      ).conflicts(['seed', 'resume', 'take', 'against']),
    )
    .addOption(
      new Option(
        '--against <record>',
        'the lane and luck of a record, against it: its throws show after yours',
      ).conflicts(['seed', 'resume', 'take']),
    )
    .option('--compare', 'plain: afterwards, what rule of thumb and both bests score on the same luck (takes a minute)')
    .option('--no-motion', 'do not animate')
    .option('--join <url>', 'join a contest that somebody hosts, at the address they tell')
    .option('--code <code>', 'with --join: the code the host tells, or your own to go on with your entry')
    .addOption(playedBy())
    .addOption(dataFolder())
    .action(async (scenario, options, command) => {
      if (options.join) {
        const { joinCommand } = await import('../contest/join.js')
        return finish(await joinCommand(options.join, options, console, openScreen))
      }
      if (scenario && (options.today || options.against)) {
        const given = options.today ? '--today' : '--against'
        command.error(`error: ${given} names its lanes itself; leave out ${scenario}`)
      }
      if (console.interactive && !options.plain && !options.script) {
        return finish(
          await openScreen({
            ...(scenario ? { scenarioName: scenario } : {}),
            ...(options.seed ? { seed: options.seed } : {}),
            ...(options.today ? { today: true } : {}),
            ...(options.against ? { against: options.against } : {}),
            ...(options.data ? { dataFolder: options.data } : {}),
            ...(options.player ? { player: options.player } : {}),
            ...(options.resume ? { resume: options.resume } : {}),
            noMotion: !options.motion,
          }),
        )
      }
      const { playCommand } = await import('../play.js')
      finish(await playCommand(scenario, options, console))
    })

  const drill = program
    .command('drill')
    .description("a coach's drill: moments to decide one after the other, on screen or line by line")
    .argument('<file>', 'a drill file, or library:SKILL with line, ball, move-size, timing, spare or throw-or-lane')
    .option('--check', 'only say whether it can be played')
    .option('--plain', 'line by line, for pipes and screen readers')
    .option('--no-motion', 'do not animate')
    .addOption(playedBy())
    .addOption(dataFolder())
    .action(async (file, options) => {
      if (console.interactive && !options.plain && !options.check) {
        return finish(
          await openScreen({
            drillPath: file,
            ...(options.data ? { dataFolder: options.data } : {}),
            ...(options.player ? { player: options.player } : {}),
            noMotion: !options.motion,
          }),
        )
      }
      const { drillCommand } = await import('../drill.js')
      finish(await drillCommand(file, options, console))
    })

  drill
    .command('new')
    .description(
      'print a drill: the costliest choices of records, or the frames named; or the start of scenarios. It carries what it needs, to be sent as one file',
    )
    .argument('<source...>', 'record files, scenario files or built-in names')
    .addOption(new Option('--at <frames>', 'frames of the records, such as 3,7 or 2-7').argParser(framesOption))
    .addOption(
      new Option('--throws <number>', "how many throws are the player's").argParser(wholeOption(1, 60)).default(1),
    )
    .addOption(new Option('--title <text>', 'what the drill is called').argParser(titleOption))
    .addOption(
      new Option('--look-for <text>', 'what the player is to see or ask, told after each position').argParser(
        noteOption,
      ),
    )
    .addOption(fixedSeed())
    .addOption(dataFolder())
    .action(async (sources, options) => {
      const { drillNewCommand } = await import('../drill-new.js')
      finish(await drillNewCommand(sources, options, console))
    })

  drill
    .command('key')
    .description('what was best at each position from what had been seen, for the coach; it is not in the drill')
    .argument('<file>', 'a drill file')
    .addOption(jsonFlag())
    .action(async (file, options) => {
      const { drillKeyCommand } = await import('../drill-key.js')
      finish(await drillKeyCommand(file, options, console))
    })

  drill
    .command('results')
    .description('what players answered to a drill, and what it cost, from their records')
    .argument('<file>', 'the drill file')
    .argument('<record...>', 'record files, or folders of them')
    .addOption(
      new Option(
        '--alias <alias=name>',
        'another spelling of a player, such as Anny=Ansa; may be said again',
      ).argParser(aliasOption),
    )
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (file, records, options) => {
      const { drillResultsCommand } = await import('../drill-results.js')
      finish(await drillResultsCommand(file, records, options, console))
    })

  program
    .command('auto')
    .description('a block played by a policy, graded')
    .argument('<scenario>', SCENARIO_WORDS)
    .addOption(
      new Option(
        '--policy <name>',
        "known sees the oil; fair sees what a player sees and decides best; thumb follows the miss; memo has learnt the sheet's best line and never moves; stay never moves from the starting line; random throws anywhere sensible",
      )
        .choices(['known', 'fair', 'thumb', 'memo', 'stay', 'random'])
        .makeOptionMandatory(),
    )
    .addOption(fixedSeed())
    .addOption(
      new Option('--blocks <number>', 'how many blocks, each with its own seed')
        .argParser(wholeOption(1, 1000))
        .default(1),
    )
    .option('--save', 'keep a record of each block')
    .addOption(new Option('--player <name>', 'whose the kept records are said to be').argParser(playerOption))
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (scenario, options) => {
      const { autoCommand } = await import('../auto.js')
      finish(await autoCommand(scenario, options, console))
    })
}
