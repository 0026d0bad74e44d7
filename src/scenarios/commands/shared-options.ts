import { Option } from 'commander'
import { seedOption } from './options.js'

/** Options that several commands have, worded alike. */

export const SCENARIO_WORDS = 'file or built-in name'

export const jsonFlag = () => new Option('--json', 'the report as JSON')

export const fixedSeed = () =>
  new Option('--seed <text>', 'seed of the luck and of drawn oil').argParser(seedOption).default('1')

export const dataFolder = () =>
  new Option('--data <folder>', 'where records are kept (else DRYBOARD_DATA, else your data folder)')
