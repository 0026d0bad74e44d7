import { describe, expect, it } from 'vitest'
import { keptWith } from '../../src/sim/kept-with.js'

describe('an answer kept with its owner', () => {
  it('is worked out once for each owner and key, whatever it is', () => {
    let worked = 0
    const squared = keptWith(
      (asked: number) => Math.abs(asked),
      (owner: { readonly plus: number }, asked: number) => {
        worked++
        return asked * asked + owner.plus
      },
    )
    const one = { plus: 0 }
    const other = { plus: 1 }
    expect([squared(one, 3), squared(one, -3), squared(one, 0), squared(one, 0), squared(other, 3)]).toEqual([
      9, 9, 0, 0, 10,
    ])
    expect(worked).toBe(3)
  })
})
