import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { type KeptAccount, keepAccount, readKeptAccount } from '../../../src/scenarios/store/kept-account.js'
import { type BlockRecord, recordOf } from '../../../src/scenarios/store/record.js'
import { accountOf } from '../../../src/sim/analysis/debrief/account.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'

const folder = mkdtempSync(join(tmpdir(), 'dryboard-accounts-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

let record: BlockRecord
let worked: KeptAccount
beforeAll(async () => {
  const loaded = await loadScenario('house-forty')
  const scenario = { ...loaded, setup: { ...loaded.setup, practiceThrows: 0 } }
  const begun = beginScenario(scenario, 'account')
  const block = advance(begun, playerView(begun)!.suggestion)
  const account = accountOf(block)
  record = recordOf(scenario, block)
  worked = { grades: account.throws.map(({ graded }) => graded?.grade ?? null), account }
}, 120_000)

describe('the account of a block, kept', () => {
  it('comes back to the last bit', async () => {
    await keepAccount(folder, record, worked)
    const kept = await readKeptAccount(folder, record)
    expect(kept).toEqual(worked)
    // toEqual tells NaN and minus zero as they are, but not whether an array of doubles is still one.
    expect(kept!.account!.throws[0]!.paths.choice.path).toBeInstanceOf(Float64Array)
  })

  it('comes back without an account where only grades were known, and which were not asked', async () => {
    const grades = worked.grades.map((grade, index) => (index === 0 ? undefined : grade))
    await keepAccount(folder, record, { grades, account: null })
    expect(await readKeptAccount(folder, record)).toEqual({ grades, account: null })
  })

  it('is not taken for one of today where choices were graded otherwise', async () => {
    await keepAccount(folder, record, worked)
    vi.doMock('../../../src/scenarios/store/grade-revision.js', () => ({ GRADE_REVISION: 'another' }))
    vi.resetModules()
    try {
      const later = await import('../../../src/scenarios/store/kept-account.js')
      expect(await later.readKeptAccount(folder, record)).toBeNull()
    } finally {
      vi.doUnmock('../../../src/scenarios/store/grade-revision.js')
    }
    expect(await readKeptAccount(folder, record)).toEqual(worked)
  })

  it('is not taken for that of another block, and not for one at all where the file is spoiled', async () => {
    await keepAccount(folder, record, worked)
    const { decisions } = record
    const [first, ...rest] = decisions
    for (const other of [
      { ...record, seed: 'another' },
      { ...record, decisions: decisions.slice(0, -1) },
      { ...record, decisions: [{ ...first!, feet: first!.feet + 1 }, ...rest] },
    ]) {
      expect(await readKeptAccount(folder, other)).toBeNull()
    }
    // Whoever played it, the account is the same.
    expect(await readKeptAccount(folder, { ...record, player: 'Ines' })).toEqual(worked)
    const path = join(folder, readdirSync(folder)[0]!)
    const text = readFileSync(path, 'utf8')
    // The last is one figure edited.
    const edited = text.replace(/"givenAwayPins":\d/, '"givenAwayPins":9')
    expect(edited).not.toBe(text)
    for (const spoiled of ['', text.slice(0, 200), '{}', '[]', text.replace('"version":3', '"version":4'), edited]) {
      writeFileSync(path, spoiled)
      expect(await readKeptAccount(folder, record)).toBeNull()
    }
  })
})
