import { setTimeout as wait } from 'node:timers/promises'
import { noNotes } from '../../src/scenarios/store/block-notes.js'
import { startBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { fixtureServices, shortScenario } from './fixtures.js'
import { mountTrainer } from './mounted.js'

const ENTER = '\r'
const ESCAPE = '\u001B'
const DOWN = '\u001B[B'
const TAB = '\t'
const QUIET_MILLISECONDS = 120
const LONGEST_MILLISECONDS = 6000

/** A screen reached by keys, and words by which it is known. `choose` goes down a menu to a line first. */
interface Stop {
  readonly name: string
  readonly choose?: string
  readonly keys: readonly string[]
  readonly shows: RegExp
}

const TOUR: readonly Stop[] = [
  { name: 'deciding', keys: [], shows: /Enter throw/ },
  { name: 'open bag', keys: ['b'], shows: /The bag/ },
  { name: 'call', keys: [ESCAPE, 'c'], shows: /how sure/ },
  { name: 'after a throw', keys: ['x', 't', '.', ENTER, ' '], shows: /Seen:/ },
  { name: 'the read', keys: ['o'], shows: /The oil ends between/ },
  { name: 'keys', keys: [ESCAPE, '?'], shows: /the guided first frame/ },
  { name: 'words of the trade', keys: [TAB], shows: /Words of the trade/ },
  { name: 'ending a block', keys: [ESCAPE, 'e'], shows: /show the oil\?/ },
  { name: 'own account', keys: [ENTER], shows: /What was it\?/ },
  { name: 'debrief', keys: [ESCAPE], shows: /Findings/ },
  { name: 'debrief, choices', keys: [TAB], shows: /Findings/ },
  { name: 'debrief, ledger', keys: [TAB], shows: /Findings/ },
  { name: 'debrief, findings', keys: [TAB], shows: /Findings/ },
  { name: 'debrief, known', keys: [TAB], shows: /Findings/ },
  { name: 'debrief, same luck', keys: [TAB, TAB], shows: /same luck again/ },
  { name: 'balls rolled side by side', keys: [TAB, 'r'], shows: /Findings/ },
  { name: 'throws run through', keys: ['p'], shows: /Findings/ },
  { name: 'what if', keys: ['i'], shows: /What if:/ },
  { name: 'home', keys: [ESCAPE, ESCAPE], shows: /New block/ },
  { name: 'past blocks', choose: 'Past blocks', keys: [ENTER], shows: /latest first/ },
  { name: 'past block opened', keys: [ENTER], shows: /Your account first|Findings/ },
  { name: 'home again', keys: [ESCAPE, ESCAPE], shows: /New block/ },
  { name: 'progress', choose: 'Progress', keys: [ENTER], shows: /cost in pins a game/ },
  { name: 'home from progress', keys: [ESCAPE], shows: /New block/ },
  { name: 'bag and bowler', choose: 'Bag and bowler', keys: [ENTER], shows: /Your bowler|Bag and bowler/ },
  { name: 'a ball', keys: [ENTER], shows: /type one|or type/ },
  { name: 'settings', keys: [ESCAPE, ESCAPE], choose: 'Settings', shows: /kept as they are changed/ },
  { name: 'scenarios', keys: [ESCAPE], choose: 'New block', shows: /choose the lanes/ },
  { name: 'who bowls', keys: [ENTER], shows: /choose who bowls/ },
  { name: 'a new block', keys: [ENTER], shows: /Enter throw/ },
]

/** What runs and what is drawn while a screen is on and nobody presses a key. */
export interface Idle {
  readonly name: string
  readonly timers: number
  readonly pictures: number
}

const timersNow = (): number =>
  process.getActiveResourcesInfo().filter((what) => what === 'Timeout' || what === 'Immediate').length

/**
 * Goes to every screen of the trainer and looks at what it does when left alone; and once, to see that timers are seen at
 * all, at a ball that rolls.
 */
export async function idleOnEveryScreen(): Promise<{ readonly idle: Idle[]; readonly timersWhileRolling: number }> {
  const scenario = await shortScenario()
  const past = {
    path: '/records/old.json',
    name: 'house-forty',
    title: 'An old block',
    seed: 's',
    bowledAt: new Date(0),
    throws: 1,
    games: [7],
    frames: 0,
    isOwn: true,
    kind: 'block' as const,
  }
  const services = fixtureServices({
    past: [past],
    openPast: async () => {
      const begun = services.begin(scenario, 'old')
      const states = [begun, services.advance(begun, services.view(begun)!.suggestion)]
      return { scenario, states, notes: noNotes('block'), recordPath: past.path }
    },
  })
  const home = await startingState(undefined, services)
  const initial = startBlock(home, scenario, 'idle', services)
  const { terminal, type, screen, until, close } = mountTrainer({ services, initial })
  /** Until what was set going has come to its end; what never ends is found still running. */
  const settled = async () => {
    const deadline = performance.now() + LONGEST_MILLISECONDS
    for (let before = -1; performance.now() < deadline; ) {
      if (before === terminal.written.length && timersNow() === 0) return
      before = terminal.written.length
      await wait(QUIET_MILLISECONDS)
    }
  }
  const choose = async (label: string) => {
    for (let tries = 0; tries < 12 && !new RegExp(`▸ ?${label}`).test(await screen()); tries++) {
      type(DOWN)
      await wait(30)
    }
    type(ENTER)
  }

  const idle: Idle[] = []
  let timersWhileRolling = 0
  try {
    for (const stop of TOUR) {
      if (stop.choose !== undefined && stop.keys[0] === ENTER) await choose(stop.choose)
      else {
        for (const key of stop.keys) {
          type(key)
          await wait(40)
        }
        if (stop.choose !== undefined) await choose(stop.choose)
      }
      await until(stop.shows).catch((cause: unknown) => {
        throw new Error(`The screen of ${stop.name} did not come.`, { cause })
      })
      await settled()
      const before = terminal.written.length
      const timers = timersNow()
      await wait(QUIET_MILLISECONDS)
      idle.push({ name: stop.name, timers, pictures: terminal.written.length - before })
    }
    type(ENTER)
    await wait(500)
    timersWhileRolling = timersNow()
  } finally {
    close()
  }
  return { idle, timersWhileRolling }
}
