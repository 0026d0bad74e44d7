import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { playLines } from '../../../src/scenarios/plain/play-lines.js'
import { sitDown } from '../../../src/scenarios/practice/desk.js'
import { readyPositions } from '../../../src/scenarios/practice/position-set.js'
import { shortBlockLane } from '../../../src/scenarios/practice/short-block-lane.js'
import { ownProgress } from '../../../src/scenarios/reports/progress/own-progress.js'
import { shortBlockWords } from '../../../src/scenarios/reports/progress/progress-lines.js'
import { blockStore } from '../../../src/scenarios/store/block-store.js'
import { debriefsFolder } from '../../../src/scenarios/store/data-folder.js'
import { fileKeeper } from '../../../src/scenarios/store/keeping.js'
import { keepAccount } from '../../../src/scenarios/store/kept-account.js'
import { readRecord } from '../../../src/scenarios/store/record.js'
import { KINDS } from '../../../src/sim/analysis/practice/position.js'
import { SESSION_MINUTES } from '../../../src/sim/analysis/practice/session.js'
import { isShortBlockOver, SHORT_BLOCK_FRAMES } from '../../../src/sim/analysis/practice/short-block.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import type { BlockState } from '../../../src/sim/world/block/types.js'
import { tally } from '../../../src/sim/world/scoring/game.js'
import { madeUpAccount } from '../../tui/fixtures.js'

const NOW = new Date('2026-03-08T12:00:00Z')
const folder = () => mkdtempSync(join(tmpdir(), 'dryboard-short-'))
const session = async (minutes: (typeof SESSION_MINUTES)[number] = 20, kinds: typeof KINDS | null = null) =>
  (await sitDown({ data: folder(), player: undefined, minutes, kinds, now: NOW })).session

/** Each throw the line that is offered. */
function playedOut(begun: BlockState): BlockState[] {
  const states = [begun]
  while (!isShortBlockOver(states.at(-1)!)) {
    const state = states.at(-1)!
    states.push(advance(state, playerView(state)!.suggestion))
  }
  return states
}

describe('the short block that practice ends with', () => {
  it('ends a session of twenty minutes of every kind, and no other', async () => {
    for (const minutes of SESSION_MINUTES) {
      expect((await session(minutes)).plan.hasShortBlock).toBe(minutes === 20)
      expect((await session(minutes, KINDS)).plan.hasShortBlock).toBe(false)
    }
    const { plan } = await session()
    expect(plan).toMatchObject({ practice: 18, test: 0 })
  })

  it('is bowled on oil of a family that was practised, under a seed that no position has, the same each time', async () => {
    const { positions } = await readyPositions()
    const used = new Set(positions.map(({ moment }) => moment.seed))
    const begun = await session()
    for (let answers = 0; answers < 12; answers++) {
      const later = { ...begun, learner: { ...begun.learner, answers: new Array(answers).fill(null) } }
      const lane = await shortBlockLane(later)
      expect([...begun.plan.families, ...begun.plan.comeBack]).toContain(lane.family)
      expect(used.has(lane.seed)).toBe(false)
      expect(await shortBlockLane(later)).toEqual(lane)
    }
  })

  it('has six frames, is filed as what it is, told in progress, and not gone on with', async () => {
    const { scenario, seed } = await shortBlockLane(await session())
    const data = folder()
    const store = blockStore(data)
    const states = playedOut(beginScenario(scenario, seed))
    const open = store.begin({ scenario, begun: states[0]!, player: 'Ansa', cameToBe: 'short-block' })
    for (const { throws } of states.slice(1)) await open.keep(throws.at(-1)!)
    const path = await open.file(states.at(-1)!)
    const record = await readRecord(path)
    expect(record.origin.cameToBe).toBe('short-block')
    expect(await fileKeeper({ DRYBOARD_DATA: data }, {}).openPast(path)).toMatchObject({ isShort: true })
    expect(record.decisions.every(({ by }) => by === 'player')).toBe(true)
    const { setup, balls } = states.at(-1)!
    expect(
      balls.flatMap((game) => tally(setup.scoring, game).frames.filter((one) => one.balls.length > 0)),
    ).toHaveLength(SHORT_BLOCK_FRAMES)
    const account = madeUpAccount(states.at(-1)!)
    const grades = account.throws.map(({ graded }) => graded?.grade ?? null)
    await keepAccount(debriefsFolder(data), record, { grades, account })
    const { shortBlocks } = await ownProgress(data, 'Ansa')
    const cost = grades.reduce((sum, grade) => sum + (grade?.givenAwayPins ?? 0), 0)
    expect(shortBlocks).toMatchObject({ blocks: 1, choices: grades.filter((grade) => grade !== null).length })
    expect(shortBlocks.cost.mean).toBeCloseTo((10 * cost) / SHORT_BLOCK_FRAMES, 1)
    expect(shortBlockWords(shortBlocks)).toMatch(/^1 short block after practice, \d+ choices without grades/)
    await expect(store.resume(path, 'Ansa')).rejects.toThrow('the block is finished; there is nothing to go on with.')
  })

  it('prices each choice and says nothing of it', async () => {
    const scenario = await loadScenario('house-forty')
    const setup = { ...scenario.setup, practiceThrows: 0 }
    const said: string[] = []
    const prices: unknown[] = []
    await playLines(beginScenario({ ...scenario, setup }, 'quiet'), {
      lines: (async function* () {
        yield* ['slide 39', '']
      })(),
      say: (text) => said.push(text),
      object: (text) => said.push(text),
      keep: async () => {},
      notKept: (fault) => {
        throw fault
      },
      grade: 'quietly',
      graded: (price) => prices.push(price?.givenAwayPins),
      enough: ({ throws }) => throws.length >= 1,
    })
    expect(prices).toEqual([expect.any(Number)])
    expect(said.join('\n')).toMatch(/You throw: .*slide 39/)
    expect(said.join('\n')).not.toMatch(/cost|good as the best/i)
  })

  it('stays one where it is left, and is taken up without its grades', async () => {
    const { scenario, seed } = await shortBlockLane(await session())
    const data = folder()
    const states = playedOut(beginScenario(scenario, seed)).slice(0, -2)
    const store = blockStore(data)
    const open = store.begin({ scenario, begun: states[0]!, player: 'Ansa', cameToBe: 'short-block' })
    for (const { throws } of states.slice(1)) await open.keep(throws.at(-1)!)
    await open.leave()
    const keeper = fileKeeper({ DRYBOARD_DATA: data }, { player: 'Ansa' })
    try {
      const played = await keeper.resume(true)
      expect(played).toMatchObject({ isShort: true, notes: { mode: 'test' } })
      expect(played.states).toHaveLength(states.length)
    } finally {
      await keeper.leave()
    }
  })
})
