import { expect, it, vi } from 'vitest'
import type { DrillPosition } from '../../src/scenarios/drills/load-drill.js'
import type { BlockState } from '../../src/sim/world/block/types.js'
import { startPosition } from '../../src/tui/state/drill-play.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { fixtureServices, shortScenario } from './fixtures.js'
import { mountTrainer } from './mounted.js'

const ENTER = '\r'

it('plays a drill on the screen: what was thrown, a decision a position, what to look for, and what it came to', async () => {
  const ways: (string | undefined)[] = []
  const fixture = fixtureServices()
  const services: typeof fixture = {
    ...fixture,
    keepThrow: async (scenario, before, after, by) => {
      ways.push(by?.cameToBe)
      return fixture.keepThrow(scenario, before, after)
    },
  }
  const scenario = await shortScenario()
  const positionAfter = (throws: number, lookFor: string): DrillPosition => {
    const states: BlockState[] = [services.begin(scenario, 'drilled')]
    for (let index = 0; index < throws; index++) {
      states.push(services.advance(states.at(-1)!, services.view(states.at(-1)!)!.suggestion))
    }
    const state = states.at(-1)!
    return { scenario, state, states, throws: 1, lookFor, given: state.throws.map(({ decision }) => decision) }
  }
  const drill = {
    title: 'Two moments',
    positions: [positionAfter(2, 'Where did it turn?'), positionAfter(0, 'Why there?')],
  }
  const home = await startingState(undefined, services)
  const initial = startPosition(home, { drill, place: 0, answered: [] }, services)
  const { type, screen, until, close } = mountTrainer({ services, initial })
  try {
    await until(/Position 1 of 2/)
    expect(await screen()).toMatch(/arrows.*breakpoint.*left/)
    type(ENTER)
    await until(/Enter throw/)
    type(ENTER)
    await until(/on its way|Look for/)
    type(' ')
    await until(/Look for: Where did it turn\?/)
    await vi.waitFor(() => expect(services.filed).toHaveLength(1))
    expect(services.filed[0]!.block.throws).toHaveLength(3)
    type(ENTER)
    await until(/Position 2 of 2/)
    type(ENTER)
    await until(/on its way|Look for/)
    type(' ')
    await until(/Look for: Why there\?/)
    type(ENTER)
    await until(/the drill is over/)
    expect(await screen()).toMatch(/2 choices, \d as good as the best: cost \d+\.\d pins in all\./)
    expect(ways).toEqual(['drill', 'drill'])
    // What was given is nobody's to weigh.
    expect(
      services.keptWorked.map(({ worked }) => worked.grades.slice(0, -1).every((grade) => grade === null)),
    ).toEqual([true, true])
    type(ENTER)
    await until(/New block/)
  } finally {
    close()
  }
})
