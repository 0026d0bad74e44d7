import { randomBytes } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { beginScenario } from '../begin-scenario.js'
import { dataFolder, recordsFolder } from '../data-folder.js'
import { loadScenario } from '../load.js'
import { openingLines } from '../plain/opening-lines.js'
import { playLines } from '../plain/play-lines.js'
import { recordOf, writeRecord } from '../record.js'
import { ScenarioError } from '../scenario-error.js'
import type { CommandConsole } from './console.js'
import { EXIT, SIGNAL_EXIT } from './exit-codes.js'

export interface PlayOptions {
  readonly seed?: string
  readonly script?: string
  readonly data?: string
}

/** A block line by line; however it ends, what was thrown is kept as a record. */
export async function playCommand(name: string, options: PlayOptions, console: CommandConsole): Promise<number> {
  const scenario = await loadScenario(name)
  const seed = options.seed ?? freshSeed()
  const script = options.script === undefined ? null : await scriptLines(options.script)
  const begun = beginScenario(scenario, seed)
  for (const line of openingLines(scenario, seed)) console.print(line)
  console.print('Type ? for what you can say.')
  let at = 0
  const state = await playLines(begun, {
    lines: script ? counted(script, (number) => (at = number)) : console.lines(),
    say: console.print,
    object: (sentence) => {
      if (options.script !== undefined) throw new ScenarioError([`${options.script}:${at}: ${sentence}`])
      console.print(sentence)
    },
  })
  if (state.spot) console.print('The block stops here, unfinished.')
  if (state.throws.length > 0) {
    const path = await writeRecord(
      recordOf(scenario, state),
      recordsFolder(dataFolder(options.data, console.environment)),
    )
    console.tell(`Record kept: ${path}`)
  }
  const signal = console.stoppedBy()
  return signal ? SIGNAL_EXIT[signal] : EXIT.fine
}

/** A seed nobody has seen, short enough to read out. */
function freshSeed(): string {
  return randomBytes(5).toString('hex')
}

async function scriptLines(path: string): Promise<string[]> {
  let text: string
  try {
    text = await readFile(path, 'utf8')
  } catch (cause) {
    const code = (cause as NodeJS.ErrnoException).code
    throw new ScenarioError(
      [`${path}: ${code === 'ENOENT' ? 'there is no such file' : `cannot be read (${code})`}.`],
      true,
    )
  }
  const lines = text.split(/\r?\n/)
  return lines.at(-1) === '' ? lines.slice(0, -1) : lines
}

async function* counted(lines: readonly string[], reached: (number: number) => void): AsyncIterable<string> {
  for (const [index, line] of lines.entries()) {
    reached(index + 1)
    yield line
  }
}
