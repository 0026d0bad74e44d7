import type { Scenario } from '../../src/scenarios/files/scenario/scenario.js'
import { loadScenario } from '../../src/scenarios/library/load.js'
import { startingBag } from '../../src/tui/forms/ball-form.js'
import { createPainter } from '../../src/tui/terminal/painter.js'
import { leakOnScreen } from '../cli/hostile-payloads.js'
import { PLAIN } from './fixtures.js'
import { type Drawn, everyScreen, played } from './screens/all-screens.js'
import { fakeTerminal } from './terminal/fake-terminal.js'

/** A scenario with a text at the end of every string that a screen could show, past all checks. */
function poisoned({ setup, ...scenario }: Scenario, payload: string): Scenario {
  const told = (text: string) => `${text.slice(0, 12)}${payload}`
  return {
    ...scenario,
    title: told(scenario.title),
    purpose: told(scenario.purpose),
    notes: told('Note'),
    setup: {
      ...setup,
      lanes: [{ ...setup.lanes[0], name: told(setup.lanes[0].name) }],
      bag: setup.bag.map((ball) => ({ ...ball, name: told(ball.name) })),
      bowler: { ...setup.bowler, name: told(setup.bowler.name) },
    },
  }
}

/** Draws every screen with a text wherever a stranger's could stand, and returns what leaked with the screen that let it. */
export async function screenLeaks(home: Drawn['home'], payload: string, throws: number): Promise<string[]> {
  const clean = await played('house-forty', throws)
  const scenario = poisoned(await loadScenario('house-forty'), payload)
  const play = {
    ...clean,
    scenario,
    notice: `The throw could not be kept: ${payload}`,
    states: clean.states.map((state) => ({
      ...state,
      setup: { ...state.setup, ...scenario.setup, practiceThrows: 0 },
    })),
  }
  const kit = { bag: startingBag().map((ball) => ({ ...ball, name: `B${payload}` })), bowler: null }
  const kept = [{ title: payload, throws: 1, takeUp: () => Promise.reject(new Error()) }]
  const hostile = { ...home, scenarios: [scenario], kit, kept, notice: `no ${payload}` }
  const leaks: string[] = []
  for (const [screen, rows] of everyScreen(
    { home: hostile, plays: [play] },
    { columns: 80, rows: 24 },
    PLAIN,
    payload,
  )) {
    const terminal = fakeTerminal()
    const painter = createPainter(terminal)
    painter.show(rows)
    const leak = leakOnScreen(terminal.written.join(''))
    if (leak !== null) leaks.push(`${screen}: ${leak}`)
    painter.close()
  }
  return leaks
}
