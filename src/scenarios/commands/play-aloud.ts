import { systemConsole } from './console/system-console.js'
import { drillCommand } from './drill.js'
import { playCommand } from './play.js'

export interface AloudOptions {
  readonly scenarioName?: string
  readonly seed?: string
  /** True for the block left last, or the path of an unfinished record. */
  readonly resume?: string | true
  readonly dataFolder?: string
  /** A drill file to be played instead. */
  readonly drillPath?: string
  readonly player?: string
  readonly today?: boolean
  readonly against?: string
}

/**
 * A block line by line for a screen reader. A lane drawn in dots says nothing when read aloud, and labels beside it would
 * only repeat what the lines say in order; so nothing is drawn, moved or overwritten.
 */
export function playAloud({
  scenarioName,
  seed,
  resume,
  dataFolder,
  drillPath,
  player,
  today,
  against,
}: AloudOptions): Promise<number> {
  process.stderr.write(
    'dryboard: INK_SCREEN_READER is set, so a block is played line by line; "dryboard play NAME" plays on other lanes, and "dryboard scenario list" names them.\n',
  )
  const options = {
    grade: true,
    ...(seed === undefined ? {} : { seed }),
    ...(resume === undefined ? {} : { resume }),
    ...(dataFolder === undefined ? {} : { data: dataFolder }),
    ...(player === undefined ? {} : { player }),
    ...(today ? { today } : {}),
    ...(against === undefined ? {} : { against }),
  }
  // A hint is written over itself, which a screen reader would read out each time.
  const aloud = { ...systemConsole(), hint: () => {} }
  if (drillPath !== undefined) return drillCommand(drillPath, options, aloud)
  return playCommand(scenarioName, options, aloud)
}
