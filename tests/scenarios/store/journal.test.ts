import { appendFileSync, mkdtempSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { beginScenario } from '../../../src/scenarios/files/scenario/begin-scenario.js'
import { loadScenario } from '../../../src/scenarios/library/load.js'
import { leftJournals, openJournal, readJournal, takeUpJournal } from '../../../src/scenarios/store/journal.js'
import { recordOf } from '../../../src/scenarios/store/record.js'
import { playerView } from '../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../src/sim/world/block/advance.js'
import { leftByDead } from './dead-process.js'

/** A journal of a few throws, left by a program that is no more. */
async function leftBehind(count: number) {
  const folder = mkdtempSync(join(tmpdir(), 'dryboard-'))
  const scenario = await loadScenario('house-forty')
  let state = beginScenario(scenario, 'journal')
  const journal = await openJournal(folder, scenario, state)
  for (let number = 0; number < count; number++) {
    state = advance(state, playerView(state)!.suggestion)
    await journal.append(state.throws[number])
  }
  await journal.close()
  const path = leftByDead(journal.path)
  renameSync(journal.path, path)
  return { folder, path, scenario, state }
}

describe('journals', () => {
  it('hold exactly what the record will', async () => {
    const { path, scenario, state } = await leftBehind(3)
    expect(await readJournal(path)).toEqual(recordOf(scenario, state))
  })

  it('are those of no running program', async () => {
    const { folder, path, scenario } = await leftBehind(1)
    const own = await openJournal(folder, scenario, beginScenario(scenario, 'mine'))
    expect(await leftJournals(folder)).toEqual([path])
    await own.remove()
    expect(readdirSync(folder)).toHaveLength(1)
    expect(await leftJournals(join(folder, 'nowhere'))).toEqual([])
  })

  it('grow on from their last whole line, whatever a dying program left after it', async () => {
    const { path, scenario, state } = await leftBehind(2)
    for (const torn of ['{"ball":"weak-pe', '{', '"', '\u0000\u0000']) {
      const text = readFileSync(path, 'utf8')
      appendFileSync(path, torn)
      expect((await readJournal(path)).decisions).toHaveLength(2)
      const journal = await takeUpJournal(path)
      expect(readFileSync(journal.path, 'utf8')).toBe(text)
      const next = advance(state, playerView(state)!.suggestion)
      await journal.append(next.throws[2])
      await journal.close()
      expect(await readJournal(journal.path)).toEqual(recordOf(scenario, next))
      writeFileSync(path, text)
    }
  })

  it('are refused, and left alone, where a newer program wrote them or a line is spoiled', async () => {
    const { path } = await leftBehind(2)
    const text = readFileSync(path, 'utf8')
    const newer = text.replace('"version":1', '"version":2')
    writeFileSync(path, newer)
    await expect(readJournal(path)).rejects.toThrow(/version: found 2, of a newer Dryboard; this one reads version 1/)
    await expect(takeUpJournal(path)).rejects.toThrow(/newer Dryboard/)
    expect(readFileSync(path, 'utf8')).toBe(newer)
    writeFileSync(path, text.replace(/"standing":\d+/, '"standing":"all"'))
    await expect(readJournal(path)).rejects.toThrow(
      `${path}:2 standing: found "all"; allowed is a whole number from 0 to 1023.`,
    )
    writeFileSync(path, text.split('\n').slice(0, 1).join('').slice(0, 40))
    await expect(readJournal(path)).rejects.toThrow(/ends before its first line does/)
  })
})
