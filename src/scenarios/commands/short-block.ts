import { settling } from '../../sim/analysis/debrief/settling.js'
import { beginScenario } from '../files/scenario/begin-scenario.js'
import { openingLines } from '../plain/opening-lines.js'
import { sharedLines } from '../plain/shared-lines.js'
import type { Desk } from '../practice/desk.js'
import { shortBlockLane } from '../practice/short-block-lane.js'
import { isBlockOver } from '../store/block-over.js'
import { blockStore } from '../store/block-store.js'
import { shortBlockLine, shortBlockWords } from '../words/practice-session-words.js'
import type { CommandConsole } from './console/console.js'
import { fileBlock, type PlayingOn, playOn } from './play.js'

interface ShortBlock {
  readonly desk: Desk
  readonly data: string
  readonly typed: AsyncIterator<string>
}

/** The short block that a session of practice ends with, line by line: no grades until it is over, then what it cost. */
export async function playShortBlock({ desk, data, typed }: ShortBlock, console: CommandConsole): Promise<void> {
  const { scenario, seed, family } = await shortBlockLane(desk.session)
  const store = blockStore(data)
  const begun = beginScenario(scenario, seed)
  const open = store.begin({ scenario, begun, player: desk.player, cameToBe: 'short-block' })
  try {
    await store.tryOut()
    console.print('')
    console.print(shortBlockWords(family))
    for (const line of openingLines(scenario, seed)) console.print(line)
    const grades: PlayingOn['grades'] = []
    const behind = console.interactive ? settling(begun) : null
    const lines = sharedLines(typed)
    const state = await playOn(
      open,
      { script: null, options: { grade: true }, grades, behind, rival: null, lines },
      console,
    )
    await fileBlock(open, { state, grades, behind, data }, console)
    const costs = grades.flatMap((grade) => (grade ? [grade.givenAwayPins] : []))
    if (isBlockOver(open.cameToBe, state) && costs.length > 0) console.print(shortBlockLine(costs))
  } finally {
    await open.leave()
  }
}
