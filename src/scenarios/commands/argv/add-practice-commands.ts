import { type Command, InvalidArgumentError, Option } from 'commander'
import type { Kind } from '../../../sim/analysis/practice/position.js'
import type { SessionMinutes } from '../../../sim/analysis/practice/session.js'
import type { ProgramParts } from './program-parts.js'
import { dataFolder, jsonFlag, playedBy } from './shared-options.js'

/** Named here as well, so that no part of the simulator is loaded to read a command line. */
const KINDS: readonly Kind[] = ['decide', 'read', 'call', 'throw-or-lane']
const SESSION_MINUTES: readonly SessionMinutes[] = [5, 10, 20]

/** Practice: one position at a time. */
export function addPracticeCommands(program: Command, { console, openScreen, finish }: ProgramParts): void {
  program
    .command('practice')
    .description(
      'one position at a time: decide, read the oil, call a line, tell throw from lane; drawn where you lose most',
    )
    .addOption(new Option('--minutes <n>', 'how long: 5, 10 or 20').argParser(minutesOption).default(10))
    .addOption(
      new Option('--kind <kinds>', `only these, with commas between: ${KINDS.join(', ')}`).argParser(kindsOption),
    )
    .option('--plain', 'line by line, for pipes and screen readers')
    .addOption(playedBy())
    .addOption(dataFolder())
    .addOption(jsonFlag().conflicts(['plain', 'kind']))
    .action(
      async (options: {
        minutes: SessionMinutes
        kind?: Kind[]
        plain?: boolean
        player?: string
        data?: string
        json?: boolean
      }) => {
        const { minutes, kind, plain, data, player, json } = options
        if (console.interactive && !plain && !json) {
          return finish(
            await openScreen({
              practice: { minutes, kinds: kind ?? null },
              ...(data ? { dataFolder: data } : {}),
              ...(player ? { player } : {}),
            }),
          )
        }
        const { practiceCommand } = await import('../practice.js')
        finish(
          await practiceCommand(
            {
              minutes,
              ...(kind ? { kind } : {}),
              ...(data ? { data } : {}),
              ...(player ? { player } : {}),
              ...(json ? { json } : {}),
            },
            console,
          ),
        )
      },
    )
}

function minutesOption(text: string): SessionMinutes {
  const minutes = SESSION_MINUTES.find((one) => String(one) === text.trim())
  if (minutes === undefined) throw new InvalidArgumentError(`allowed is one of ${SESSION_MINUTES.join(', ')}`)
  return minutes
}

function kindsOption(text: string): Kind[] {
  const kinds = text.split(',').map((word) => KINDS.find((kind) => kind === word.trim()))
  if (kinds.some((kind) => kind === undefined))
    throw new InvalidArgumentError(`allowed are ${KINDS.join(', ')}, with commas between`)
  return kinds as Kind[]
}
