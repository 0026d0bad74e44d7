import { Option } from 'commander'
import { folderOption, playerOption, seedOption } from './options.js'

/** Options that several commands have, worded alike. */

export const SCENARIO_WORDS = 'file or built-in name'

export const jsonFlag = () => new Option('--json', 'the report as JSON')

/** Which seed then holds, `seedOf` in commands/seed.ts says. */
export const fixedSeed = () =>
  new Option('--seed <text>', "seed of the luck and of drawn oil (the scenario's own, else 1)").argParser(seedOption)

export const playedBy = () =>
  new Option(
    '--player <name>',
    'who plays, for the record (else DRYBOARD_PLAYER, else what dryboard player keeps)',
  ).argParser(playerOption)

export const dataFolder = () =>
  new Option('--data <folder>', 'where records are kept (else DRYBOARD_DATA, else your data folder)').argParser(
    folderOption,
  )
