import { mkdtemp, rm, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { hasPastBlocks, listPastBlocks, scoresOf } from '../../../src/scenarios/store/past-blocks.js'

/** Pins 1 to n left standing. */
const left = (pins: number): number => (1 << pins) - 1

describe('scores out of what each ball left', () => {
  // The rules of ten-pin scoring: twelve strikes 300; nine-spare in every frame with a last nine 190; open nines 90.
  it('agree with the rules', () => {
    expect(scoresOf('ten-pin', new Array(12).fill(0))).toEqual([300])
    const spares = [...Array.from({ length: 10 }, () => [left(1), 0]).flat(), left(1)]
    expect(scoresOf('ten-pin', spares)).toEqual([190])
    expect(scoresOf('ten-pin', Array.from({ length: 10 }, () => [left(1), left(1)]).flat())).toEqual([90])
  })

  it('go on to the next game, and stop where the block did', () => {
    expect(scoresOf('ten-pin', [...new Array(12).fill(0), left(3)])).toEqual([300, 7])
    expect(scoresOf('ten-pin', [])).toEqual([])
  })

  // The rules of current-frame scoring: a strike counts 30, whatever follows.
  it('follow the scoring of the block', () => {
    expect(scoresOf('current-frame', new Array(10).fill(0))).toEqual([300])
  })
})

describe('the list of past blocks', () => {
  it('has the latest first, and leaves out what tells of no block', async () => {
    const folder = await mkdtemp(join(tmpdir(), 'dryboard-past-'))
    try {
      expect(await hasPastBlocks(join(folder, 'none'))).toBe(false)
      expect(await listPastBlocks(join(folder, 'none'))).toEqual([])
      const scenario = { title: 'House', lanes: [{}], practiceThrows: 1, scoring: 'ten-pin' }
      const record = (standing: number[]) =>
        JSON.stringify({ seed: 's', scenario, decisions: standing.map((mask) => ({ standing: mask })) })
      await writeFile(join(folder, 'old.json'), record([1023, 0]))
      await utimes(join(folder, 'old.json'), new Date(1000), new Date(1000))
      await writeFile(join(folder, 'new.json'), record([1023, left(4)]))
      await writeFile(join(folder, 'other.json'), '{"format":"something else"}')
      await writeFile(join(folder, '.draft.json'), record([]))
      const blocks = await listPastBlocks(folder)
      expect(blocks.map(({ games, throws }) => [games, throws])).toEqual([
        [[6], 2],
        [[10], 2],
      ])
      expect(await hasPastBlocks(folder)).toBe(true)
    } finally {
      await rm(folder, { recursive: true, force: true })
    }
  })
})
