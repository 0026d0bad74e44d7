import { randomBytes } from 'node:crypto'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { enter } from '../../../src/scenarios/contest/entry/enter.js'
import { type OpenedPack, openPack, sealPack } from '../../../src/scenarios/contest/pack/pack.js'
import { type Scenario, scenarioFrom } from '../../../src/scenarios/files/scenario/scenario.js'
import type { ContestRules } from '../../../src/scenarios/files/schema/contest-rules.js'
import { localTime } from '../../../src/scenarios/files/text/local-time.js'
import { locateNowhere } from '../../../src/scenarios/files/text/source-text.js'
import { builtInScenario } from '../../../src/scenarios/library/library.js'
import { blockStore } from '../../../src/scenarios/store/block-store.js'
import { freshKey, type SigningKey } from '../../../src/scenarios/store/signing.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import type { BlockState, Decision } from '../../../src/sim/world/block/types.js'

export const folder = (): string => mkdtempSync(join(tmpdir(), 'dryboard-contest-'))

export const PASSPHRASE = 'lomu-tavi-keso-runa-bide'
export const SEED = 'ab'.repeat(32)

/** House oil for a bowler with one ball: takes little working out. */
export function oneBall(games = 1): Scenario {
  const house = builtInScenario('house-forty')!
  const data = { ...house, bag: house.bag.slice(3, 4), practiceThrows: 0, games }
  return scenarioFrom('one-ball', locateNowhere('one-ball', data))
}

export const RULES: ContestRules = {
  title: 'Autumn contest',
  notes: '',
  games: 1,
  bowlers: 'own-hand',
  ranking: 'luck-adjusted',
  ties: ['score', 'best-game'],
  tries: 1,
  deadline: localTime(new Date(Date.now() + 3_600_000)),
}

export interface SealedForTests {
  readonly opened: OpenedPack
  readonly key: SigningKey
}

/** A contest sealed a minute ago and opened. */
export function sealed(rules: Partial<ContestRules> = {}, seed = SEED, scenario = oneBall()): SealedForTests {
  const key = freshKey()
  const pack = sealPack({
    contest: randomBytes(12).toString('hex'),
    sealedAt: localTime(new Date(Date.now() - 60_000)),
    rules: { ...RULES, ...rules },
    scenario,
    seed,
    passphrase: PASSPHRASE,
    key,
  })
  return { opened: openPack('pack', pack, PASSPHRASE), key }
}

export type Chooser = (state: BlockState) => Decision
export const suggested: Chooser = (state) => playerView(state)!.suggestion
/** Always so many boards to the left of what is suggested. */
export const movedBy =
  (boards: number): Chooser =>
  (state) => {
    const { aim, ...rest } = suggested(state)
    const last = state.throws.at(-1)
    const isNew = last === undefined
    return {
      ...rest,
      aim: isNew ? { ...aim, feetBoard: aim.feetBoard + boards, targetBoard: aim.targetBoard + boards } : aim,
    }
  }

export interface PlayedForTests {
  readonly path: string
  readonly data: string
  readonly code: string
  readonly state: BlockState
}

/** Plays an entry as the program does, and files it. @param throws how many; all where left out */
export async function playEntry(
  opened: OpenedPack,
  player: string,
  choose: Chooser = suggested,
  { data = folder(), throws = Number.POSITIVE_INFINITY }: { data?: string; throws?: number } = {},
): Promise<PlayedForTests> {
  const store = blockStore(data)
  const { open, code } = await enter({ path: 'pack', opened, player, bowler: {}, store, data, now: new Date() })
  let state = open.begun
  while (state.spot && state.throws.length < throws) {
    state = advance(state, choose(state))
    await open.keep(state.throws.at(-1)!)
  }
  const path = await open.file(state)
  await open.leave()
  return { path, data, code, state }
}

/** Writes a text as a file of its own. */
export function fileOf(name: string, text: string, into = folder()): string {
  const path = join(into, name)
  writeFileSync(path, text)
  return path
}
