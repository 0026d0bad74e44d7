import { EXIT } from '../../scenarios/files/text/exit-codes.js'
import { ScenarioError } from '../../scenarios/files/text/scenario-error.js'
import type { JoinedBlock } from '../../scenarios/store/joined-block.js'
import type { OpenBlock } from '../../scenarios/store/open-block.js'
import { laneOfToday } from '../../scenarios/store/today.js'
import type { Kind } from '../../sim/analysis/practice/position.js'
import type { SessionMinutes } from '../../sim/analysis/practice/session.js'
import type { BlockState } from '../../sim/world/block/types.js'
import { themeFor } from '../draw/theme.js'
import type { AppState } from '../state/app-state.js'
import { beginAtOnce } from '../state/practice-state.js'
import type { TrainerServices } from '../state/services.js'
import { drillState, entryState, resumedState, startingState, stateAgainst } from '../state/starting-state.js'
import { TOUR_SCENARIO } from '../state/tour.js'
import { readAppearance } from '../terminal/colour.js'
import { takeTerminal } from '../terminal/edges.js'
import { faultSentence } from '../terminal/lifecycle.js'
import { openThinker } from '../worker/worker-thinker.js'
import { hostedServices, playedElsewhere } from './hosted.js'
import { loadScreen } from './launch.js'
import { realServices } from './services-real.js'

export interface TrainerOptions {
  /** A file or a built-in name; the trainer then opens on the first decision. */
  readonly scenarioName?: string
  readonly seed?: string
  /** The lane of the day in place of a scenario and a seed. */
  readonly today?: boolean
  /** The path of a record to bowl against. */
  readonly against?: string
  readonly noMotion?: boolean
  /** True for the block left last, or the path of an unfinished record; the trainer then opens on its next decision. */
  readonly resume?: string | true
  /** A drill file; the trainer then opens on its first position. */
  readonly drillPath?: string
  /** Where blocks are kept, if named on the command line. */
  readonly dataFolder?: string
  /** Who plays, if anybody has said. */
  readonly player?: string
  /** Given where practice is to be opened at once. */
  readonly practice?: { readonly minutes: SessionMinutes; readonly kinds: readonly Kind[] | null }
  /** An entry of a contest that was sat down to. */
  readonly entry?: { readonly open: OpenBlock; readonly states: readonly BlockState[] }
  /** A block that a host throws. */
  readonly joined?: JoinedBlock
  /** Plays a block line by line instead, where a screen reader is said to listen. */
  readonly playAloud: () => Promise<number>
}

/**
 * Opens the full-screen trainer and resolves to the program's exit code once it is left.
 *
 * @throws ScenarioError when the scenario asked for cannot be read or is wrong; the screen has not been touched then.
 */
export async function openTrainer(asked: TrainerOptions): Promise<number> {
  const { stdin, stdout, stderr, env } = process
  if (!stdin.isTTY || !stdout.isTTY) {
    stderr.write('dryboard: the full screen needs a terminal; use --plain for a block line by line.\n')
    return EXIT.usage
  }
  if (env.INK_SCREEN_READER === 'true' || env.INK_SCREEN_READER === '1') return asked.playAloud()
  const options = asked.today ? { ...asked, ...todaysLanes() } : asked
  const thinker = openThinker()
  const secondThinker = openThinker()
  const real = realServices(env, thinker, { ...options, secondThinker })
  const services = options.joined ? hostedServices(real, options.joined) : real
  const [{ runTrainer }, initial] = await Promise.all([loadScreen(), firstState(options, services)]).catch(
    (fault: unknown) => {
      thinker.close()
      secondThinker.close()
      throw fault
    },
  )

  const { painter, keys, leave } = takeTerminal({ stdin, stdout, stderr })
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
    leave()
    if (fault instanceof ScenarioError) throw fault
    stderr.write(faultSentence(fault))
    return EXIT.ourFault
  } finally {
    leave()
    thinker.close()
    secondThinker.close()
  }
}

async function firstState(
  { resume, against, drillPath, scenarioName, practice, entry, joined }: TrainerOptions,
  services: TrainerServices,
): Promise<AppState> {
  if (practice) {
    const home = await startingState(undefined, services, [TOUR_SCENARIO])
    return { ...home, screen: { kind: 'practice', practice: beginAtOnce(practice.minutes, practice.kinds) } }
  }
  if (joined) return entryState(playedElsewhere(joined), services)
  if (entry) return entryState(services.adopt(entry.open, entry.states), services)
  if (drillPath !== undefined) return drillState(drillPath, services)
  if (resume !== undefined) return resumedState(resume, services)
  if (against !== undefined) return stateAgainst(against, services)
  return startingState(scenarioName, services, [TOUR_SCENARIO])
}

function todaysLanes(): { readonly scenarioName: string; readonly seed: string } {
  const { scenarioName, seed } = laneOfToday()
  return { scenarioName, seed }
}
