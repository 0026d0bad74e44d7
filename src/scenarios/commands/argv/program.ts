import { Command } from 'commander'
import { VERSION } from '../../store/version.js'
import { printText } from '../console/console.js'
import { addBlockCommands } from './add-block-commands.js'
import { addContestCommands } from './add-contest-commands.js'
import { addLaneCommands } from './add-lane-commands.js'
import { addPracticeCommands } from './add-practice-commands.js'
import { addRecordCommands } from './add-record-commands.js'
import { addScenarioCommands } from './add-scenario-commands.js'
import type { ProgramParts } from './program-parts.js'

const EXAMPLES = `
Examples:
  dryboard                                   open the trainer
  dryboard play house-forty --seed club-7    a block on the built-in house lane
  dryboard play lane.yaml --plain            the same, line by line
  dryboard practice --minutes 10             positions one at a time, drawn where you lose most
  dryboard pattern flat-forty-four           what oil lies on a lane
  dryboard room flat-forty-four --after 20   where a worn lane forgives a miss
  dryboard bag house-forty flat-forty-four   which balls of the bag earn their place
  dryboard auto unseen-draw --policy thumb   a block played by rule of thumb
  dryboard debrief RECORD                    what each choice of a block cost, and why
  dryboard review RECORD... --html report.html
  dryboard scenario new > lane.yaml          a scenario file to start from

SCENARIO is a file or a built-in name; dryboard scenario list names the built-in ones.`

/** The command line. Nothing heavier than the option table is loaded before a command runs. */
export function buildProgram(parts: ProgramParts): Command {
  const { console } = parts
  const program = new Command('dryboard')
    .description('A trainer for ten-pin bowlers: read the oil, decide, see what the decision was worth.')
    .version(VERSION)
    .exitOverride()
    .showSuggestionAfterError()
    .configureOutput({
      writeOut: (text) => printText(console, text.trimEnd()),
      writeErr: (text) => text.trimEnd().split('\n').forEach(console.tell),
      // A message quotes what was written, line ends and all; only its own hint stands on a line of its own.
      outputError: (text) =>
        text
          .trimEnd()
          .split(/\n(?=\(Did you mean [^\n]*$)/)
          .forEach(console.tell),
    })
    .addHelpText('after', EXAMPLES)
  addBlockCommands(program, parts)
  addPracticeCommands(program, parts)
  addLaneCommands(program, parts)
  addRecordCommands(program, parts)
  addScenarioCommands(program, parts)
  addContestCommands(program, parts)
  return program
}
