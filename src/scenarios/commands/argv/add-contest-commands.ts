import { type Command, Option } from 'commander'
import { passphraseOption, wholeOption } from './options.js'
import type { ProgramParts } from './program-parts.js'
import { dataFolder, jsonFlag, playedBy } from './shared-options.js'

const KEY_FILE = 'organiser.key'

/** Commands for contests of a club. */
export function addContestCommands(program: Command, { console, openScreen, finish }: ProgramParts): void {
  const passphrase = (words: string) => new Option('--passphrase <words>', words).argParser(passphraseOption)
  const readOut = () => passphrase('as it was read out (else DRYBOARD_PASSPHRASE, else asked for)')
  const keyFile = () => new Option('--key <file>', "the organiser's key").default(KEY_FILE)
  const contest = program
    .command('contest')
    .description('contests of a club on one lane and one luck: seal, open, play, standings, season, host')

  contest
    .command('seal')
    .description('seal contest rules into a pack to hand out: lane and luck under a passphrase, all of it signed')
    .argument('<rules>', 'a file of rules; dryboard contest schema tells what may stand in it')
    .addOption(new Option('--out <file>', 'the pack').default('contest.pack.json'))
    .addOption(keyFile())
    .addOption(passphrase('a passphrase of your own (a fresh one if left out)'))
    .action(async (rules, options) => {
      const { sealCommand } = await import('../contest/seal.js')
      finish(await sealCommand(rules, options, console))
    })

  contest
    .command('open')
    .description('tell the rules of a pack and check it; with the passphrase lane and luck too')
    .argument('<pack>', 'the pack as handed out')
    .addOption(readOut())
    .option('--unsealing <file>', "the organiser's unsealing: from then on grades and oil are shown here")
    .addOption(dataFolder())
    .action(async (pack, options) => {
      const { openCommand } = await import('../contest/open.js')
      finish(await openCommand(pack, options, console))
    })

  contest
    .command('play')
    .description('play your entry, or go on with it; grades and oil are held back until the contest is over')
    .argument('<pack>', 'the pack as handed out')
    .addOption(readOut())
    .addOption(playedBy())
    .addOption(new Option('--hand <hand>', 'your hand, where the rules let you').choices(['right', 'left']))
    .option('--level <level>', 'your level, where the rules let you')
    .option('--plain', 'line by line, for pipes and screen readers')
    .option('--script <file>', 'read the decisions from a file, one a line (implies --plain)')
    .option('--hand-in', 'hand in the entry as it stands, finished or not')
    .option('--no-motion', 'do not animate')
    .addOption(dataFolder())
    .action(async (pack, options) => {
      const { contestPlayCommand, sitDown } = await import('../contest/play.js')
      const onScreen = console.interactive && !options.plain && !options.script && !options.handIn
      if (!onScreen) return finish(await contestPlayCommand(pack, options, console))
      const { open, states, code } = await sitDown(pack, options, console)
      console.print(`Entry code ${code}: tell it to the organiser.`)
      const data = options.data ? { dataFolder: options.data } : {}
      finish(await openScreen({ entry: { open, states }, noMotion: !options.motion, ...data }))
    })

  contest
    .command('standings')
    .description('check every entry of a folder and tell who stands where; ends with 1 if one is refused')
    .argument('<folder>', 'where the entries lie')
    .requiredOption('--pack <file>', 'the pack they are entries of')
    .addOption(readOut())
    .option('--entrants <file>', 'who entered: names, entry codes, averages')
    .option('--evidence', 'for the organiser: tests for play that knows too much (prices every choice; takes long)')
    .addOption(new Option('--html <file>', "a page for the club's wall").conflicts(['csv', 'json', 'markdown']))
    .option('--markdown', 'the table as Markdown')
    .option('--csv', 'a line an entry, for a spreadsheet')
    .addOption(
      new Option('--jobs <number>', 'programs at work at once (one a core if left out)').argParser(wholeOption(1, 256)),
    )
    .addOption(dataFolder())
    .addOption(jsonFlag())
    .action(async (folder, options) => {
      const { standingsCommand } = await import('../contest/standings.js')
      finish(await standingsCommand(folder, options, console))
    })

  contest
    .command('check')
    .description('check single entries, a line of JSON each: standings spread over machines begin so')
    .argument('<entry...>', 'records')
    .requiredOption('--pack <file>', 'the pack they are entries of')
    .addOption(readOut())
    .action(async (entries, options) => {
      const { contestCheckCommand } = await import('../contest/check.js')
      finish(await contestCheckCommand(entries, options, console))
    })

  contest
    .command('season')
    .description('add up the standings of several contests: a folder of what standings --json told of each')
    .argument('<folder>', 'where they lie')
    .addOption(new Option('--html <file>', "a page for the club's wall").conflicts('json'))
    .addOption(jsonFlag())
    .action(async (folder, options) => {
      const { seasonCommand } = await import('../contest/season.js')
      finish(await seasonCommand(folder, options, console))
    })

  contest
    .command('unseal')
    .description('for the organiser, once it is over: publish the seed, so that all can look back')
    .argument('<pack>', 'the pack as handed out')
    .addOption(new Option('--out <file>', 'the unsealing').default('contest.unsealing.json'))
    .addOption(keyFile())
    .addOption(readOut())
    .action(async (pack, options) => {
      const { unsealCommand } = await import('../contest/unseal.js')
      finish(await unsealCommand(pack, options, console))
    })

  contest
    .command('host')
    .description('host a contest: the lane stays here, and players join with dryboard play --join')
    .argument('<pack>', 'the pack')
    .addOption(readOut())
    .addOption(keyFile())
    .addOption(new Option('--port <number>', 'port').argParser(wholeOption(0, 65535)).default(8610))
    .option('--lan', 'answer the local network and not only this machine')
    .option('--entries <folder>', 'where the entries are written', 'entries')
    .action(async (pack, options) => {
      const { hostCommand } = await import('../contest/host.js')
      finish(await hostCommand(pack, options, console))
    })

  contest
    .command('schema')
    .description("print the format of a contest's files as JSON Schema, for editors")
    .addOption(new Option('--of <file>', 'which').choices(['rules', 'pack', 'entrants']).default('rules'))
    .action(async (options) => {
      const { contestSchemaCommand } = await import('../contest/schema.js')
      finish(contestSchemaCommand(options.of, console))
    })
}
