import { beforeAll, describe, expect, it } from 'vitest'
import { loadScenario } from '../../../../src/scenarios/library/load.js'
import { playerView } from '../../../../src/sim/analysis/view/player-view.js'
import { advance } from '../../../../src/sim/world/block/advance.js'
import { beginBlock } from '../../../../src/sim/world/block/begin.js'
import { shownThrows } from '../../../../src/sim/world/block/shown-throws.js'
import type { BlockState, Spot } from '../../../../src/sim/world/block/types.js'

let mine: BlockState[]
let theirs: BlockState
beforeAll(async () => {
  const { setup } = await loadScenario('unseen-draw')
  const play = (off: number): BlockState[] => {
    const states = [beginBlock({ ...setup, games: 1, practiceThrows: 1 }, 'shown')]
    const { suggestion } = playerView(states[0]!)!
    const aim = { ...suggestion.aim, targetBoard: suggestion.aim.targetBoard + off }
    for (let state = states[0]!; state.spot; states.push(state)) state = advance(state, { ...suggestion, aim })
    return states
  }
  mine = play(0)
  theirs = play(3).at(-1)!
})

const frameOf = ({ phase, game, frame }: Spot): string => `${phase} ${game} ${frame}`

describe('what is shown of a block that one bowls against', () => {
  it('is nothing that the player has still to bowl, and in the end all of it', () => {
    expect(theirs.throws.length).not.toBe(mine.at(-1)!.throws.length)
    let before = 0
    for (const state of mine) {
      const shown = shownThrows(state, theirs)
      expect(shown.length).toBeGreaterThanOrEqual(before)
      before = shown.length
      expect(shown).toEqual(theirs.throws.slice(0, shown.length))
      const { spot } = state
      const last = shown.at(-1)?.spot
      if (!spot || !last) continue
      // Of the frame being bowled no more than the balls the player has thrown in it.
      if (frameOf(last) === frameOf(spot)) expect(last.ball).toBeLessThan(spot.ball)
    }
    expect(shownThrows(mine[0]!, theirs)).toEqual([])
    expect(shownThrows(mine.at(-1)!, theirs)).toEqual(theirs.throws)
  })
})
