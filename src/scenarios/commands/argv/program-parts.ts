import type { Kind } from '../../../sim/analysis/practice/position.js'
import type { SessionMinutes } from '../../../sim/analysis/practice/session.js'
import type { BlockState } from '../../../sim/world/block/types.js'
import type { JoinedBlock } from '../../store/joined-block.js'
import type { OpenBlock } from '../../store/open-block.js'
import type { CommandConsole } from '../console/console.js'

export interface ScreenOptions {
  readonly scenarioName?: string
  readonly seed?: string
  /** The lane of the day in place of a scenario and a seed. */
  readonly today?: boolean
  /** The path of a record to bowl against. */
  readonly against?: string
  readonly noMotion?: boolean
  /** True for the block left last, or the path of an unfinished record. */
  readonly resume?: string | true
  /** A drill file to be played; nothing else is opened then. */
  readonly drillPath?: string
  /** Where records are kept, if named on the command line. */
  readonly dataFolder?: string
  /** Who plays, if named on the command line. */
  readonly player?: string
  /** Given where practice is to be opened at once. */
  readonly practice?: { readonly minutes: SessionMinutes; readonly kinds: readonly Kind[] | null }
  /** An entry of a contest that was sat down to; the trainer then opens on its next decision. */
  readonly entry?: { readonly open: OpenBlock; readonly states: readonly BlockState[] }
  /** A block whose lane is elsewhere, on the host of a contest. */
  readonly joined?: JoinedBlock
}

/** What the program needs from outside: streams, the screen, and a place to leave the exit code. */
export interface ProgramParts {
  readonly console: CommandConsole
  readonly openScreen: (options: ScreenOptions) => Promise<number>
  readonly finish: (exitCode: number) => void
}
