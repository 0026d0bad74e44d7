import { loadScenario } from '../../src/scenarios/load.js'
import type { Scenario } from '../../src/scenarios/scenario.js'
import type { BlockState, Decision } from '../../src/sim/block/types.js'
import { type PlayerView, playerView } from '../../src/sim/block/view.js'
import { KNOWN_LABEL, type KnownGrade } from '../../src/sim/decision/grade.js'
import { FULL_RACK } from '../../src/sim/pins/leaves.js'
import { type Theme, themeFor } from '../../src/tui/draw/theme.js'
import type { KeptBlock, TrainerServices } from '../../src/tui/services.js'
import { realServices } from '../../src/tui/services-real.js'

/** A grade made up for the screens' sake: a board of target off 11 costs a pin. The grader has tests of its own. */
export function madeUpGrade(block: BlockState, decision: Decision): KnownGrade | null {
  if (block.spot?.phase !== 'game') return null
  const givenAwayPins = Math.abs(decision.aim.targetBoard - 11)
  const best = { ...decision, aim: { ...decision.aim, targetBoard: 11 } }
  return {
    label: KNOWN_LABEL,
    kind: 'first-ball',
    givenAwayPins,
    standardErrorPins: 0.05,
    choiceWorth: -givenAwayPins,
    bestWorth: 0,
    best,
    perBall: block.setup.bag.map((ball, index) => ({ ballId: ball.id, worth: -index, decision: best })),
  }
}

/** The player's view with a made-up spare suggestion, which spares the tests the spare search. */
function quickView(block: BlockState): PlayerView | null {
  const view = playerView({ ...block, standing: FULL_RACK })
  if (!view || block.standing === FULL_RACK) return view
  const ballId = block.setup.bag.at(-1)!.id
  return { ...view, suggestion: { ballId, aim: { feetBoard: 25, targetBoard: 18, speedStep: 0 }, release: 'spare' } }
}

export interface FixtureServices extends TrainerServices {
  readonly keptCalls: { scenario: Scenario; block: BlockState; finished: boolean }[]
}

/** The trainer's services with the true simulator, but made-up grades and nothing written to disk. */
export function fixtureServices(kept: KeptBlock | null = null): FixtureServices {
  const keptCalls: FixtureServices['keptCalls'] = []
  return {
    ...realServices({}, 'fixture'),
    view: quickView,
    grade: madeUpGrade,
    keptBlock: async () => kept,
    keep: async (scenario, block, finished) => {
      keptCalls.push({ scenario, block, finished })
    },
    keptCalls,
  }
}

/** A short block without practice, so that tests reach graded throws at once. */
export async function shortScenario(name = 'house-forty'): Promise<Scenario> {
  const scenario = await loadScenario(name)
  return { ...scenario, setup: { ...scenario.setup, practiceThrows: 0, games: 1 } }
}

export const THEMES: readonly (readonly [name: string, theme: Theme])[] = [
  ['true colour', themeFor({ depth: 'true', characters: 'unicode' })],
  ['256 colours', themeFor({ depth: 'palette', characters: 'unicode' })],
  ['16 colours', themeFor({ depth: 'sixteen', characters: 'unicode' })],
  ['no colour', themeFor({ depth: 'none', characters: 'unicode' })],
  ['no colour, ASCII', themeFor({ depth: 'none', characters: 'ascii' })],
]
export const PLAIN = themeFor({ depth: 'none', characters: 'unicode' })

const STYLE = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g')
/** A row without its styles. */
export const bare = (row: string): string => row.replace(STYLE, '')
