import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scrolledMenuRows } from '../../../src/tui/parts/menu.js'
import { bare, PLAIN } from '../fixtures.js'

describe('a long menu', () => {
  it('keeps to its rows, shows the chosen entry, and accounts for every other', () => {
    const sizes = fc.record({ count: fc.integer({ min: 1, max: 60 }), rows: fc.integer({ min: 4, max: 30 }) })
    fc.assert(
      fc.property(sizes, fc.nat(), ({ count, rows }, place) => {
        const chosen = place % count
        const labels = Array.from({ length: count }, (_, index) => `lane ${index}`)
        const shown = scrolledMenuRows(labels, chosen, rows, PLAIN).map(bare)
        expect(shown.length).toBe(Math.min(count, rows))
        expect(shown.filter((row) => row.startsWith('▸'))).toEqual([`▸ lane ${chosen}`])
        const told = shown.map((row) => Number(/… (\d+) more/.exec(row)?.[1] ?? 0)).reduce((sum, more) => sum + more, 0)
        const entries = shown.filter((row) => row.includes('lane')).length
        expect(entries + told).toBe(count)
      }),
    )
  })
})
