import { expect, it, vi } from 'vitest'
import type { CameToBe } from '../../src/scenarios/store/origin.js'
import { isShortBlockOver } from '../../src/sim/analysis/practice/short-block.js'
import { startShortBlock } from '../../src/tui/state/start.js'
import { startingState } from '../../src/tui/state/starting-state.js'
import { fixtureServices, shortScenario } from './fixtures.js'
import { mountTrainer } from './mounted.js'

const ENTER = '\r'

it('bowls the short block to its sixth frame, tells no grade before, files it and looks back on it', async () => {
  const ways = new Set<CameToBe | undefined>()
  const fixture = fixtureServices()
  const services: typeof fixture = {
    ...fixture,
    keepThrow: async (scenario, before, after, by) => {
      ways.add(by?.cameToBe)
      return fixture.keepThrow(scenario, before, after)
    },
  }
  const home = await startingState(undefined, services)
  const lane = { scenario: await shortScenario(), seed: 'short', family: 'medium houseLike' }
  const { type, screen, until, close } = mountTrainer({ services, initial: startShortBlock(home, lane, services) })
  try {
    await until(/Short block 1 of 6/)
    for (let press = 0; press < 60 && !/The block is over/.test(await screen()); press++) {
      expect(await screen()).not.toMatch(/Good as the best|Cost \d/)
      type(ENTER)
      await until(/on its way|The block is over|Enter throw/)
      type(' ')
      await until(/The block is over|Enter throw/)
    }
    await until(/What the choices cost is told in the debrief/)
    expect(await screen()).not.toMatch(/same luck|other luck/)
    await vi.waitFor(() => expect(services.filed).toHaveLength(1))
    expect(isShortBlockOver(services.filed[0]!.block)).toBe(true)
    expect(services.filed[0]!.block.spot).toMatchObject({ frame: 7 })
    expect([...ways]).toEqual(['short-block'])
    type(ENTER)
    await until(/Your own account|own account|What do you think/i)
  } finally {
    close()
  }
})
