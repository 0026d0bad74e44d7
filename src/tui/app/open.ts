import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import { themeFor } from '../draw/theme.js'
import { resumedState, startingState } from '../state/starting-state.js'
import { TOUR_SCENARIO } from '../state/tour.js'
import { readAppearance } from '../terminal/colour.js'
import { createKeyReader } from '../terminal/key-reader.js'
import { EXIT_INTERRUPTED, EXIT_SOFTWARE, faultSentence, holdTerminal } from '../terminal/lifecycle.js'
import { createPainter } from '../terminal/painter.js'
import { openThinker } from '../worker/worker-thinker.js'
import { loadScreen } from './launch.js'
import { realServices } from './services-real.js'

export interface TrainerOptions {
  /** A file or a built-in name; the trainer then opens on the first decision. */
  readonly scenarioName?: string
  readonly seed?: string
  readonly noMotion?: boolean
  /** True for the block left last, or the path of an unfinished record; the trainer then opens on its next decision. */
  readonly resume?: string | true
}

const EXIT_USAGE = 64

/**
 * Opens the full-screen trainer and resolves to the program's exit code once it is left.
 *
 * @throws ScenarioError when the scenario asked for cannot be read or is wrong; the screen has not been touched then.
 */
export async function openTrainer(options: TrainerOptions): Promise<number> {
  const { stdin, stdout, stderr, env } = process
  if (!stdin.isTTY || !stdout.isTTY) {
    stderr.write('dryboard: the full screen needs a terminal; use --plain for a block line by line.\n')
    return EXIT_USAGE
  }
  if (env.INK_SCREEN_READER === 'true' || env.INK_SCREEN_READER === '1') return playAloud(options)
  const thinker = openThinker()
  const services = realServices(env, thinker, options.seed)
  const [{ runTrainer }, initial] = await Promise.all([
    loadScreen(),
    options.resume === undefined
      ? startingState(options.scenarioName, services, [TOUR_SCENARIO])
      : resumedState(options.resume, services),
  ]).catch((fault: unknown) => {
    thinker.close()
    throw fault
  })

  const hold = holdTerminal({ input: stdin, output: stdout, errors: stderr })
  const painter = createPainter(stdout)
  const keys = createKeyReader(stdin, {
    onInterrupt() {
      hold.leave()
      process.exit(EXIT_INTERRUPTED)
    },
    onRedraw: painter.repaint,
  })
  try {
    const exitCode = await runTrainer({
      painter,
      keys,
      services,
      theme: themeFor(readAppearance(env)),
      initial,
      noMotion: options.noMotion ?? false,
    })
    await services.leave()
    return exitCode
  } catch (fault) {
    hold.leave()
    if (fault instanceof ScenarioError) throw fault
    stderr.write(faultSentence(fault))
    return EXIT_SOFTWARE
  } finally {
    painter.close()
    keys.close()
    hold.leave()
    thinker.close()
  }
}

/**
 * A block line by line for a screen reader. A lane drawn in dots says nothing when read aloud, and labels beside it would
 * only repeat what the lines say in order; so nothing is drawn, moved or overwritten.
 */
async function playAloud({ scenarioName, seed, resume }: TrainerOptions): Promise<number> {
  process.stderr.write(
    'dryboard: INK_SCREEN_READER is set, so a block is played line by line; "dryboard play NAME" plays on other lanes, and "dryboard scenario list" names them.\n',
  )
  const [{ playCommand }, { systemConsole }] = await Promise.all([
    import('../../scenarios/commands/play.js'),
    import('../../scenarios/commands/console/system-console.js'),
  ])
  const options = { grade: true, ...(seed === undefined ? {} : { seed }), ...(resume === undefined ? {} : { resume }) }
  // A hint is written over itself, which a screen reader would read out each time.
  return playCommand(scenarioName ?? 'house-forty', options, { ...systemConsole(), hint: () => {} })
}
